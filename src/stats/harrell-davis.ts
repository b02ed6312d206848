import betainc from "@stdlib/math-base-special-betainc";
import { requireFinite, requireInside, requireSome } from "./requirement.ts";

/**
 * Quantile as a weighted mean of all values: steadier than one or two of them when the list is short.
 *
 * Harrell & Davis (1982, Biometrika 69:635-640). One wild value pulls it, unlike `quantile`.
 *
 * @param values in any order
 * @throws {RangeError} if the list is empty or holds something else than finite numbers, or `probability` not inside 0…1
 * @example
 * harrellDavis([2, 4, 4, 10], 0.5); // => 4.506
 */
export function harrellDavis(values: readonly number[], probability: number): number {
  requireSome("harrellDavis", "values", values);
  requireFinite("harrellDavis", "values", values);
  requireInside("harrellDavis", "probability", probability);
  const sorted = [...values].sort((a, b) => a - b), n = sorted.length;
  const up = (i: number) => betainc(i / n, (n + 1) * probability, (n + 1) * (1 - probability));
  return sorted.reduce((sum, value, i) => sum + value * (up(i + 1) - up(i)), 0);
}
