import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import type { Engine, Row, SqlValue } from "../../src/db/engine.ts";
import { openNativeEngine } from "../../src/db/open-native.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { statement } from "../../src/db/statement.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { DEMO } from "./demo-shop.ts";

const ALL = Object.entries(import.meta.glob<string>("../../src/answers/**/*.sql", { query: "?raw", import: "default", eager: true }));
const FILES = ALL.filter(([, sql]) => !/^create /m.test(sql));
/** Tickets of the demo that are taken, with their findings. */
const TICKETS = 700;

/** Once as wide as an answer goes, once narrowed by all it can be narrowed by. */
const WIDE: Row = { opening: "*", denominator: "coverage", as_of: "2025-06-01", since: "2020-01-01", clock: "salt_days", within_days: 90, comeback_days: 90, waiting_from: "2023-01-01", recent_from: "2023-01-01", place: 3, models: true, conditions: true };
const NARROW: Row = {
  ...WIDE, denominator: "strict", opening: "planned", clock: "months", from_date: "2023-02-01", to_date: "2023-08-31", water: "salt", reel_kind: "spinning", models: false, conditions: false,
  position: "line_roller_bearing", group_code: "LR", model: "Whinbeck 40", maker: "Brackhelm",
};
const given = (sql: string, from: Row): Row => Object.fromEntries([...statement(sql).parameters.keys()].map((name) => [name, from[name] ?? null]));

async function slice() {
  const tickets = (await readFile(join(DEMO, "tickets.csv"), "utf8")).split("\n").slice(0, TICKETS + 1), taken = new Set(tickets.map((line) => line.split(",")[0]));
  const findings = (await readFile(join(DEMO, "findings.csv"), "utf8")).split("\n").filter((line, at) => at === 0 || taken.has(line.split(",")[0] ?? ""));
  const others = await Promise.all(["models", "parts", "fits", "suppliers", "orders"].map(async (name) => ({ name: `${name}.csv`, blob: new Blob([await readFile(join(DEMO, `${name}.csv`), "utf8")]) })));
  return [{ name: "tickets.csv", blob: new Blob([tickets.join("\n")]) }, { name: "findings.csv", blob: new Blob([findings.join("\n")]) }, ...others];
}

async function filled(engine: Engine): Promise<Engine> {
  await prepareSchema(engine);
  await loadVocabulary(engine);
  await importFiles(await slice(), { engine, ledger: openMemoryLedger(), today: "2026-01-05", origin: "demo" });
  await prepareAnswers(engine);
  await followParts(engine);
  return engine;
}

/** Sums of doubles may be taken in another order: those are compared to a billionth. */
function rounded(value: SqlValue | SqlValue[]): SqlValue | SqlValue[] {
  if (Array.isArray(value)) return value.map((cell) => rounded(cell) as SqlValue);
  return typeof value === "number" && !Number.isInteger(value) ? Number(value.toPrecision(9)) : value;
}
const rows = async (engine: Engine, sql: string, values: Row) =>
  (await engine.rows<Row>(sql, given(sql, values))).map((row) => Object.fromEntries(Object.entries(row).map(([name, value]) => [name, rounded(value)])));

let browser: Engine, native: Engine;
beforeAll(async () => {
  [browser, native] = await Promise.all([openNodeEngine(), openNativeEngine({ threads: 2 }) as Promise<Engine>]);
  await filled(browser);
  await filled(native);
}, 120_000);
afterAll(async () => {
  await browser.close();
  await native.close();
});

describe("every statement of the answers gives on native DuckDB, with two threads, what it gives in the browser's engine", () => {
  test("and most of them give rows here", async () => {
    let with_rows = 0;
    for (const [, sql] of FILES) if ((await browser.rows(sql, given(sql, WIDE))).length > 0) with_rows += 1;
    expect(FILES.length).toBeGreaterThan(40);
    expect(with_rows).toBeGreaterThan(FILES.length * 0.6);
  });

  test.each(FILES)("%s", async (_file, sql) => {
    for (const values of [WIDE, NARROW]) expect(await rows(native, sql, values)).toEqual(await rows(browser, sql, values));
  });
});
