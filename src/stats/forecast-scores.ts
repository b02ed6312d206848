import { requireInside, requirePaired, requireSome, requireWhole } from "./requirement.ts";

/**
 * Loss of saying `quantile` for the value that `tau` of all cases stay under: the smaller the better, least in the long run for
 * the true one (Koenker & Bassett 1978; Gneiting & Raftery 2007, JASA 102:359-378).
 *
 * @throws {RangeError} if `tau` lies outside 0…1
 * @example
 * pinballLoss(5, 3, 0.1); // => 0.2
 * pinballLoss(5, 8, 0.9); // => 0.3
 */
export function pinballLoss(actual: number, quantile: number, tau: number): number {
  requireInside("pinballLoss", "tau", tau);
  return Math.max(tau * (actual - quantile), (tau - 1) * (actual - quantile));
}

/**
 * Mean absolute step from a value to the one `lag` later, missing ones passed over: the yardstick of `scaledError`.
 *
 * @returns null when no such pair is known
 * @throws {RangeError} if `lag` is not a whole number of at least 1
 * @example
 * meanStep([4, 6, null, 9], 1); // => 2
 */
export function meanStep(values: readonly (number | null)[], lag: number): number | null {
  requireWhole("meanStep", "lag", lag, 1);
  const steps = values.flatMap((value, t) => {
    const before = t < lag ? null : values[t - lag] ?? null;
    return value === null || before === null ? [] : [Math.abs(value - before)];
  });
  return steps.length === 0 ? null : steps.reduce((sum, step) => sum + step, 0) / steps.length;
}

/**
 * Mean absolute error in parts of a yardstick from the training values (Hyndman & Koehler 2006, International Journal of
 * Forecasting 22:679-688): below 1 is better than that simple guess was on the training values.
 *
 * @throws {RangeError} if the lists are empty or unequally long
 * @example
 * scaledError([5, 9, 0, 11], [5.2, 8.5, 2.1, 10], 2); // => 0.475
 */
export function scaledError(actual: readonly number[], forecast: readonly number[], yardstick: number): number {
  requireSome("scaledError", "actual", actual);
  requirePaired("scaledError", "actual", actual, "forecast", forecast);
  return actual.reduce((sum, one, i) => sum + Math.abs(one - (forecast[i] as number)), 0) / actual.length / yardstick;
}
