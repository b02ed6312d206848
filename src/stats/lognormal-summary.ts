import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { ascending, sortedQuantile } from "./quantile.ts";
import { requireFinite, requireInside, requireSome } from "./requirement.ts";
import { univariate } from "./univariate.ts";

/** Why a curve and its limits are not given. */
export type NoLognormal = "one time only" | "all times the same" | "times of zero or less";

export interface LognormalCurve {
  /** Mean and standard deviation of the logarithms. */
  logMean: number;
  logSd: number;
  /** Mean that the curve has, and the range in which the true mean plausibly lies. */
  mean: number;
  meanLow: number;
  meanHigh: number;
  /** Time that four jobs in five stay under, by the curve. */
  p80: number;
  /** Range for one more job of the same kind. */
  nextLow: number;
  nextHigh: number;
}

export interface LognormalSummary {
  n: number;
  /** Of the list itself: middle value, plain mean, and the values four in five (null under five values) and nine in ten (null under ten) stay under. */
  median: number;
  mean: number;
  p80: number | null;
  p90: number | null;
  curve: LognormalCurve | null;
  /** Why there is no curve; null when there is one. */
  reason: NoLognormal | null;
}

const FEWEST_FOR_P80 = 5, FEWEST_FOR_P90 = 10;

function curveOf(logs: readonly number[], logMean: number, logSd: number, level: number): LognormalCurve {
  const n = logs.length, variance = logSd ** 2, t = tQuantile((1 + level) / 2, n - 1);
  const error = t * Math.sqrt(variance / n + variance ** 2 / (2 * (n - 1))), middle = logMean + variance / 2;
  const next = t * logSd * Math.sqrt(1 + 1 / n);
  return {
    logMean, logSd, mean: Math.exp(middle), meanLow: Math.exp(middle - error), meanHigh: Math.exp(middle + error),
    p80: Math.exp(logMean + normalQuantile(0.8, 0, 1) * logSd),
    nextLow: Math.exp(logMean - next), nextHigh: Math.exp(logMean + next),
  };
}

/**
 * What is typical, what is the average and what is a bad day, for times that are many short and few long.
 *
 * Median, mean and P80 of the list, and those of a log-normal curve with the modified Cox interval for the mean (Olsson
 * 2005, Journal of Statistics Education 13(1)). One time has no spread; times that are all the same are defaults or
 * rounded, and an interval of width zero would not be believed; a time of zero or less has no logarithm, and none is added
 * to make one.
 *
 * @param minutes in any order and unit
 * @param level of the ranges
 * @throws {RangeError} if the list is empty or holds something else than finite numbers, or `level` is not inside 0…1
 * @example
 * lognormalSummary([30, 45, 40, 60, 120]).curve.mean; // => 60.0221
 * lognormalSummary([30]).reason; // => "one time only"
 */
export function lognormalSummary(minutes: readonly number[], level = 0.95): LognormalSummary {
  requireSome("lognormalSummary", "minutes", minutes);
  requireFinite("lognormalSummary", "minutes", minutes);
  requireInside("lognormalSummary", "level", level);
  const n = minutes.length, sorted = ascending(minutes), plain = {
    n, median: sortedQuantile(sorted, 0.5), mean: univariate(minutes).mean,
    p80: n >= FEWEST_FOR_P80 ? sortedQuantile(sorted, 0.8) : null, p90: n >= FEWEST_FOR_P90 ? sortedQuantile(sorted, 0.9) : null,
  };
  if (minutes.some((time) => time <= 0)) return { ...plain, curve: null, reason: "times of zero or less" };
  const logs = minutes.map(Math.log), { mean: logMean, sd } = univariate(logs);
  if (sd === null) return { ...plain, curve: null, reason: "one time only" };
  if (sd === 0) return { ...plain, curve: null, reason: "all times the same" };
  return { ...plain, curve: curveOf(logs, logMean, sd, level), reason: null };
}
