import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { gammaAbove, gammaBelow } from "./incomplete-gamma.ts";
import { requireSome } from "./requirement.ts";
import { rootBetween } from "./root-between.ts";

/** One reel watched from 0 to `end` with the times of its failures, rising. */
export interface Line { end: number; events: readonly number[] }

export interface Trend {
  /** Above 0: failures come faster with time. Null without a failure. */
  statistic: number | null;
  p: number | null;
}
export interface PowerTrend extends Trend {
  /** Shape of the power law: above 1 faster with time; null when it cannot be had. */
  shape: number | null;
  degrees: number;
}

/** Failures with the end of their reel's watching; at the very end of watching nothing can be said of a trend. */
const seen = (lines: readonly Line[]) => lines.flatMap(({ end, events }) => events.map((time) => ({ time, end })));

const twoSided = (z: number): number => Math.min(1, 2 * normalCdf(-Math.abs(z), 0, 1));

/**
 * Whether failures gather late or early in the time watched (Laplace; Cox & Lewis 1966, The Statistical Analysis of Series
 * of Events, sec. 3.3), pooled over reels (Kvaløy & Lindqvist 1998, Reliability Engineering & System Safety 60:13-28).
 *
 * @throws {RangeError} if there is no reel
 * @example
 * laplaceTrend([{ end: 10, events: [9, 9.5] }]).statistic; // => 2.0821
 */
export function laplaceTrend(lines: readonly Line[]): Trend {
  requireSome("laplaceTrend", "lines", lines);
  const all = seen(lines);
  if (all.length === 0) return { statistic: null, p: null };
  const away = all.reduce((sum, { time, end }) => sum + time - end / 2, 0);
  const statistic = away / Math.sqrt(all.reduce((sum, { end }) => sum + end ** 2, 0) / 12);
  return { statistic, p: twoSided(statistic) };
}

/** Shape by maximum likelihood over all reels of a common power law; null where every failure is at 0 or at its end. */
function powerShape(lines: readonly Line[]): number | null {
  const all = seen(lines), watched = lines.filter(({ end }) => end > 0), longest = Math.max(...watched.map(({ end }) => end));
  const logs = all.reduce((sum, { time }) => sum + Math.log(time / longest), 0);
  if (!Number.isFinite(logs) || logs === 0) return null;
  const slope = (shape: number) => {
    const power = watched.map(({ end }) => (end / longest) ** shape);
    const sum = power.reduce((total, one) => total + one, 0);
    const mean = watched.reduce((total, { end }, i) => total + (power[i] as number) * Math.log(end / longest), 0) / sum;
    return all.length / shape + logs - all.length * mean;
  };
  return slope(0.001) > 0 && slope(100) < 0 ? rootBetween(slope, 0.001, 100, 1e-13) : null;
}

/**
 * Whether failures come faster or slower by a power law: MIL-HDBK-189 (1981) test, pooled over reels.
 *
 * 2 Σ ln(end / time) is chi-square with 2n degrees of freedom when there is no trend; small values mean faster. The shape is
 * the maximum-likelihood estimate over all reels (Crow 1974).
 *
 * @throws {RangeError} if there is no reel
 * @example
 * powerTrend([{ end: 10, events: [2, 5] }]).statistic; // => 4.6052
 */
export function powerTrend(lines: readonly Line[]): PowerTrend {
  requireSome("powerTrend", "lines", lines);
  const all = seen(lines);
  if (all.length === 0) return { statistic: null, p: null, shape: null, degrees: 0 };
  const statistic = 2 * all.reduce((sum, { time, end }) => sum + Math.log(end / time), 0);
  if (!Number.isFinite(statistic)) return { statistic: null, p: null, shape: null, degrees: 2 * all.length };
  const below = gammaBelow(statistic / 2, all.length), above = gammaAbove(statistic / 2, all.length);
  return { statistic, p: Math.min(1, 2 * Math.min(below, above)), shape: powerShape(lines), degrees: 2 * all.length };
}

/**
 * Laplace's figure made fit for failures that come in clumps or evenly: divided by how much the gaps vary
 * (Lewis & Robinson 1974). The watching of one reel is taken to end at its last failure.
 *
 * @returns null statistic under three failures or when all gaps are alike
 * @example
 * lewisRobinson([1, 2, 4, 8]).statistic; // => -1.7678
 */
export function lewisRobinson(events: readonly number[]): Trend {
  const times = [...events].sort((a, b) => a - b), last = times.at(-1);
  if (last === undefined || times.length < 3) return { statistic: null, p: null };
  const gaps = times.map((time, i) => time - (times[i - 1] ?? 0)), mean = last / gaps.length;
  const varying = Math.sqrt(gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / (gaps.length - 1)) / mean;
  const { statistic } = laplaceTrend([{ end: last, events: times.slice(0, -1) }]);
  if (statistic === null || varying === 0) return { statistic: null, p: null };
  return { statistic: statistic / varying, p: twoSided(statistic / varying) };
}

/**
 * The same over many reels: the pooled Laplace figure divided by how much the gaps between a reel's failures vary (Kvaløy &
 * Lindqvist 1998, Reliability Engineering & System Safety 60:13-28).
 *
 * @returns null statistic under three gaps or when all are alike
 * @throws {RangeError} if there is no reel
 * @example
 * pooledLewisRobinson([{ end: 8, events: [1, 2, 4, 8] }]).statistic; // => -0.3062
 */
export function pooledLewisRobinson(lines: readonly Line[]): Trend {
  const { statistic } = laplaceTrend(lines);
  const gaps = lines.flatMap(({ events }) => [...events].sort((a, b) => a - b).map((time, i, all) => time - (all[i - 1] ?? 0)));
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const varying = Math.sqrt(gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / (gaps.length - 1)) / mean;
  if (statistic === null || gaps.length < 3 || !(varying > 0)) return { statistic: null, p: null };
  return { statistic: statistic / varying, p: twoSided(statistic / varying) };
}
