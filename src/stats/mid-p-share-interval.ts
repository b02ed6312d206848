import { binomialAtLeast, binomialAtMost } from "./binomial.ts";
import { requireInside, requireShare } from "./requirement.ts";
import { rootBetween } from "./root-between.ts";

/**
 * Range for a share whose coverage is right on average: the exact interval with half weight on the count seen.
 *
 * Mid-P interval with equal tails (Lancaster 1961, JASA 56:223-234; Berry & Armitage 1995, The Statistician 44:417-423).
 *
 * @returns lower and upper limit, both shares in 0…1
 * @throws {RangeError} if `inspected` is below one or `failed` outside 0…`inspected`, or `level` not inside 0…1
 * @example
 * midPShareInterval(1, 2); // => [0.0250, 0.9750]
 */
export function midPShareInterval(failed: number, inspected: number, level = 0.95): [number, number] {
  requireShare("midPShareInterval", failed, inspected);
  requireInside("midPShareInterval", "level", level);
  const tail = (1 - level) / 2;
  const above = (share: number) => (binomialAtLeast(failed + 1, inspected, share) + binomialAtLeast(failed, inspected, share)) / 2;
  const below = (share: number) => (binomialAtMost(failed - 1, inspected, share) + binomialAtMost(failed, inspected, share)) / 2;
  return [
    failed === 0 ? 0 : rootBetween((share) => above(share) - tail, 0, 1),
    failed === inspected ? 1 : rootBetween((share) => below(share) - tail, 0, 1),
  ];
}
