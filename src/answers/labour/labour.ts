import type { Engine } from "../../db/engine.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { labourRows } from "./labour-rows.ts";
import minutesSql from "./minutes.sql?raw";
import { withSlips } from "./slips.ts";
import type { Slip } from "./slips.ts";

/** Bench minutes of one job on one kind of reel (`*` in maker and model: all models). */
export interface LabourRow {
  /** Null where no job is written. */
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly n: number;
  readonly median: number | null;
  /** Plain mean, and the range in which the true mean plausibly lies (log-normal, modified Cox). */
  readonly mean: number | null;
  readonly mean_low: number | null;
  readonly mean_high: number | null;
  /** Minutes not exceeded in eight of ten jobs: for quotes. Null with "too few" in `note`. */
  readonly p80: number | null;
  /** Minutes not exceeded in nine of ten jobs; null under ten. */
  readonly p90: number | null;
  /** Of one model, drawn toward the other models of the same job and kind of reel; null where all models are together. */
  readonly pooled_median: number | null;
  readonly pooled_p80: number | null;
  readonly pooled_p90: number | null;
  /** Of the `n`: jobs under warranty, and reels that came together. */
  readonly warranty: number;
  readonly in_batches: number;
  /** Not in `n`: no minutes written; looks like hours typed as minutes; looks as if waiting were counted. */
  readonly blank: number;
  readonly typed_as_hours: number;
  readonly with_waiting: number;
  readonly note: string;
}

/** One ticket whose minutes were set aside, with the reason. */
export interface SetAside {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly labour_min: number;
  readonly reason: Slip;
  readonly source_file: string | null;
  readonly source_line: number | null;
}

export interface Labour {
  /** Job × kind of reel (model `*`) followed by its models with ten jobs or more; most jobs first. */
  readonly rows: readonly LabourRow[];
  readonly set_aside: readonly SetAside[];
  readonly tickets: number;
  readonly blank: number;
}

/** One row of `minutes.sql`. */
export type MinutesRow = {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly labour_min: number | null;
  readonly warranty: boolean;
  readonly in_batch: boolean;
  readonly source_file: string | null;
  readonly source_line: number | null;
};

/** A ticket set aside, without what else is known of it. */
const asideOf = ({ ticket_no, received_on, job, reel_kind, maker, model, source_file, source_line }: MinutesRow, labour_min: number, reason: Slip): SetAside =>
  ({ ticket_no, received_on, job, reel_kind, maker, model, labour_min, reason, source_file, source_line });

/** How long each job takes, typically and on a bad day, of tickets already sorted. */
export function labourOf(sorted: readonly { readonly row: MinutesRow; readonly slip: Slip | null }[]): Labour {
  return {
    rows: labourRows(sorted),
    set_aside: sorted.flatMap(({ row, slip }) => (slip === null || row.labour_min === null ? [] : [asideOf(row, row.labour_min, slip)])),
    tickets: sorted.length,
    blank: sorted.filter(({ row }) => row.labour_min === null).length,
  };
}

/** How long each job takes, typically and on a bad day. */
export async function labour(engine: Engine, filter: RecordsFilter, signal?: AbortSignal): Promise<Labour> {
  return labourOf(withSlips(await engine.rows<MinutesRow>(minutesSql, filterValues(filter), signal)));
}
