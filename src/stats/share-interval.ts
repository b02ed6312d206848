import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireInside, requireShare } from "./requirement.ts";

/**
 * Range in which a true share plausibly lies, given `failed` among `inspected`.
 *
 * Wilson score interval without continuity correction (Wilson 1927, JASA 22:209-212), recommended for small counts by
 * Brown, Cai & DasGupta (2001, Statistical Science 16:101-133). Honest for the small counts a bench has: 1 failure in
 * 2 inspections gives 9 % to 91 %, not 50 %.
 *
 * @param level share of such ranges that contain the truth
 * @returns lower and upper limit, both shares in 0…1
 * @throws {RangeError} if `inspected` is below one or `failed` outside 0…`inspected`, or `level` not inside 0…1
 * @example
 * shareInterval(1, 2); // => [0.0945, 0.9055]
 * shareInterval(0, 10); // => [0, 0.2775]
 */
export function shareInterval(failed: number, inspected: number, level = 0.95): [number, number] {
  requireShare("shareInterval", failed, inspected);
  requireInside("shareInterval", "level", level);
  const z = normalQuantile((1 + level) / 2, 0, 1), share = failed / inspected;
  const scale = 1 + z ** 2 / inspected;
  const middle = (share + z ** 2 / (2 * inspected)) / scale;
  const half = (z / scale) * Math.sqrt((share * (1 - share)) / inspected + z ** 2 / (4 * inspected ** 2));
  return [failed === 0 ? 0 : middle - half, failed === inspected ? 1 : middle + half];
}
