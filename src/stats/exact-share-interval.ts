import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { requireInside, requireShare } from "./requirement.ts";

/**
 * Range for a share that is never too narrow, whatever the true share: the price is that it is often too wide.
 *
 * Exact interval with equal tails (Clopper & Pearson 1934, Biometrika 26:404-413). For promises and bounds; for
 * describing a share `shareInterval` is the better choice.
 *
 * @returns lower and upper limit, both shares in 0…1
 * @throws {RangeError} if `inspected` is below one or `failed` outside 0…`inspected`, or `level` not inside 0…1
 * @example
 * exactShareInterval(1, 2); // => [0.0126, 0.9874]
 */
export function exactShareInterval(failed: number, inspected: number, level = 0.95): [number, number] {
  requireShare("exactShareInterval", failed, inspected);
  requireInside("exactShareInterval", "level", level);
  const tail = (1 - level) / 2, good = inspected - failed;
  // The upper limit is one minus the lower limit of the share found good, whose small quantile keeps its digits.
  const low = failed === 0 ? 0 : betaQuantile(tail, failed, good + 1);
  const high = good === 0 ? 1 : 1 - betaQuantile(tail, good, failed + 1);
  return [low, high];
}
