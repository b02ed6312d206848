import byMonthSql from "../../answers/demand/by-month.sql?raw";
import { EVERYTHING, filterValues } from "../../answers/filter.ts";
import { jobsAlike } from "../../answers/labour/usual-shop.ts";
import minutesSql from "../../answers/labour/minutes.sql?raw";
import type { MinutesRow } from "../../answers/labour/labour.ts";
import carriersSql from "../../answers/lots/carriers.sql?raw";
import { WITHIN_DAYS } from "../../answers/lots/lot-scan.ts";
import namesWrittenSql from "../../answers/lots/names-written.sql?raw";
import refittedSql from "../../answers/lots/refitted.sql?raw";
import type { Engine, Row } from "../../db/engine.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import groupNamesSql from "./group-names.sql?raw";
import suspectAllSql from "./suspect-all.sql?raw";

const ALL = filterValues(EVERYTHING);
const MINUTES = {
  job: "varchar", reel_kind: "varchar", maker: "varchar", model: "varchar", labour_min: "double", slip: "varchar", warranty: "boolean", in_batch: "boolean", jobs: "integer",
} as const;

/** What the shop's own statements count of it, under which name it is kept. */
const COUNTED: readonly (readonly [table: string, sql: string, values: Row])[] = [
  ["refitted", refittedSql, { within_days: WITHIN_DAYS }], ["names_written", namesWrittenSql, {}], ["carriers", carriersSql, {}],
  ["demand_months", byMonthSql, { ...ALL, interchange: null }], ["group_names", groupNamesSql, {}],
];

/**
 * Keeps of the shop the engine holds now what lots, minutes and use come to: its own answers' statements, asked of it alone, so that
 * memory holds one shop and what is kept adds up.
 */
export async function keepFigures(engine: Engine, shop: string): Promise<void> {
  await engine.run([suspectAllSql]);
  for (const [table, sql, values] of COUNTED) {
    const { stream, rows } = await engine.stream(sql, values);
    await engine.load(`kept.${table}`, stream, rows, { shop });
  }
  const alike = jobsAlike(await engine.rows<MinutesRow>(minutesSql, ALL));
  if (alike.length > 0) await engine.load("kept.minutes", rowsStream(MINUTES, alike.map((one) => ({ ...one }))), alike.length, { shop });
}
