import { openAsBlob } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { DEMO, openDemo } from "./demo-shop.ts";

/** The demo's dirty sheet, read with the answers that stand preselected on the screen, beside its clean tables. */
let clean: Engine, dirty: Engine;
beforeAll(async () => {
  clean = await openDemo();
  dirty = await openNodeEngine();
  await prepareSchema(dirty);
  await loadVocabulary(dirty);
  const models = { name: "models.csv", blob: await openAsBlob(join(DEMO, "models.csv")) }, sheet = { name: "workshop-sheet.csv", blob: await openAsBlob(join(DEMO, "flat/workshop-sheet.csv")) };
  await importFiles([models, sheet], { engine: dirty, ledger: openMemoryLedger(), today: "2026-01-05", origin: "files" });
  await prepareAnswers(dirty);
}, 300_000);
afterAll(async () => { await clean.close(); await dirty.close(); });

/** Counts by a key, of both; the key is a column or an expression of ours. */
async function counts(from: string, key: string, n = "count(*)") {
  const sql = `-- Counts.\n-- Columns: key varchar, n bigint\nselect (${key})::varchar as key, ${n}::bigint as n from ${from} group by all order by key`;
  const of = async (engine: Engine) => new Map((await engine.rows<{ key: string | null; n: number }>(sql)).map((row) => [row.key, row.n]));
  const [told, found] = [await of(clean), await of(dirty)];
  return [...told].map(([name, n]) => ({ name, clean: n, dirty: found.get(name) ?? 0 }));
}
const sum = (rows: Awaited<ReturnType<typeof counts>>, of: "clean" | "dirty") => rows.reduce((total, row) => total + row[of], 0);
/** How far a count of `n` lies from its share by chance at most: four standard deviations, and one for the smallest. */
const chance = (n: number, share: number) => 4 * Math.sqrt(n * share * (1 - share)) + 1;

// Rates of the dirt: trade brief, section 5.8.
test("tickets lack those whose days cannot be (0.7 %), in all and in every quarter, job, kind of reel and way of coming in", async () => {
  for (const key of ["1", "date_trunc('quarter', received_on)", "reel_kind", "opening", "job"]) {
    const rows = await counts("visits", key);
    expect(rows.filter((row) => row.clean - row.dirty > row.clean * 0.007 + chance(row.clean, 0.007) || row.dirty > row.clean)).toEqual([]);
  }
});
test("waters lack those that were left blank or told two ways (12, 9 and 4 %), each alike", async () => {
  const rows = (await counts("visits", "water")).filter(({ name }) => name !== null);
  expect(rows.map(({ name }) => name).sort()).toEqual(["brackish", "fresh", "salt"]);
  expect(rows.filter((row) => Math.abs(row.dirty - row.clean * 0.75) > chance(row.clean, 0.25))).toEqual([]);
});
test("minutes lack those left blank and those that hold the waiting (14 and 5 %); serials are those on 24 %", async () => {
  const told = async (column: string) => (await counts("visits", `${column} is not null`)).find(({ name }) => name === "true");
  const minutes = await told("labour_min"), linked = await told("visit_no");
  expect(Math.abs((minutes?.dirty ?? 0) - 3514 * 0.81)).toBeLessThan(chance(3514, 0.19));
  expect(Math.abs((linked?.dirty ?? 0) - 3514 * 0.24)).toBeLessThan(chance(3514, 0.24));
});
test("models lack at most those spelt otherwise or without a size (22 and 6 %), and none has reels of another", async () => {
  const rows = await counts("visits", "concat_ws(' ', maker, model)");
  expect(rows.filter((row) => row.dirty > row.clean)).toEqual([]);
  expect(sum(rows, "dirty")).toBeGreaterThan(sum(rows, "clean") * 0.72 - chance(3533, 0.28));
});
test("looks at the parts that most jobs open, and the pieces used of those most used, are within a few per cent", async () => {
  const looks = (await counts("inspected", "position", "count(*) filter (counted)")).filter(({ clean: n }) => n > 1000), pieces = await counts("demand d", "position", "sum(qty)");
  expect(looks.length).toBeGreaterThan(15);
  expect(looks.filter((row) => Math.abs(row.dirty / row.clean - 1) > 0.035)).toEqual([]);
  const most = ["line_roller_bearing", "drag_knob_seal", "line_roller_seal", "pinion_bearing_front", "knob_bearing", "ar_clutch"];
  expect(pieces.filter(({ name }) => most.includes(name ?? "")).map((row) => row.dirty / row.clean > 0.94 && row.dirty <= row.clean)).toEqual(most.map(() => true));
});
