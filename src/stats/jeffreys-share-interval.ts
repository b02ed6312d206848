import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { requireInside, requireShare } from "./requirement.ts";

/**
 * Range for a share that holds it with probability `level`, when nothing was known before the inspections.
 *
 * Equal tails of Beta(failed + ½, good + ½), with the limit 0 at no failure and 1 at no good one (Brown, Cai & DasGupta
 * 2001, Statistical Science 16:101-133).
 *
 * @returns lower and upper limit, both shares in 0…1
 * @throws {RangeError} if `inspected` is below one or `failed` outside 0…`inspected`, or `level` not inside 0…1
 * @example
 * jeffreysShareInterval(1, 2); // => [0.0608, 0.9392]
 */
export function jeffreysShareInterval(failed: number, inspected: number, level = 0.95): [number, number] {
  requireShare("jeffreysShareInterval", failed, inspected);
  requireInside("jeffreysShareInterval", "level", level);
  const tail = (1 - level) / 2, good = inspected - failed;
  const low = failed === 0 ? 0 : betaQuantile(tail, failed + 0.5, good + 0.5);
  const high = good === 0 ? 1 : 1 - betaQuantile(tail, good + 0.5, failed + 0.5);
  return [low, high];
}
