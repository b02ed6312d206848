import betainc from "@stdlib/math-base-special-betainc";
import gammaln from "@stdlib/math-base-special-gammaln";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { gammaAbove, gammaBelow } from "./incomplete-gamma.ts";
import { requireInside, requireNonNegative } from "./requirement.ts";

/**
 * Distribution of a count by its mean and its size: variance = mean + mean² / size. The larger the size, the steadier the
 * demand; with size Infinity it is the Poisson distribution. A mean of 0 is a count that is always 0.
 */
export interface CountDistribution { mean: number; size: number }

/** Two probabilities closer than this are the same but for rounding. */
const ROUNDING = 1e-12;

/** @throws {RangeError} if the mean is negative or the size not above 0 */
function requireCount(caller: string, { mean, size }: CountDistribution): void {
  requireNonNegative(caller, "mean", mean);
  if (!(size > 0)) throw new RangeError(`${caller}: size must be above 0, got ${size}`);
}

/**
 * Variance of the count.
 *
 * @example
 * demandVariance({ mean: 4, size: 2 }); // => 12
 */
export const demandVariance = ({ mean, size }: CountDistribution): number => mean + mean ** 2 / size;

/**
 * Probability of exactly `k`.
 *
 * @throws {RangeError} if the mean is negative or the size not above 0
 * @example
 * demandPmf(0, { mean: 2, size: Infinity }); // => 0.1353
 * demandPmf(0, { mean: 2, size: 1 }); // => 0.3333
 */
export function demandPmf(k: number, demand: CountDistribution): number {
  requireCount("demandPmf", demand);
  const { mean, size } = demand;
  if (k < 0 || !Number.isInteger(k)) return 0;
  if (mean === 0) return k === 0 ? 1 : 0;
  if (size === Infinity) return Math.exp(k * Math.log(mean) - mean - gammaln(k + 1));
  const ways = gammaln(size + k) - gammaln(size) - gammaln(k + 1);
  return Math.exp(ways - size * Math.log1p(mean / size) + k * Math.log(mean / (size + mean)));
}

/**
 * Probability of `k` or less, from its own tail.
 *
 * @throws {RangeError} if the mean is negative or the size not above 0
 * @example
 * demandAtMost(5, { mean: 2.4, size: 2.56 }); // => 0.9110
 */
export function demandAtMost(k: number, demand: CountDistribution): number {
  requireCount("demandAtMost", demand);
  const { mean, size } = demand, whole = Math.floor(k);
  if (whole < 0) return 0;
  if (mean === 0) return 1;
  if (size === Infinity) return gammaAbove(mean, whole + 1);
  return betainc(mean / (size + mean), whole + 1, size, true, true);
}

/**
 * Probability of more than `k`, from its own tail: the chance that `k` on the shelf are not enough.
 *
 * @throws {RangeError} if the mean is negative or the size not above 0
 * @example
 * demandAbove(5, { mean: 2.4, size: 2.56 }); // => 0.0890
 */
export function demandAbove(k: number, demand: CountDistribution): number {
  requireCount("demandAbove", demand);
  const { mean, size } = demand, whole = Math.floor(k);
  if (whole < 0) return 1;
  if (mean === 0) return 0;
  if (size === Infinity) return gammaBelow(mean, whole + 1);
  return betainc(mean / (size + mean), whole + 1, size);
}

/**
 * Smallest count that is enough with at least `probability`: the smallest k with P(count ≤ k) ≥ probability.
 *
 * @throws {RangeError} if the mean is negative, the size not above 0 or `probability` not inside 0…1
 * @example
 * demandQuantile(0.95, { mean: 2.4, size: 2.56 }); // => 7
 * demandQuantile(0.95, { mean: 0, size: Infinity }); // => 0
 */
export function demandQuantile(probability: number, demand: CountDistribution): number {
  requireCount("demandQuantile", demand);
  requireInside("demandQuantile", "probability", probability);
  // The smaller tail decides: a probability just under 1 has no digits left to compare.
  const enough = (k: number) => probability < 0.5
    ? demandAtMost(k, demand) >= probability * (1 - ROUNDING)
    : demandAbove(k, demand) <= (1 - probability) * (1 + ROUNDING);
  const guess = demand.mean + normalQuantile(probability, 0, 1) * Math.sqrt(demandVariance(demand));
  let high = Math.max(0, Math.floor(guess)), low = high, step = 1;
  while (!enough(high)) { low = high; high += step; step *= 2; }
  step = 1;
  while (low >= 0 && enough(low)) { high = low; low -= step; step *= 2; }
  low = Math.max(low, -1);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
