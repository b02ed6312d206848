import { binomialAtMost } from "./binomial.ts";
import { requireInside, requireWhole } from "./requirement.ts";

/** Smallest count whose chance of that many or fewer reaches `probability`. */
function quantile(inspected: number, share: number, probability: number): number {
  let low = 0, high = inspected;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (binomialAtMost(middle, inspected, share) >= probability) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Between which shares nearly all models lie when all fail alike and only chance moves them.
 *
 * Exact binomial limits, made smooth between whole counts (Spiegelhalter 2005, Statistics in Medicine 24:1185-1202).
 *
 * @param share common to all models
 * @param level share of models inside
 * @throws {RangeError} if `inspected` is not a whole number of at least 1 or `share` or `level` not inside 0…1
 * @example
 * funnelLimits(100, 0.1, 0.95); // => [0.0404, 0.1577]
 */
export function funnelLimits(inspected: number, share: number, level: number): [number, number] {
  requireWhole("funnelLimits", "inspected", inspected, 1);
  requireInside("funnelLimits", "share", share);
  requireInside("funnelLimits", "level", level);
  const limit = (probability: number) => {
    const count = quantile(inspected, share, probability), at = binomialAtMost(count, inspected, share);
    const below = binomialAtMost(count - 1, inspected, share), part = at > below ? (at - probability) / (at - below) : 0;
    return Math.min(1, Math.max(0, (count - part) / inspected));
  };
  return [limit((1 - level) / 2), limit((1 + level) / 2)];
}
