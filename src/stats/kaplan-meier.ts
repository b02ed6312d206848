import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireInside, requirePositive } from "./requirement.ts";

/** A life known to its end (`failed`) or until it was last seen good. */
export interface KnownLife { readonly time: number; readonly failed: boolean }

export interface SurvivalStep {
  readonly time: number;
  readonly at_risk: number;
  readonly failed: number;
  /** Share still good after it. */
  readonly good: number;
  readonly se: number;
  readonly low: number;
  readonly high: number;
}

/** Limits on the log(−log) scale, which keeps them inside 0…1. */
function around(good: number, variance: number, z: number): { low: number; high: number } {
  if (good === 0 || good === 1) return { low: good, high: good };
  const far = (z * Math.sqrt(variance)) / Math.abs(Math.log(good));
  return { low: good ** Math.exp(far), high: good ** Math.exp(-far) };
}

/**
 * Share still good by time, from lives known exactly or cut off (Kaplan & Meier 1958, JASA 53:457-481), with Greenwood's standard
 * error and limits on the log(−log) scale. Lives cut off at the time of a failure are still counted as at risk there.
 *
 * @returns one step for each time with a failure
 * @throws {RangeError} unless every time is above 0
 * @example
 * kaplanMeier([{ time: 3, failed: true }, { time: 5, failed: false }])[0]?.good; // => 0.5000
 */
export function kaplanMeier(lives: readonly KnownLife[], level = 0.95): SurvivalStep[] {
  lives.forEach(({ time }) => { requirePositive("kaplanMeier", "time", time); });
  requireInside("kaplanMeier", "level", level);
  const z = normalQuantile((1 + level) / 2, 0, 1), ordered = [...lives].sort((a, b) => a.time - b.time), steps: SurvivalStep[] = [];
  let good = 1, variance = 0;
  for (let first = 0, next = 0; first < ordered.length; first = next) {
    const { time } = ordered[first] as KnownLife;
    while (next < ordered.length && ordered[next]?.time === time) next += 1;
    const at_risk = ordered.length - first, failed = ordered.slice(first, next).filter((one) => one.failed).length;
    if (failed === 0) continue;
    good *= 1 - failed / at_risk;
    variance += failed === at_risk ? 0 : failed / (at_risk * (at_risk - failed));
    steps.push({ time, at_risk, failed, good, se: good * Math.sqrt(variance), ...around(good, variance, z) });
  }
  return steps;
}
