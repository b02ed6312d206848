import { requireInside, requireNonNegative, requireSome } from "./requirement.ts";
import { univariate } from "./univariate.ts";

export interface DemandPattern {
  /** Periods for every one with demand; null when there is none. */
  interval: number | null;
  /** Squared coefficient of variation of the amounts; null under two demands. */
  cv2: number | null;
  /** Class of Syntetos, Boylan & Croston (2005); null under two demands. */
  pattern: "smooth" | "erratic" | "intermittent" | "lumpy" | null;
}

export interface CrostonState {
  /** Smoothed amount of a demand and periods between two; null before the first demand. */
  size: number | null;
  interval: number | null;
  /** Demand a period to expect, after Croston, and with the correction of his bias. */
  croston: number;
  sba: number;
}

export interface TsbState {
  size: number | null;
  /** Chance of a demand in the next period. */
  probability: number;
  forecast: number;
}

/** Cut-offs between the four classes (Syntetos, Boylan & Croston 2005, JORS 56:495-503). */
const LONG_INTERVAL = 1.32, WIDE_CV2 = 0.49;

/** @throws {RangeError} if the series is empty or a demand negative */
function requireSeries(caller: string, series: readonly number[]): void {
  requireSome(caller, "series", series);
  series.forEach((demand) => { requireNonNegative(caller, "series", demand); });
}

/**
 * How a line is used: often or seldom, in even or in wild amounts.
 *
 * @param series demand by period, from the first period watched to the last, the ones without use included
 * @throws {RangeError} if the series is empty or a demand negative
 * @example
 * demandPattern([2, 0, 0, 3, 0, 1, 0, 0, 0, 4, 0, 2]); // => { interval: 2.4, cv2: 0.2257, pattern: "intermittent" }
 * demandPattern([0, 0]); // => { interval: null, cv2: null, pattern: null }
 */
export function demandPattern(series: readonly number[]): DemandPattern {
  requireSeries("demandPattern", series);
  const amounts = series.filter((demand) => demand > 0);
  if (amounts.length === 0) return { interval: null, cv2: null, pattern: null };
  const interval = series.length / amounts.length, { mean, sd } = univariate(amounts);
  if (sd === null) return { interval, cv2: null, pattern: null };
  const cv2 = (sd / mean) ** 2, seldom = interval >= LONG_INTERVAL, wild = cv2 >= WIDE_CV2;
  return { interval, cv2, pattern: seldom ? (wild ? "lumpy" : "intermittent") : wild ? "erratic" : "smooth" };
}

/** State after each period: amounts and intervals smoothed apart, each started at its first value. */
function crostonStates(series: readonly number[], alpha: number): CrostonState[] {
  let size: number | null = null, interval: number | null = null, since = 0;
  return series.map((demand) => {
    since += 1;
    if (demand > 0) {
      size = size === null ? demand : size + alpha * (demand - size);
      interval = interval === null ? since : interval + alpha * (since - interval);
      since = 0;
    }
    const croston = size === null || interval === null ? 0 : size / interval;
    return { size, interval, croston, sba: (1 - alpha / 2) * croston };
  });
}

/** State after each period: the chance updated every period, the amount only at a demand. */
function tsbStates(series: readonly number[], alpha: number, beta: number): TsbState[] {
  const firstAt = series.findIndex((demand) => demand > 0);
  if (firstAt < 0) return series.map(() => ({ size: null, probability: 0, forecast: 0 }));
  let size = series[firstAt] as number, probability = 1 / (firstAt + 1);
  return series.map((demand) => {
    if (demand > 0) size += alpha * (demand - size);
    probability += beta * ((demand > 0 ? 1 : 0) - probability);
    return { size, probability, forecast: size * probability };
  });
}

/**
 * Demand a period to expect from a line used seldom: amounts and intervals smoothed apart.
 *
 * Croston (1972, Operational Research Quarterly 23:289-303), and the correction of its bias by Syntetos & Boylan (2005,
 * International Journal of Forecasting 21:303-314). Neither sees a line dying out: between demands nothing changes.
 *
 * @param series demand by period, the ones without use included
 * @param alpha weight of the newest value
 * @throws {RangeError} if the series is empty, a demand negative or `alpha` not inside 0…1
 * @example
 * croston([2, 0, 0, 3, 0, 1, 0, 0, 0, 4, 0, 2], 0.1).croston; // => 1.3602
 * croston([2, 0, 0, 3, 0, 1, 0, 0, 0, 4, 0, 2], 0.1).sba; // => 1.2921
 */
export function croston(series: readonly number[], alpha: number): CrostonState {
  requireSeries("croston", series);
  requireInside("croston", "alpha", alpha);
  return crostonStates(series, alpha).at(-1) as CrostonState;
}

/**
 * Demand a period to expect from a line that may be dying out: the chance of a demand fades with every period without.
 *
 * Teunter, Syntetos & Babai (2011, European Journal of Operational Research 214:606-615), started at the first demand and
 * one over the periods until it.
 *
 * @param series demand by period, the ones without use included
 * @param alpha weight of the newest amount
 * @param beta weight of the newest period in the chance
 * @throws {RangeError} if the series is empty, a demand negative or a weight not inside 0…1
 * @example
 * tsb([2, 0, 0, 3, 0, 1, 0, 0, 0, 4, 0, 2], 0.1, 0.1).forecast; // => 1.2836
 */
export function tsb(series: readonly number[], alpha: number, beta: number): TsbState {
  requireSeries("tsb", series);
  requireInside("tsb", "alpha", alpha);
  requireInside("tsb", "beta", beta);
  return tsbStates(series, alpha, beta).at(-1) as TsbState;
}

/**
 * What each method would have said before each period, to score it on the line's own past.
 *
 * @returns for every period the forecast made from the periods before it; null before the first
 * @throws {RangeError} if the series is empty, a demand negative or `alpha` not inside 0…1
 * @example
 * oneStepForecasts([2, 0, 4], 0.5).croston; // => [null, 2, 2]
 * oneStepForecasts([2, 0, 4], 0.5).tsb; // => [null, 2, 1]
 */
export function oneStepForecasts(series: readonly number[], alpha: number): Record<"croston" | "sba" | "tsb", (number | null)[]> {
  requireSeries("oneStepForecasts", series);
  requireInside("oneStepForecasts", "alpha", alpha);
  const late = (forecasts: number[]): (number | null)[] => [null, ...forecasts.slice(0, -1)];
  const states = crostonStates(series, alpha);
  // The start of TSB is the first demand, so before it nothing is known that the method could use.
  const known = tsbStates(series, alpha, alpha), first = series.findIndex((demand) => demand > 0);
  return {
    croston: late(states.map((state) => state.croston)), sba: late(states.map((state) => state.sba)),
    tsb: late(known.map((state, i) => (i < first ? 0 : state.forecast))),
  };
}
