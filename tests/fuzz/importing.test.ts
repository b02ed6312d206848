import fc from "fast-check";
import { beforeAll, expect, test } from "vitest";
import { csvText } from "../../src/records/csv-out.ts";
import type { Imported } from "../../src/records/importing.ts";
import { emptied, openBench } from "../records/bench.ts";
import type { Bench } from "../records/bench.ts";
import { fuzzRuns } from "./any-file.ts";

const MOST_FILES = 4;
let bench: Bench;
beforeAll(async () => { bench = await openBench(); });

/** Few numbers and words, so that rows repeat and contradict each other, some of them wrong. */
const few = (...words: string[]) => fc.constantFrom(...words);
const TICKET = fc.tuple(few("R-1", "R-2", "R-3", ""), few("2026-03-01", "2026-03-02", "soon"), few("A", "=B", ""), few("", "55", "lots"));
const FINDING = fc.tuple(few("R-1", "R-2", "R-3", "R-9"), few("rotor", "ar_clutch", "ring"), few("replaced", "cleaned", ""), few("", "1", "0"));
const PART = fc.tuple(few("P-1", "P-2", ""), few("clutch", "<b>seal</b>"), few("1", "2", "-1"));
const BOTH = fc.tuple(few("R-1", "R-4", "R-5"), few("2026-03-01"), few("A", "B"), few("rotor", "body", "", "ring"), few("", "55", "60"));

const tableOf = (columns: string[]) => (rows: string[][]) => csvText(columns, rows);
const some = (row: fc.Arbitrary<string[]>) => fc.array(row, { maxLength: 7 });
const JOBS = fc.oneof(
  some(TICKET).map(tableOf(["ticket_no", "received_on", "model", "labour_min"])),
  some(FINDING).map(tableOf(["ticket_no", "position", "action", "qty"])),
  some(BOTH).map(tableOf(["ticket_no", "received_on", "model", "part", "mins"])),
);
const ANY = fc.oneof(JOBS, some(PART).map(tableOf(["part_no", "name", "on_hand"])));
const files = (file: fc.Arbitrary<string>) => fc.array(file, { minLength: 1, maxLength: MOST_FILES })
  .map((texts) => Object.fromEntries(texts.map((text, at) => [`${String.fromCharCode(97 + at)}.csv`, text])));

const sum = ({ files }: Imported, key: "rows_read" | "rows_new" | "rows_known" | "rows_to_fix" | "rows_dropped") => files.reduce((total, file) => total + file[key], 0);
const state = async () => ({ records: await bench.records(), rejects: await bench.ledger.rejects() });
const reversed = (given: Record<string, string>) => Object.fromEntries(Object.entries(given).reverse());

test("every row has one end, a second import adds nothing, and the order of the files does not matter", async () => {
  await fc.assert(fc.asyncProperty(files(ANY), async (given) => {
    await emptied(bench);
    const first = await bench.bringIn(given), after = await state();
    expect(sum(first, "rows_new") + sum(first, "rows_known") + sum(first, "rows_to_fix") + sum(first, "rows_dropped")).toBe(sum(first, "rows_read"));
    expect(new Set(first.rejects.map(({ file, line }) => `${file} ${line}`)).size).toBe(sum(first, "rows_to_fix"));

    const second = await bench.bringIn(given);
    expect([sum(second, "rows_new"), second.kept]).toEqual([0, false]);
    expect(await state()).toEqual(after);

    await emptied(bench);
    await bench.bringIn(reversed(given));
    expect(await state()).toEqual(after);
  }), { numRuns: Math.ceil(fuzzRuns(60) / MOST_FILES) });
}, 600_000);

// A catalogue is left out: of two price lists brought in by turns each is the newest once.
test("jobs brought in file by file, again and again, leave no row twice", async () => {
  await fc.assert(fc.asyncProperty(files(JOBS), async (given) => {
    await emptied(bench);
    for (const round of [1, 2, 3]) for (const [name, text] of Object.entries(given)) {
      const done = await bench.bringIn({ [name]: text });
      if (round === 3) expect([name, sum(done, "rows_new")]).toEqual([name, 0]);
    }
    const tickets = await bench.engine.rows<{ ticket_no: string }>("select ticket_no from visits");
    expect(new Set(tickets.map(({ ticket_no }) => ticket_no)).size).toBe(tickets.length);
    expect(new Set((await bench.ledger.rejects()).map((reject) => JSON.stringify(reject))).size).toBe((await bench.ledger.rejects()).length);
  }), { numRuns: Math.ceil(fuzzRuns(24) / MOST_FILES) });
}, 600_000);
