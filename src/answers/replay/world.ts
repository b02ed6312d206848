import type { PastJob } from "../budget/past-jobs.ts";

/** A group as the replay buys it; `opening` pieces lie on the shelf when it begins. */
export interface ReplayGroup {
  readonly interchange: string;
  readonly supplier: string | null;
  readonly unit_cost: number;
  readonly pack_qty: number;
  readonly min_order_qty: number;
  readonly opening: number;
}

export interface ReplaySupplier {
  readonly supplier: string | null;
  /** Days between two order days. */
  readonly review_days: number;
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
}

/** A job of the replay; `counts` when all its parts are in the replay, so that whether it waits can be told. */
export type ReplayJob = PastJob & { readonly counts: boolean };

/** Pieces that come on a day whatever is decided: orders that were under way when the replay begins. */
export interface Coming {
  readonly day: number;
  readonly group: number;
  readonly pieces: number;
}

/** What is the same for every way of ordering. Days are counted since 1970. */
export interface World {
  readonly first: number;
  readonly last: number;
  readonly groups: readonly ReplayGroup[];
  readonly suppliers: readonly ReplaySupplier[];
  /** In the order they came in, none before `first` or after `last`. */
  readonly jobs: readonly ReplayJob[];
  readonly coming: readonly Coming[];
}

/** Days that an order placed with a supplier on a day takes; the same for every way of ordering. */
export type DeliveryDays = (supplier: number, day: number) => number;

/** Orders a group when shelf + under way − waiting is at or under `at`, up to `to`; null: leaves it alone. */
export interface Level {
  readonly at: number;
  readonly to: number;
}
/** A way of ordering: the level of a group on an order day, from what was known by then. */
export type Rule = (day: number, group: number) => Level | null;

/** A way of ordering, and pieces a day of a group in the year before, to fill an order up with. */
export interface Ordering {
  readonly rule: Rule;
  readonly use: (day: number, group: number) => number;
}

/** What came of a way of ordering. Money in the shop's currency. */
export interface Outcome {
  /** Jobs that count, those of them that waited, and days they waited in all (to the end where the part never came). */
  readonly jobs: number;
  readonly waited: number;
  readonly wait_days: number;
  readonly never_came: number;
  /** Mean over the days of what lay on the shelf. */
  readonly stock_value_mean: number;
  readonly orders: number;
  readonly spend: number;
  readonly carriage: number;
  /** Pieces of each group: on the shelf at the end, ordered, arrived and handed to jobs; for the books to be checked. */
  readonly on_hand: readonly number[];
  readonly on_order: readonly number[];
  readonly ordered: readonly number[];
  readonly arrived: readonly number[];
  readonly handed_out: readonly number[];
}
