import type { Stratum } from "./mantel-haenszel.ts";
import { midPRateInterval } from "./mid-p-rate-interval.ts";
import { requireNonNegative, requirePositive, requireWhole } from "./requirement.ts";

/** Failures seen and to be expected, where there is something to expect from. */
export interface Expected { observed: number; expected: number; inspected: number }

/**
 * Failures to expect if the others' shares held in each set of conditions (indirect standardisation; Breslow & Day 1987,
 * Statistical Methods in Cancer Research II, ch. 2). Strata without others have no share to take and are left out on both
 * sides.
 *
 * @example
 * expectedFailures([{ failed: 3, inspected: 10, others_failed: 5, others_inspected: 50 }]); // => { observed: 3, expected: 1, inspected: 10 }
 */
export function expectedFailures(strata: readonly Stratum[]): Expected {
  const found: Expected = { observed: 0, expected: 0, inspected: 0 };
  for (const { failed, inspected, others_failed, others_inspected } of strata) {
    if (inspected === 0 || others_inspected === 0) continue;
    found.observed += failed;
    found.inspected += inspected;
    found.expected += (inspected * others_failed) / others_inspected;
  }
  return found;
}

/**
 * Observed over expected, with exact mid-p limits for the count observed (Lancaster 1961, JASA 56:223-234); what is expected
 * counts as known.
 *
 * @param widen how many times fewer inspections they are worth because some belong together
 * @returns null for all three when nothing is expected
 * @throws {RangeError} if `observed` is not a whole number ≥ 0, `expected` negative or `widen` not above 0
 * @example
 * standardisedRatio(16, 20).low; // => 0.4736
 */
export function standardisedRatio(
  observed: number, expected: number, { level = 0.95, widen = 1 } = {},
): { value: number | null; low: number | null; high: number | null } {
  requireWhole("standardisedRatio", "observed", observed);
  requireNonNegative("standardisedRatio", "expected", expected);
  requirePositive("standardisedRatio", "widen", widen);
  // Clumped counts are worth fewer single ones: the limits are those of the smaller count, its ratio being the same.
  const limits = midPRateInterval(Math.round(observed / widen), expected / widen, level);
  if (limits === null) return { value: null, low: null, high: null };
  const value = observed / expected;
  return { value, low: Math.min(value, limits[0]), high: Math.max(value, limits[1]) };
}
