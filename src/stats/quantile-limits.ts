import { binomialAtLeast, binomialAtMost } from "./binomial.ts";
import { ascending } from "./quantile.ts";
import { requireFinite, requireInside, requireSome } from "./requirement.ts";

export interface QuantileLimits {
  /** Values of the list between which the true quantile plausibly lies; null where the list is too short to give one. */
  low: number | null;
  high: number | null;
  /** Chance that the two hold the true quantile; null unless there are both. */
  coverage: number | null;
}

/** The first of 0…`most` for which it no longer holds, where it holds up to some number and then no more; `most` when it always holds. */
function firstBut(most: number, holds: (at: number) => boolean): number {
  let from = 0, to = most;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (holds(middle)) from = middle + 1;
    else to = middle;
  }
  return from;
}

/**
 * Range for a quantile, whatever the shape of the distribution: two values of the list itself.
 *
 * Equal-tailed order-statistic limits (Conover 1999, Practical Nonparametric Statistics, 3.2): at most (1 − level) / 2
 * beyond each. Short lists cannot give them: for the 80 % quantile the upper one takes seventeen values.
 *
 * @param values in any order
 * @throws {RangeError} if the list is empty or holds something else than finite numbers, or a share is not inside 0…1
 * @example
 * quantileLimits([3, 5, 6, 8, 9, 12, 15, 40], 0.5); // => { low: 3, high: 40, coverage: 0.9922 }
 * quantileLimits([3, 5, 6], 0.5); // => { low: null, high: null, coverage: null }
 */
export function quantileLimits(values: readonly number[], probability: number, level = 0.95): QuantileLimits {
  requireSome("quantileLimits", "values", values);
  requireFinite("quantileLimits", "values", values);
  requireInside("quantileLimits", "probability", probability);
  requireInside("quantileLimits", "level", level);
  const sorted = ascending(values), n = sorted.length, tail = (1 - level) / 2;
  const low = firstBut(n, (at) => binomialAtMost(at, n, probability) <= tail), high = n + 1 - firstBut(n, (at) => binomialAtLeast(n - at, n, probability) <= tail);
  const both = low >= 1 && high <= n;
  return {
    low: sorted[low - 1] ?? null, high: sorted[high - 1] ?? null,
    coverage: both ? binomialAtMost(high - 1, n, probability) - binomialAtMost(low - 1, n, probability) : null,
  };
}
