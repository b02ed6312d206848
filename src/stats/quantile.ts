import { requireFinite, requireSome } from "./requirement.ts";

/**
 * Value below which the share `probability` of the list lies, between two neighbours by straight line.
 *
 * Type 7 of Hyndman & Fan (1996, The American Statistician 50:361-365), what spreadsheets give.
 *
 * @param values in any order
 * @throws {RangeError} if the list is empty or holds something else than finite numbers, or `probability` is outside 0…1
 * @example
 * quantile([2, 4, 4, 10], 0.5); // => 4
 * quantile([2, 4, 4, 10], 0.8); // => 6.4
 */
export function quantile(values: readonly number[], probability: number): number {
  requireSome("quantile", "values", values);
  requireFinite("quantile", "values", values);
  if (!(probability >= 0 && probability <= 1)) throw new RangeError(`quantile: probability must lie in 0…1, got ${probability}`);
  return sortedQuantile(ascending(values), probability);
}

/**
 * Values in rising order; numbers side by side are sorted several times as fast as a list.
 *
 * @example
 * ascending([10, 4, 2])[0]; // => 2
 */
export const ascending = (values: readonly number[]): Float64Array => Float64Array.from(values).sort();

/**
 * The quantile of values that stand in rising order already, as `quantile` gives it.
 *
 * @param sorted finite numbers, at least one
 * @example
 * sortedQuantile([2, 4, 4, 10], 0.8); // => 6.4
 */
export function sortedQuantile(sorted: ArrayLike<number>, probability: number): number {
  const place = (sorted.length - 1) * probability, below = Math.floor(place), low = sorted[below] as number, high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (place - below) * (high - low);
}
