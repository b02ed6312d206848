import type { Clock, Limits } from "./wear.ts";

/** For whom: null means whatever. `risk` is the share of reels (0…1) that may have a failed part by then. */
export interface AdviceQuestion {
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly water: string | null;
  readonly rinse: string | null;
  readonly risk: number;
}

/** `no wear`: the part fails no likelier with more of the clock, so none of it can be named. */
export type AdviceStatus = "ok" | "beyond the records" | "too few" | "no wear";

/** Exposure by which a position passes the risk, on one clock. */
export interface AdvicePosition {
  readonly position: string;
  readonly position_name: string;
  readonly clock: Clock;
  readonly due: Limits;
  readonly status: AdviceStatus;
  /** Longest exposure seen on that clock for these reels. */
  readonly longest: number | null;
  readonly n: number;
  readonly failed: number;
}

/** Come in after so much, on one clock. */
export interface AdviceDue {
  readonly clock: Clock;
  readonly status: AdviceStatus;
  /** Rounded to what a customer can remember; null unless `status` is `ok`. */
  readonly after: number | null;
  /** The figure before it was rounded down, and the range in which the true one plausibly lies. */
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly set_by: string | null;
  readonly set_by_name: string | null;
}

/** What leaving out one yearly service costs, expected value per reel. */
export interface Skipping {
  /** Days (or months) fished in a year by these reels: the median seen. */
  readonly per_year: number;
  readonly clock: Clock;
  /** Parts expected to have failed by the service after one year, and after two. */
  readonly failed_after_one: number;
  readonly failed_after_two: number;
  /** More money for parts and more minutes at the bench than with a service every year, of the parts whose price or minutes are known; null without any. */
  readonly more_parts: number | null;
  readonly more_minutes: number | null;
  /** Names of the parts that are counted as failed but not in the money, and not in the minutes. */
  readonly without_price: readonly string[];
  readonly without_minutes: readonly string[];
  readonly note: string;
}

/** What is printed on the slip for the customer, in whole sentences. */
export interface CustomerSlip {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly caution: string;
}

export interface Advice {
  readonly question: AdviceQuestion;
  readonly status: AdviceStatus;
  /** By salt days (or use days in fresh water), and by months; the customer goes by whichever comes first. */
  readonly by_days: AdviceDue;
  readonly by_months: AdviceDue;
  /** Soonest first. */
  readonly positions: readonly AdvicePosition[];
  readonly skipping: Skipping | null;
  readonly slip: CustomerSlip;
  readonly text: string;
}
