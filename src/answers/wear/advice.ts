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

export type AdviceStatus = "ok" | "beyond the records" | "too few";

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
  /** Range in which the true figure plausibly lies, not rounded. */
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
  /** More money for parts and more minutes at the bench than with a service every year; null where the records have no prices or minutes. */
  readonly more_parts: number | null;
  readonly more_minutes: number | null;
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
