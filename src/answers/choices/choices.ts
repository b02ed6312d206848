import type { Engine } from "../../db/engine.ts";

/** One value a filter can take, with the tickets behind it. */
export interface Choice {
  readonly value: string;
  readonly tickets: number;
}

export interface ModelChoice {
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly tickets: number;
}

/** What the records hold to choose from, most frequent first; positions in the order of the position list. */
export interface Choices {
  readonly reel_kinds: readonly Choice[];
  readonly makers: readonly Choice[];
  readonly models: readonly ModelChoice[];
  readonly waters: readonly Choice[];
  readonly groups: readonly { readonly group_code: string; readonly group_name: string }[];
  readonly positions: readonly { readonly position: string; readonly name: string; readonly group_code: string | null }[];
}

/** First and last day in the records and how much there is; days are null while there is no ticket. */
export interface RecordsSpan {
  readonly from: string | null;
  readonly to: string | null;
  readonly tickets: number;
  readonly findings: number;
  readonly models: number;
  readonly parts: number;
  readonly orders: number;
  /** Tickets not finished: still at the bench or waiting. */
  readonly open_tickets: number;
  readonly tickets_with_serial: number;
}

export async function choices(_engine: Engine, _signal?: AbortSignal): Promise<Choices> {
  throw new Error("choices: under way");
}

export async function recordsSpan(_engine: Engine, _signal?: AbortSignal): Promise<RecordsSpan> {
  throw new Error("recordsSpan: under way");
}
