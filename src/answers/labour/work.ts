import type { Engine } from "../../db/engine.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { withSlips } from "./slips.ts";
import workSql from "./work.sql?raw";

/** One row of `work.sql`. */
export type WorkRow = {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly tier: string | null;
  readonly technician: string | null;
  readonly labour_min: number | null;
  readonly warranty: boolean;
  readonly in_batch: boolean;
  readonly parts_replaced: number;
  readonly stuck_screws: boolean;
  readonly labour_charge: number | null;
};

/** A finished job whose minutes can be believed. */
export type TimedWork = WorkRow & { readonly labour_min: number };

/** Finished jobs with believable minutes, oldest first; blanks and typing slips are left out, as in `labour`, which counts them. */
export async function timedWork(engine: Engine, filter: RecordsFilter, signal?: AbortSignal): Promise<readonly TimedWork[]> {
  const rows = await engine.rows<WorkRow>(workSql, filterValues(filter), signal);
  return withSlips(rows).flatMap(({ row, slip }) => (row.labour_min === null || slip !== null ? [] : [{ ...row, labour_min: row.labour_min }]));
}
