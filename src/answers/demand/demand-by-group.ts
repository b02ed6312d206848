import type { Engine } from "../../db/engine.ts";
import type { RecordsFilter } from "../filter.ts";

/** Pieces of one interchange group in one month (`month` is its first day); months without use are there with 0. */
export interface DemandMonth {
  readonly interchange: string;
  readonly month: string;
  readonly replaced: number;
  readonly wanted: number;
}

/** Use of one interchange group over the period looked at. */
export interface GroupDemand {
  readonly interchange: string;
  readonly part_nos: readonly string[];
  readonly pieces: number;
  readonly replaced: number;
  readonly wanted: number;
  readonly routine: number;
  readonly tickets: number;
  readonly models: number;
  /** Largest share of one model in the group's pieces, 0…1, and which model that is. */
  readonly top_model: string | null;
  readonly top_model_share: number | null;
  readonly per_month: number;
  readonly first_on: string;
  readonly last_on: string;
}

export interface Demand {
  readonly from: string | null;
  readonly to: string | null;
  readonly months: number;
  readonly groups: readonly GroupDemand[];
  /** Parts replaced or wanted without a part number that could be told: counted here, in no group. */
  readonly unmapped: readonly { readonly position: string; readonly name: string; readonly pieces: number; readonly tickets: number }[];
  readonly unmapped_pieces: number;
}

/** Use of every interchange group, most used first. */
export async function demandByGroup(_engine: Engine, _filter: RecordsFilter, _signal?: AbortSignal): Promise<Demand> {
  throw new Error("demandByGroup: under way");
}

/** Month by month, for one group (or all with null). */
export async function demandByMonth(
  _engine: Engine,
  _filter: RecordsFilter & { readonly interchange: string | null },
  _signal?: AbortSignal,
): Promise<readonly DemandMonth[]> {
  throw new Error("demandByMonth: under way");
}
