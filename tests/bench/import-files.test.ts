import { mkdtempSync, openAsBlob, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { expect, test } from "vitest";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { FORMATS, importFilesOf } from "./import-files.ts";
import type { Format } from "./import-files.ts";

const SUMS = `-- What came in.
-- Columns: findings bigint, pieces bigint, cost double, routine bigint, tickets bigint, first_on date, last_on date, minutes double, notes bigint
select count(*) as findings, sum(qty)::bigint as pieces, sum(unit_cost) as cost, count(*) filter (routine) as routine, any_value(t.tickets) as tickets,
  any_value(t.first_on) as first_on, any_value(t.last_on) as last_on, any_value(t.minutes) as minutes, any_value(t.notes) as notes
from findings
cross join (select count(*) as tickets, min(received_on) as first_on, max(finished_on) as last_on, sum(labour_min) as minutes, count(note) as notes from tickets) t
order by findings`;

async function broughtIn(format: Format, enough: number) {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-formats-")), engine = await openNodeEngine();
  try {
    const { paths, findings } = importFilesOf(folder, format, enough);
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const files = await Promise.all(paths.map(async (path) => ({ name: basename(path), blob: await openAsBlob(path) })));
    await importFiles(files, { engine, ledger: openMemoryLedger(), today: "2026-06-01", origin: "files" });
    const [sums] = await engine.rows<{ findings: number }>(SUMS);
    return { sums, findings };
  } finally {
    await engine.close();
    rmSync(folder, { recursive: true });
  }
}

test("the shop of the bench brings in the same rows from CSV, XLSX and Arrow, two rounds of the demo too", async () => {
  for (const enough of [600, 13_000]) {
    const all = [];
    for (const format of FORMATS) all.push(await broughtIn(format, enough));
    expect(all[0]?.sums?.findings).toBe(all[0]?.findings);
    expect(all[0]?.findings).toBeGreaterThanOrEqual(enough * 0.9);
    for (const one of all) expect(one).toEqual(all[0]);
  }
}, 120_000);
