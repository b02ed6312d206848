import { gammaQuantile } from "./incomplete-gamma.ts";
import { requireInside, requireNonNegative, requireWhole } from "./requirement.ts";

/** Lower and upper limit of a rate per unit of exposure; null where no exposure was seen and no rate can be given. */
export type RateLimits = [number, number] | null;

/** @throws {RangeError} if one of the three cannot be what it is named */
function requireRate(caller: string, events: number, exposure: number, level: number): void {
  requireWhole(caller, "events", events);
  requireNonNegative(caller, "exposure", exposure);
  requireInside(caller, "level", level);
}

/**
 * Range in which a true rate plausibly lies, given `events` in `exposure` (days, months, reels…); never too narrow.
 *
 * Exact interval with equal tails (Garwood 1936, Biometrika 28:437-442).
 *
 * @returns limits per unit of exposure, or null when `exposure` is 0
 * @throws {RangeError} if `events` is not a whole number ≥ 0, `exposure` negative, or `level` not inside 0…1
 * @example
 * rateInterval(16, 20); // => [0.4573, 1.2991]
 * rateInterval(0, 250.5); // => [0, 0.014726]
 */
export function rateInterval(events: number, exposure: number, level = 0.95): RateLimits {
  requireRate("rateInterval", events, exposure, level);
  if (exposure === 0) return null;
  const low = events === 0 ? 0 : gammaQuantile((1 - level) / 2, events);
  return [low / exposure, gammaQuantile((1 + level) / 2, events + 1) / exposure];
}

/**
 * Range that holds a rate with probability `level`, when nothing was known before.
 *
 * Equal tails of Gamma(events + ½, exposure), with the lower limit 0 at no event (Jeffreys).
 *
 * @returns limits per unit of exposure, or null when `exposure` is 0
 * @throws {RangeError} if `events` is not a whole number ≥ 0, `exposure` negative, or `level` not inside 0…1
 * @example
 * jeffreysRateInterval(16, 20); // => [0.4762, 1.2681]
 */
export function jeffreysRateInterval(events: number, exposure: number, level = 0.95): RateLimits {
  requireRate("jeffreysRateInterval", events, exposure, level);
  if (exposure === 0) return null;
  const low = events === 0 ? 0 : gammaQuantile((1 - level) / 2, events + 0.5);
  return [low / exposure, gammaQuantile((1 + level) / 2, events + 0.5) / exposure];
}

/**
 * Highest rate that the count still allows: with nothing seen at all it is the "three over exposure" of thumb.
 *
 * One-sided exact limit (Garwood 1936); for no event it is −ln(1 − level) / exposure.
 *
 * @returns limit per unit of exposure, or null when `exposure` is 0
 * @throws {RangeError} if `events` is not a whole number ≥ 0, `exposure` negative, or `level` not inside 0…1
 * @example
 * rateUpperLimit(0, 5); // => 0.599146
 */
export function rateUpperLimit(events: number, exposure: number, level = 0.95): number | null {
  requireRate("rateUpperLimit", events, exposure, level);
  return exposure === 0 ? null : gammaQuantile(level, events + 1) / exposure;
}
