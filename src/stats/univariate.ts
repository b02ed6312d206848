import { mean as meanOf, sampleStandardDeviation } from "simple-statistics";
import { requireFinite, requireSome } from "./requirement.ts";

export interface Univariate {
  n: number;
  mean: number;
  /** Standard deviation with n − 1; null for a single value. */
  sd: number | null;
  /** How alike neighbours in the list are, −1…1; null when all values are the same. */
  lag1: number | null;
}

/**
 * Mean, spread and likeness of neighbours of a list, accurate also when the values are large beside their spread.
 *
 * Two passes: the mean first, then deviations from it.
 *
 * @param values in their order of time
 * @throws {RangeError} if the list is empty or holds something else than finite numbers
 * @example
 * univariate([10000001, 10000003, 10000002]); // => { n: 3, mean: 10000002, sd: 1, lag1: -0.5 }
 */
export function univariate(values: readonly number[]): Univariate {
  requireSome("univariate", "values", values);
  requireFinite("univariate", "values", values);
  // Taking the first value off loses nothing and leaves small numbers, which keep more digits.
  const first = values[0] as number, small = values.map((value) => value - first), mean = meanOf(small);
  const away = small.map((value) => value - mean), squares = away.reduce((sum, value) => sum + value ** 2, 0);
  const products = away.slice(1).reduce((sum, value, i) => sum + value * (away[i] as number), 0);
  return {
    n: values.length, mean: first + mean,
    sd: values.length > 1 ? sampleStandardDeviation(small) : null,
    lag1: squares > 0 ? products / squares : null,
  };
}
