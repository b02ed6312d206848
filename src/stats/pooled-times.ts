import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { pooledGroups } from "./pooled-groups.ts";
import type { NoPooling, PooledGroups } from "./pooled-groups.ts";
import { requirePositive } from "./requirement.ts";

export interface PooledTime {
  /** Typical time of the group, pulled toward all groups, and the range in which it plausibly lies. */
  median: number;
  medianLow: number;
  medianHigh: number;
  /** Time that the group's next job stays under in four cases of five, the doubt about the median included. */
  p80: number;
  /** The same for nine cases of ten. */
  p90: number;
}

export interface PooledTimes { status: PooledGroups["status"]; times: PooledTime[] }

/**
 * Typical time and bad-day time of each group (each model within a job), thin groups leaning on the others.
 *
 * Logarithms of times are pooled by `pooledGroups`; a product of many small causes makes times log-normal.
 *
 * @param groups times by group, all above zero: slips and waiting set aside before
 * @param level of the range of the median
 * @throws {RangeError} if there is no group, a group is empty or a time is not above zero
 * @example
 * pooledTimes([[30, 40, 35], [60, 80], [45, 50, 55], [38], [52, 61]]).status; // => "fitted"
 * pooledTimes([[30], [40]]); // => { reason: "one value in every group" }
 */
export function pooledTimes(groups: readonly (readonly number[])[], level = 0.95): PooledTimes | NoPooling {
  groups.flat().forEach((time) => { requirePositive("pooledTimes", "time", time); });
  const pooled = pooledGroups(groups.map((group) => group.map(Math.log)));
  if ("reason" in pooled) return pooled;
  const z = normalQuantile((1 + level) / 2, 0, 1), z80 = normalQuantile(0.8, 0, 1), z90 = normalQuantile(0.9, 0, 1);
  return {
    status: pooled.status,
    times: pooled.groups.map(({ pooled: middle, se }) => ({
      median: Math.exp(middle), medianLow: Math.exp(middle - z * se), medianHigh: Math.exp(middle + z * se),
      p80: Math.exp(middle + z80 * Math.sqrt(pooled.within + se ** 2)), p90: Math.exp(middle + z90 * Math.sqrt(pooled.within + se ** 2)),
    })),
  };
}
