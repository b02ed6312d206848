import type { PackedRows } from "../../db/packed-rows.ts";
import type { JobPart } from "../budget/past-jobs.ts";
import type { StockPast } from "../stock/order-advice.ts";
import type { RestockLine, RestockSettings } from "../stock/restock-line.ts";

/** `advice`: ours; `habit`: what a bench does without it; `happened`: what the shop's own records say. */
export type PolicyKind = "advice" | "habit" | "happened";

/** A figure over many draws of how long deliveries take: the mean, and what one draw in ten lies under and over. */
export interface Spread {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** What came of one way of ordering over the replayed time; null where the records do not tell. Money in the shop's currency. */
export interface PolicyScore {
  readonly policy: string;
  readonly kind: PolicyKind;
  /** Jobs that need planned parts only, so that waiting can be told. */
  readonly jobs: number;
  readonly waited: Spread | null;
  /** Share of the jobs that did not wait, 0…1. */
  readonly jobs_without_wait: number | null;
  /** Mean days that a job which waited had to wait. */
  readonly wait_days: number | null;
  readonly stock_value_mean: Spread | null;
  readonly orders: number;
  readonly spend: number;
  readonly carriage: number | null;
  /** On the shelf at the end, beyond what two years use. */
  readonly dead_stock: number | null;
}

export type PastOrder = {
  readonly order_no: string | null; readonly supplier: string | null; readonly interchange: string; readonly ordered_on: string;
  readonly arrived_on: string | null; readonly pieces: number; readonly unit_cost: number | null;
};
export type JobWait = { readonly ticket_no: string; readonly wait_days: number | null };

/** What a replay is made from: plain rows, so that a worker can be sent them. */
export interface ReplayRecords {
  readonly settings: RestockSettings;
  /** Today's advice, for today's shelf and the catalogue. */
  readonly lines: readonly RestockLine[];
  readonly past: StockPast;
  readonly parts: readonly JobPart[];
  readonly orders: readonly PastOrder[];
  readonly waits: readonly JobWait[];
}

/** The same with what may be very many rows packed. */
export type PackedReplay = Omit<ReplayRecords, "parts" | "waits"> & { readonly parts: PackedRows<JobPart>; readonly waits: PackedRows<JobWait> };

export interface Replay {
  readonly status: "ok" | "too short" | "no parts";
  readonly from: string | null;
  readonly to: string | null;
  readonly scores: readonly PolicyScore[];
  /** Draws of delivery days that every way of ordering went through. */
  readonly draws: number;
  /** Groups replayed. */
  readonly groups: number;
  /** What the advice was worth: of itself, then against each habit, also where it was not better. */
  readonly verdict: readonly string[];
  readonly notes: readonly string[];
}
