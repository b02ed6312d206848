import { demandAbove, demandAtMost, demandPmf, demandQuantile } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireInside, requireWhole } from "./requirement.ts";

/** What a stock level does when every part used is ordered again at once and customers wait (base stock). */
export interface StockLevel {
  level: number;
  /** Chance that nobody waits: P(demand ≤ level). */
  readyRate: number;
  /** Chance that somebody waits, from its own tail. */
  shortRate: number;
  /** Share of single parts handed over at once: P(demand < level) with Poisson demand. */
  fillRate: number;
  /** Parts waited for, on average over time. */
  backorders: number;
  /** Parts on the shelf, on average over time. */
  onHand: number;
}

/**
 * Mean of what the demand exceeds `level` by, added up from its own tail so that no digits cancel.
 *
 * @throws {RangeError} if `level` is not a whole number of at least 0
 * @example
 * expectedBackorders(7, { mean: 2.4, size: 2.56 }); // => 0.0651
 */
export function expectedBackorders(level: number, demand: CountDistribution): number {
  requireWhole("expectedBackorders", "level", level);
  const { mean, size } = demand;
  if (mean === 0) return 0;
  const ratio = size === Infinity ? 0 : mean / (size + mean);
  let k = level + 1, probability = demandPmf(k, demand), sum = 0;
  for (;;) {
    const part = (k - level) * probability;
    sum += part;
    if (k > mean && part <= sum * 1e-17) return sum;
    probability *= size === Infinity ? mean / (k + 1) : (ratio * (k + size)) / (k + 1);
    k += 1;
  }
}

/**
 * What `level` parts do against the demand of one delivery time.
 *
 * One-for-one replenishment with waiting customers (Feeney & Sherbrooke 1966, Management Science 12:391-411; Zipkin 2000,
 * Foundations of Inventory Management).
 *
 * @throws {RangeError} if `level` is not a whole number of at least 0
 * @example
 * stockLevel(1, { mean: 0.2055, size: Infinity }).fillRate; // => 0.8142
 */
export function stockLevel(level: number, demand: CountDistribution): StockLevel {
  const backorders = expectedBackorders(level, demand);
  return {
    level,
    readyRate: demandAtMost(level, demand),
    shortRate: demandAbove(level, demand),
    fillRate: demandAtMost(level - 1, demand),
    backorders,
    // Without the backorder term the difference would cancel for a level near the mean.
    onHand: level - demand.mean + backorders,
  };
}

/**
 * Smallest level with which nobody waits with at least the chance `target`.
 *
 * @throws {RangeError} if `target` is not inside 0…1
 * @example
 * smallestLevel(0.95, { mean: 12.31, size: 54 }); // => 19
 */
export function smallestLevel(target: number, demand: CountDistribution): number {
  requireInside("smallestLevel", "target", target);
  return demandQuantile(target, demand);
}
