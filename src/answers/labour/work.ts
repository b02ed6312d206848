import type { Engine } from "../../db/engine.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import type { MinutesRow } from "./labour.ts";
import { withSlips } from "./slips.ts";
import type { Slip } from "./slips.ts";
import workSql from "./work.sql?raw";

/** One row of `work.sql`. */
export type WorkRow = MinutesRow & {
  readonly tier: string | null;
  readonly technician: string | null;
  readonly parts_replaced: number;
  readonly stuck_screws: boolean;
  readonly labour_charge: number | null;
};

/** A finished job whose minutes can be believed. */
export type TimedWork = WorkRow & { readonly labour_min: number };

/** The jobs whose minutes can be believed; blanks and typing slips are left out. */
export function believed(sorted: readonly { readonly row: WorkRow; readonly slip: Slip | null }[]): readonly TimedWork[] {
  const work: TimedWork[] = [];
  for (const { row, slip } of sorted) if (slip === null && isTimed(row)) work.push(row);
  return work;
}
const isTimed = (row: WorkRow): row is TimedWork => row.labour_min !== null;

/** Finished jobs with believable minutes, oldest first; blanks and typing slips are left out, as in `labour`, which counts them. */
export async function timedWork(engine: Engine, filter: RecordsFilter, signal?: AbortSignal): Promise<readonly TimedWork[]> {
  return believed(withSlips(await engine.rows<WorkRow>(workSql, filterValues(filter), signal)));
}
