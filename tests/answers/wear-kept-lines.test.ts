import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { filterValues } from "../../src/answers/filter.ts";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import { keptLines, linesFrom } from "../../src/answers/wear/kept-lines.ts";
import type { KeptLines } from "../../src/answers/wear/kept-lines.ts";
import keptSql from "../../src/answers/wear/kept-lines.sql?raw";
import linesSql from "../../src/answers/wear/lines.sql?raw";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { Asked } from "../../src/answers/wear/wear-records.ts";
import { CLOCKS } from "../../src/answers/wear/wear.ts";
import type { Clock, WearFilter } from "../../src/answers/wear/wear.ts";
import type { Engine } from "../../src/db/engine.ts";
import { packedRows } from "../../src/db/packed-rows.ts";
import { openDemo } from "./demo-shop.ts";

let engine: Engine;
const kept = new Map<Clock, KeptLines>();
beforeAll(async () => {
  engine = await openDemo();
  await followParts(engine);
  for (const clock of CLOCKS) kept.set(clock, keptLines(await packedRows(engine, keptSql, { clock })));
}, 60_000);
afterAll(() => engine.close());

const FILTERS: readonly Partial<WearFilter>[] = [
  {}, { reel_kind: "spinning" }, { reel_kind: "fly", first_sights: "all" }, { water: "brackish", first_sights: "none" }, { water: "salt", reel_kind: "conventional" },
  { maker: "Brackhelm", model: "Whinbeck 40" }, { model: "Whinbeck 40", water: "fresh" }, { model: "no such model" },
];
const ASKED: readonly Asked[] = [
  { position: null, conditions: false }, { position: null, conditions: true }, { position: null, conditions: true, models: false }, { position: "line_roller_bearing", conditions: true }, { position: "no_such_part", conditions: true },
];

/** Rows that are not alike, with their place; thousands of rows compared as text are quick. */
function different(ours: readonly object[], theirs: readonly object[]): unknown[] {
  return Array.from({ length: Math.max(ours.length, theirs.length) }, (_, at) => [at, sorted(ours[at]), sorted(theirs[at])] as const).filter(([, one, other]) => one !== other).slice(0, 3);
}
const sorted = (row: object | undefined) => JSON.stringify(Object.entries(row ?? {}).sort(([a], [b]) => (a < b ? -1 : 1)));

describe.each(CLOCKS)("lines kept in %s", (clock) => {
  test.each(FILTERS)("give what the engine gives for the same question, row by row: %o", async (some) => {
    const filter: WearFilter = { ...ALL_WEAR, ...some, clock };
    for (const asked of ASKED) {
      const { position, conditions, models = conditions } = asked;
      const rows = await engine.rows(linesSql, { ...filterValues(filter), clock, first_sights: filter.first_sights, position, conditions, models });
      expect(different(linesFrom(kept.get(clock) as KeptLines, filter, asked), rows), JSON.stringify(asked)).toEqual([]);
    }
  });
});

test("the demo's lines are some thousand, and a filter by days is refused rather than forgotten", () => {
  const lines = kept.get("salt_days") as KeptLines;
  expect(linesFrom(lines, ALL_WEAR, { position: null, conditions: false }).length).toBeGreaterThan(1_000);
  expect(() => linesFrom(lines, { ...ALL_WEAR, from: "2025-01-01" }, { position: null, conditions: false })).toThrow("linesFrom: needs a filter without days, got 2025-01-01 to …");
});
