import { requirePositive, requireWhole } from "./requirement.ts";

/**
 * Cosine and sine of the time of year, pair after pair: a smooth yearly curve in a log-linear regression (Held & Paul 2012,
 * Biometrical Journal 54:824-843). A year is as long as it is, 365.25 / 7 weeks, so that no week slips through the seasons.
 *
 * @param step steps since the first, from 0
 * @param year steps in a year
 * @param pairs 1 is one hump a year, 2 allows a second
 * @throws {RangeError} if `year` is not above 0 or `pairs` not a whole number
 * @example
 * yearWaves(0, 52.18, 1); // => [1, 0]
 * yearWaves(3, 12, 1); // => [0.0000, 1]
 */
export function yearWaves(step: number, year: number, pairs: number): number[] {
  requirePositive("yearWaves", "year", year);
  requireWhole("yearWaves", "pairs", pairs);
  return Array.from({ length: pairs }, (_, k) => (2 * Math.PI * (k + 1) * step) / year).flatMap((turn) => [Math.cos(turn), Math.sin(turn)]);
}
