import { gammaAbove, gammaBelow } from "./incomplete-gamma.ts";
import type { RateLimits } from "./rate-interval.ts";
import { requireInside, requireNonNegative, requireWhole } from "./requirement.ts";
import { rootBetween } from "./root-between.ts";

const atLeast = (k: number, mean: number): number => (k <= 0 ? 1 : gammaBelow(mean, k));
const atMost = (k: number, mean: number): number => (k < 0 ? 0 : gammaAbove(mean, k + 1));

/**
 * Range for a rate whose coverage is right on average: the exact interval with half weight on the count seen.
 *
 * Mid-P interval with equal tails (Lancaster 1961, JASA 56:223-234).
 *
 * @returns limits per unit of exposure, or null when `exposure` is 0
 * @throws {RangeError} if `events` is not a whole number ≥ 0, `exposure` negative, or `level` not inside 0…1
 * @example
 * midPRateInterval(16, 20); // => [0.4736, 1.2715]
 */
export function midPRateInterval(events: number, exposure: number, level = 0.95): RateLimits {
  requireWhole("midPRateInterval", "events", events);
  requireNonNegative("midPRateInterval", "exposure", exposure);
  requireInside("midPRateInterval", "level", level);
  if (exposure === 0) return null;
  const tail = (1 - level) / 2;
  const above = (mean: number) => (atLeast(events + 1, mean) + atLeast(events, mean)) / 2 - tail;
  const below = (mean: number) => (atMost(events - 1, mean) + atMost(events, mean)) / 2 - tail;
  let far = events + 10;
  while (below(far) > 0) far *= 2;
  const low = events === 0 ? 0 : rootBetween(above, 0, events);
  return [low / exposure, rootBetween(below, 0, far) / exposure];
}
