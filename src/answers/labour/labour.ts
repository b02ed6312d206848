import type { Engine } from "../../db/engine.ts";
import type { RecordsFilter } from "../filter.ts";

/** Bench minutes of one job on one kind of reel (`*` in maker and model: all models). */
export interface LabourRow {
  /** Null where no job is written. */
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly n: number;
  readonly median: number | null;
  readonly mean: number | null;
  readonly mean_low: number | null;
  readonly mean_high: number | null;
  /** Minutes not exceeded in eight of ten jobs: for quotes. Null with "too few" in `note`. */
  readonly p80: number | null;
  readonly pooled_median: number | null;
  readonly pooled_p80: number | null;
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
  readonly reason: "typed as hours" | "with waiting";
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

/** How long each job takes, typically and on a bad day. */
export async function labour(_engine: Engine, _filter: RecordsFilter, _signal?: AbortSignal): Promise<Labour> {
  throw new Error("labour: under way");
}
