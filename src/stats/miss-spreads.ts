import gammaln from "@stdlib/math-base-special-gammaln";
import type { CountDistribution } from "./negative-binomial.ts";

/** A look ahead from step `from` (steps known then), `horizon` steps on, and what came. */
export interface Miss {
  readonly from: number;
  readonly horizon: number;
  readonly mean: number;
  readonly actual: number;
  /** `fitsOf(mean, actual)`: worked out once, as widths are asked for at every later step. */
  readonly fits: Float64Array;
}

/** What spreads are taken for while few misses are known: `scatter` of single steps, and a level that wanders. */
export interface Assumed { readonly scatter: number; readonly mean: number; readonly year: number }

/** Misses weigh against this many assumed ones while few are known. */
const ASSUMED = 10;
/** Relative standard deviation of the level today, and of what a year adds to it: assumptions, soon outweighed by the misses. */
const LEVEL_TODAY = 0.05, LEVEL_A_YEAR = 0.2;
/** Misses to come are larger than those by which a way was chosen. */
const UNSEEN = 1.1;
/** Years after which a miss counts half. */
const HALF_LIFE = 1;
/** Means nearer to 0 than this make no miss the worse. */
const LEAST_MEAN = 0.2;
/** A horizon of each span. */
const MIDDLES = [1, 5, 14];
/** Spreads tried, each a third more than the one before: 1 … about 1,000. */
const RATIO = 4 / 3, SPREADS = Array.from({ length: 25 }, (_, i) => RATIO ** i);

/** Horizons that share their spread: misses of one alone are too few. */
const span = (horizon: number): number => (horizon <= 2 ? 0 : horizon <= 8 ? 1 : 2);

/**
 * A count of this mean that varies `spread` times as much as a Poisson one.
 *
 * @example
 * spreadCount(10, 3); // => { mean: 10, size: 5 }
 */
export const spreadCount = (mean: number, spread: number): CountDistribution => ({ mean, size: spread <= 1 + 1e-9 || mean === 0 ? Infinity : mean / (spread - 1) });

/**
 * Log-likelihood of the count at each of the spreads tried, but for what they share; the first is Poisson's.
 *
 * @example
 * fitsOf(1, 3)[0]; // => -1
 */
export function fitsOf(mean: number, actual: number): Float64Array {
  const told = Math.max(mean, LEAST_MEAN);
  return Float64Array.from(SPREADS, (spread) => {
    const { size } = spreadCount(told, spread);
    if (size === Infinity) return actual * Math.log(told) - told;
    return gammaln(actual + size) - gammaln(size) - size * Math.log(spread) + actual * Math.log(told / (size + told));
  });
}

/** Spread at the top of a curve over SPREADS, the parabola through its three highest neighbours. */
function top(curve: Float64Array): number {
  let at = 0;
  curve.forEach((one, i) => { if (one > (curve[at] as number)) at = i; });
  const before = curve[at - 1], here = curve[at] as number, after = curve[at + 1];
  if (before === undefined || after === undefined) return SPREADS[at] as number;
  return (SPREADS[at] as number) * RATIO ** ((before - after) / (2 * (before - 2 * here + after)));
}

/**
 * How many times more than Poisson counts the misses vary, by span of horizons, never less than once and never less than nearer ones.
 * A miss counts half as much for every year that has passed.
 *
 * The likeliest spread of negative binomial counts, not the mean squared miss: of sparse counts one large cluster swells the square so
 * that nearly all chance is moved to 0, and the range of most weeks becomes narrower, not wider. The assumed misses enter with the
 * likelihood of a scaled chi-square, so that alone they give what is assumed.
 *
 * @param now steps known; later misses are not looked at
 * @example
 * spreadsOf([], { scatter: 2, mean: 0, year: 52 }, 100).map((one) => one.toFixed(1)); // => ["2.2", "2.2", "2.2"]
 */
export function spreadsOf(misses: readonly Miss[], { scatter, mean, year }: Assumed, now: number): readonly number[] {
  const curves = MIDDLES.map((horizon) => {
    const assumed = scatter + (LEVEL_TODAY ** 2 + (LEVEL_A_YEAR ** 2 * horizon) / year) * mean;
    return Float64Array.from(SPREADS, (spread) => (-ASSUMED / 2) * (Math.log(spread) + assumed / spread));
  });
  for (const { from, horizon, fits } of misses) {
    const curve = curves[span(horizon)];
    if (!curve || from + horizon > now) continue;
    const weight = 0.5 ** ((now - from) / year / HALF_LIFE);
    for (let i = 0; i < curve.length; i += 1) curve[i] = (curve[i] as number) + weight * (fits[i] as number);
  }
  let least = 1;
  return curves.map((curve) => (least = Math.max(least, UNSEEN * top(curve))));
}

/**
 * Spread at one horizon, from the spreads by span.
 *
 * @example
 * spreadAt([1, 2, 3], 4); // => 2
 */
export const spreadAt = (spreads: readonly number[], horizon: number): number => spreads[span(horizon)] ?? 1;
