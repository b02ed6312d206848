import type { Engine } from "../../db/engine.ts";
import type { Denominator, RecordsFilter } from "../filter.ts";
import type { WorkMeans } from "../worker-work.ts";
import { conditionCells } from "./condition-rows.ts";
import type { ConditionCells } from "./condition-rows.ts";
import costsSql from "./costs.sql?raw";
import faultsSql from "./faults.sql?raw";
import matesSql from "./mates.sql?raw";
import type { ConditionRow } from "./peers.ts";
import { COMEBACK_DAYS } from "./failure-values.ts";

type Place = { readonly position: string; readonly maker: string | null; readonly model: string };
export type MatesRow = Place & { readonly opening: string | null; readonly pairs: number; readonly alike_failed: number; readonly failed_in_pairs: number };
export type FaultRow = Place & { readonly opening: string | null; readonly mode: string; readonly failed: number };
export type CostRow = Place & {
  readonly minutes: number; readonly parts: number; readonly waiting_days: number; readonly comebacks: number; readonly minute_worth: number | null;
};

/** Which records are judged; models are never filtered, for each is judged beside all others. */
export interface VerdictFilter extends Omit<RecordsFilter, "maker" | "model"> {
  readonly denominator: Denominator;
  readonly group: string | null;
  readonly position: string | null;
}

/** Everything the verdicts are made from, counted: a few thousand rows however long the records are. */
export interface VerdictRecords {
  readonly conditions: readonly ConditionRow[];
  readonly mates: readonly MatesRow[];
  readonly faults: readonly FaultRow[];
  readonly costs: readonly CostRow[];
}
/** The same as it comes from the engine, and goes to a worker. */
export type CountedRecords = Omit<VerdictRecords, "conditions"> & { readonly cells: readonly ConditionCells[] };

/** Counts the records for the verdicts. */
export async function verdictRecords(engine: Engine, filter: VerdictFilter, { signal, report }: WorkMeans = {}): Promise<CountedRecords> {
  const { reel_kind, water, from, to, group, position, denominator } = filter;
  const common = { reel_kind, water, from_date: from, to_date: to, group_code: group, position }, values = { ...common, denominator };
  const counted = <Answer>(done: number, of: Promise<Answer>) => {
    report?.({ step: "Counting what was opened and what had failed", done, total: 4 });
    return of;
  };
  const cells = await counted(0, conditionCells(engine, values, signal));
  const mates = await counted(1, engine.rows<MatesRow>(matesSql, values, signal));
  const faults = await counted(2, engine.rows<FaultRow>(faultsSql, values, signal));
  const costs = await counted(3, engine.rows<CostRow>(costsSql, { ...common, comeback_days: COMEBACK_DAYS }, signal));
  return { cells, mates, faults, costs };
}
