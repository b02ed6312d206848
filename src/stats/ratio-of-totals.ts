import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { requireFinite, requireInside, requireNonNegative, requirePaired, requireSome } from "./requirement.ts";

export interface RatioOfTotals {
  readonly n: number;
  readonly ratio: number;
  /** Range in which the true ratio plausibly lies; null for a single pair. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * One total over another, such as what a kind of job brought in over the hours it took, with its range.
 *
 * Ratio estimator with the linearised variance, no finite population correction (Cochran 1977, Sampling Techniques, 3rd ed.,
 * eq. 6.13 with f = 0), limits from the t distribution with n − 1 degrees. Long and short jobs weigh by their length, so it is no
 * mean of ratios.
 *
 * @param above one value for each pair, for instance money
 * @param below one value for each pair, none negative, for instance hours
 * @param level of the range
 * @throws {RangeError} if the lists are empty or of different length, hold what is no finite number, or `below` adds up to nothing
 * @example
 * ratioOfTotals([50, 60, 40], [1, 1.5, 0.5]).ratio; // => 50
 * ratioOfTotals([50], [1]); // => { n: 1, ratio: 50, low: null, high: null }
 */
export function ratioOfTotals(above: readonly number[], below: readonly number[], level = 0.95): RatioOfTotals {
  requireSome("ratioOfTotals", "above", above);
  requireFinite("ratioOfTotals", "above", above);
  requirePaired("ratioOfTotals", "above", above, "below", below);
  requireInside("ratioOfTotals", "level", level);
  below.forEach((value) => { requireNonNegative("ratioOfTotals", "below", value); });
  const n = above.length, total = below.reduce((sum, value) => sum + value, 0);
  if (total === 0) throw new RangeError("ratioOfTotals: below must add up to more than 0, got 0");
  const ratio = above.reduce((sum, value) => sum + value, 0) / total;
  if (n === 1) return { n, ratio, low: null, high: null };
  const squares = above.reduce((sum, value, i) => sum + (value - ratio * (below[i] as number)) ** 2, 0);
  const half = tQuantile((1 + level) / 2, n - 1) * Math.sqrt((n * squares) / (n - 1)) / total;
  return { n, ratio, low: ratio - half, high: ratio + half };
}
