import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import type { Random } from "./random.ts";
import { requireNonNegative, requirePositive } from "./requirement.ts";

/** A Poisson mean is cut into pieces of at most this size, so that exp(−piece) keeps its digits. */
const PIECE = 30;

/** The inverse of a distribution is infinite at 0, so that one value is drawn again. */
function aboveZero(random: Random): number {
  for (;;) {
    const uniform = random();
    if (uniform > 0) return uniform;
  }
}

/**
 * One draw from the normal distribution, by inversion: one uniform number a draw, in the same order.
 *
 * @throws {RangeError} if `sd` is negative or not finite
 * @example
 * drawNormal(() => 0.975, 10, 2); // => 13.9199
 */
export function drawNormal(random: Random, mean = 0, sd = 1): number {
  requireNonNegative("drawNormal", "sd", sd);
  return mean + sd * normalQuantile(aboveZero(random), 0, 1);
}

/**
 * One draw from the log-normal distribution whose logarithm has mean `logMean` and standard deviation `logSd`.
 *
 * @throws {RangeError} if `logSd` is negative or not finite
 * @example
 * drawLogNormal(() => 0.5, Math.log(42), 0.4); // => 42.0000
 */
export function drawLogNormal(random: Random, logMean: number, logSd: number): number {
  requireNonNegative("drawLogNormal", "logSd", logSd);
  return Math.exp(drawNormal(random, logMean, logSd));
}

/**
 * Mean and standard deviation of the logarithm for a log-normal quantity known by its own mean and standard deviation.
 *
 * @throws {RangeError} if `mean` is not above zero or `sd` is negative
 * @example
 * logNormalOf(6, 2); // => { logMean: 1.7391, logSd: 0.3246 }
 */
export function logNormalOf(mean: number, sd: number): { logMean: number; logSd: number } {
  requirePositive("logNormalOf", "mean", mean);
  requireNonNegative("logNormalOf", "sd", sd);
  const logVariance = Math.log1p((sd / mean) ** 2);
  return { logMean: Math.log(mean) - logVariance / 2, logSd: Math.sqrt(logVariance) };
}

/**
 * One draw from the Weibull distribution with survival exp(−(x / scale)^shape), by inversion.
 *
 * @throws {RangeError} if `shape` or `scale` is not above zero
 * @example
 * drawWeibull(() => 0.5, 2, 100); // => 83.2555
 */
export function drawWeibull(random: Random, shape: number, scale: number): number {
  requirePositive("drawWeibull", "shape", shape);
  requirePositive("drawWeibull", "scale", scale);
  return scale * (-Math.log1p(-random())) ** (1 / shape);
}

/**
 * One draw from the gamma distribution with mean shape / rate (Marsaglia & Tsang 2000, ACM TOMS 26:363-372).
 *
 * @throws {RangeError} if `shape` or `rate` is not above zero
 * @example
 * drawGamma(() => 0.5, 4, 2); // => 1.8333
 */
export function drawGamma(random: Random, shape: number, rate: number): number {
  requirePositive("drawGamma", "shape", shape);
  requirePositive("drawGamma", "rate", rate);
  if (shape < 1) return drawGamma(random, shape + 1, rate) * aboveZero(random) ** (1 / shape);
  const base = shape - 1 / 3, spread = 1 / Math.sqrt(9 * base);
  for (;;) {
    const normal = drawNormal(random), cube = (1 + spread * normal) ** 3;
    if (cube > 0 && Math.log(aboveZero(random)) < normal ** 2 / 2 + base * (1 - cube + Math.log(cube))) return (base * cube) / rate;
  }
}

/** Sequential search through the distribution; exact for the small means it is called with. */
function smallPoisson(random: Random, mean: number): number {
  let left = random(), count = 0, probability = Math.exp(-mean);
  while (left >= probability && probability > 0) {
    left -= probability;
    count += 1;
    probability *= mean / count;
  }
  return count;
}

/**
 * One draw from the Poisson distribution; a sum of independent draws when the mean is large.
 *
 * @returns a whole number of at least 0
 * @throws {RangeError} if `mean` is negative or not finite
 * @example
 * drawPoisson(() => 0.5, 2.5); // => 2
 */
export function drawPoisson(random: Random, mean: number): number {
  requireNonNegative("drawPoisson", "mean", mean);
  let count = 0;
  for (let left = mean; left > 0; left -= PIECE) count += smallPoisson(random, Math.min(left, PIECE));
  return count;
}
