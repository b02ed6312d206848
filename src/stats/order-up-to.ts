import { demandAtMost } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireInside, requirePositive } from "./requirement.ts";
import { expectedBackorders } from "./stock-level.ts";

/** Demand over the three spans that matter when the shop orders at fixed times: delivery, both, and between two orders. */
export interface ReviewDemand { delivery: CountDistribution; protection: CountDistribution; reviewMean: number }

export interface OrderUpTo {
  level: number;
  /** Chance that nobody waits before the next delivery. */
  readyRate: number;
  /** Share of parts handed over at once. */
  fillRate: number;
  /** Parts waited for, and parts on the shelf, just before the next delivery. */
  backorders: number;
  onHand: number;
}

/**
 * What ordering up to `level` at every review does, customers waiting when the shelf is empty.
 *
 * Fill rate = 1 − (backorders over delivery and review − backorders over delivery) / demand between two reviews
 * (Hadley & Whitin 1963; Silver, Pyke & Thomas 2017, Inventory and Production Management in Supply Chains).
 *
 * @throws {RangeError} if `reviewMean` is not above 0 or `level` not a whole number of at least 0
 * @example
 * const demand = { delivery: { mean: 1.38, size: Infinity }, protection: { mean: 2.07, size: Infinity }, reviewMean: 0.69 };
 * orderUpTo(5, demand).readyRate; // => 0.9808
 */
export function orderUpTo(level: number, demand: ReviewDemand): OrderUpTo {
  requirePositive("orderUpTo", "reviewMean", demand.reviewMean);
  const backorders = expectedBackorders(level, demand.protection);
  return {
    level,
    readyRate: demandAtMost(level, demand.protection),
    fillRate: 1 - (backorders - expectedBackorders(level, demand.delivery)) / demand.reviewMean,
    backorders,
    onHand: level - demand.protection.mean + backorders,
  };
}

/**
 * Smallest level that reaches the target, either that nobody waits or as a share of parts handed over at once.
 *
 * @throws {RangeError} if `target` is not inside 0…1 or `reviewMean` not above 0
 * @example
 * const demand = { delivery: { mean: 1.38, size: Infinity }, protection: { mean: 2.07, size: Infinity }, reviewMean: 0.69 };
 * smallestOrderUpTo(0.95, "readyRate", demand).level; // => 5
 */
export function smallestOrderUpTo(target: number, measure: "readyRate" | "fillRate", demand: ReviewDemand): OrderUpTo {
  requireInside("smallestOrderUpTo", "target", target);
  for (let level = 0; ; level += 1) {
    const result = orderUpTo(level, demand);
    if (result[measure] >= target) return result;
  }
}
