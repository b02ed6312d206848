import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Imported } from "../../src/records/importing.ts";
import { emptied, openBench } from "../records/bench.ts";
import type { Bench } from "../records/bench.ts";
import { fuzzRuns, someFiles } from "./any-file.ts";

let bench: Bench;
const seen = { files: 0, imports: 0, kept: 0, rows: 0 };
beforeAll(async () => { bench = await openBench(); });
afterAll(() => { process.stdout.write(`fuzz: ${JSON.stringify(seen)}\n`); });

/** At most so many files in one import, half as many on average: what an import costs besides is the same for few and many. */
const FILES = 100;

/** All that the owner has: rows as they came in, what is derived of them, and the rows still to fix. */
const state = async () => ({
  records: await bench.records(), rejects: await bench.ledger.rejects(),
  visits: await bench.engine.rows("select * exclude (visit) from visits order by all"), findings: await bench.engine.rows("select * exclude (import_no) from findings order by all"),
});

function noLineIsLost({ files }: Imported) {
  for (const { rows_read, rows_new, rows_known, rows_to_fix, rows_dropped } of files) expect(rows_new + rows_known + rows_to_fix + rows_dropped).toBe(rows_read);
  seen.files += files.length;
  seen.imports += 1;
}

test("an import of any files loses no line, brought in twice it adds nothing, and taken out it leaves what was before", async () => {
  await fc.assert(fc.asyncProperty(someFiles(FILES), someFiles(FILES), async (one, other) => {
    await emptied(bench);
    const taken: { id: string; kept: boolean; before: unknown }[] = [];
    for (const files of [one, other]) {
      const before = await state(), done = await bench.bringIn(files);
      noLineIsLost(done);
      seen.kept += Number(done.kept);
      seen.rows += done.files.reduce((sum, { rows_new }) => sum + rows_new, 0);
      const after = await state(), again = await bench.bringIn(files);
      expect([again.kept, again.files.reduce((sum, { rows_new }) => sum + rows_new, 0)]).toEqual([false, 0]);
      expect(await state()).toEqual(after);
      taken.push({ id: done.id, kept: done.kept, before });
    }
    for (const { id, kept, before } of taken.reverse()) {
      if (kept) await bench.takeOut(id);
      expect(await state()).toEqual(before);
    }
  }), { numRuns: Math.ceil(fuzzRuns(200) / FILES), endOnFailure: process.env["SHRINK"] === undefined });
}, 7_200_000);
