import { maximumBetween } from "./maximum-between.ts";
import { requireInside, requireSome } from "./requirement.ts";

/** What is known after the last value; `sse` is the sum of squared one-step errors. */
export interface Smoothed { readonly level: number; readonly sse: number }

/**
 * Simple exponential smoothing: the level moves by `weight` of each miss. A missing value moves nothing.
 *
 * Brown 1959; as in Hyndman & Athanasopoulos 2021, Forecasting: Principles and Practice, 3rd ed., sec. 8.1.
 *
 * @throws {RangeError} if no value is known or `weight` lies outside 0…1
 * @example
 * simpleSmoothing([4, null, 8], 0.5); // => { level: 6, sse: 16 }
 */
export function simpleSmoothing(values: readonly (number | null)[], weight: number): Smoothed {
  requireInside("simpleSmoothing", "weight", weight);
  const known = values.filter((value) => value !== null);
  requireSome("simpleSmoothing", "values", known);
  // The first few together: one odd first week would colour a short history.
  const head = known.slice(0, Math.max(1, Math.min(8, known.length >> 2)));
  let level = head.reduce((sum, value) => sum + value, 0) / head.length, sse = 0;
  for (const value of known) {
    const miss = value - level;
    sse += miss ** 2;
    level += weight * miss;
  }
  return { level, sse };
}

/**
 * The weight with the smallest one-step errors, between 0.02 and 0.6.
 *
 * @throws what `simpleSmoothing` throws
 * @example
 * bestSmoothing([5, 5, 5, 9, 9, 9, 9, 9]).weight; // => 0.600
 */
export function bestSmoothing(values: readonly (number | null)[]): Smoothed & { readonly weight: number } {
  const { at } = maximumBetween((weight) => -simpleSmoothing(values, weight).sse, 0.02, 0.6, 12);
  return { ...simpleSmoothing(values, at), weight: at };
}

/** Level, trend a step, and the factors of the seasons: `seasons[t % seasons.length]` belongs to step t. */
export interface SeasonState { readonly level: number; readonly trend: number; readonly seasons: readonly number[] }
export interface SeasonWeights { readonly level: number; readonly trend: number; readonly season: number; /** 1 is no damping. */ readonly damping: number }

/**
 * Holt–Winters smoothing with multiplying seasons and a trend that may be damped (Winters 1960; Gardner & McKenzie 1985,
 * Management Science 31:1237-1246). Values before `first` were used for the start and are passed over; missing ones move nothing
 * but the level by its trend.
 *
 * @example
 * holtWinters([10, 20, 12], { level: 9, trend: 1, seasons: [1, 2] }, { level: 0.5, trend: 0.1, season: 0.1, damping: 1 }).state.level; // => 11.725
 */
export function holtWinters(values: readonly (number | null)[], start: SeasonState, weights: SeasonWeights, first = 0): { state: SeasonState; sse: number } {
  const seasons = [...start.seasons];
  let { level, trend } = start, sse = 0;
  for (let t = first; t < values.length; t += 1) {
    const value = values[t] ?? null, at = t % seasons.length, season = seasons[at] as number, damped = weights.damping * trend, before = level;
    if (value === null) { level += damped; trend = damped; continue; }
    sse += (value - (level + damped) * season) ** 2;
    level = Math.max(1e-6, weights.level * (value / season) + (1 - weights.level) * (before + damped));
    trend = weights.trend * (level - before) + (1 - weights.trend) * damped;
    seasons[at] = Math.max(1e-3, weights.season * (value / level) + (1 - weights.season) * season);
  }
  return { state: { level, trend, seasons }, sse };
}

/**
 * What Holt–Winters expects 1, 2, … steps after the last of `done` values.
 *
 * @example
 * holtWintersAhead({ level: 10, trend: 1, seasons: [1, 2] }, 2, 3, 1); // => [11, 24, 13]
 */
export function holtWintersAhead({ level, trend, seasons }: SeasonState, done: number, ahead: number, damping: number): number[] {
  let gained = 0, step = 1;
  return Array.from({ length: ahead }, (_, h) => {
    step *= damping;
    gained += step * trend;
    return Math.max(0, (level + gained) * (seasons[(done + h) % seasons.length] as number));
  });
}
