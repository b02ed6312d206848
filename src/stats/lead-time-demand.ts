import type { CountDistribution } from "./negative-binomial.ts";
import { requireNonNegative, requirePositive } from "./requirement.ts";

/** How long the shelf must last: mean and standard deviation, in the time unit of the rate. */
export interface CoverTime { mean: number; sd: number }

/**
 * Demand while a delivery is under way, when the delivery time varies: variance = mean + (rate × sd)².
 *
 * A Poisson stream over a gamma-distributed time is exactly this negative binomial (Hadley & Whitin 1963, Analysis of
 * Inventory Systems); a steady delivery time gives the Poisson distribution.
 *
 * @param rate demand per unit of time
 * @param cover delivery time plus the time between two orders
 * @throws {RangeError} if the rate or the standard deviation is negative or the mean time not above 0
 * @example
 * leadTimeDemand(30, { mean: 0.08, sd: 0.05 }); // => { mean: 2.4, size: 2.56 }
 */
export function leadTimeDemand(rate: number, cover: CoverTime): CountDistribution {
  requireNonNegative("leadTimeDemand", "rate", rate);
  requirePositive("leadTimeDemand", "cover.mean", cover.mean);
  requireNonNegative("leadTimeDemand", "cover.sd", cover.sd);
  return { mean: rate * cover.mean, size: cover.sd === 0 ? Infinity : (cover.mean / cover.sd) ** 2 };
}

/**
 * The same when the rate itself is only known up to a gamma distribution: both uncertainties widen the demand.
 *
 * Exact mean and variance of a Poisson count with a gamma rate over an independent varying time, carried by the negative
 * binomial with that mean and variance.
 *
 * @param rate posterior of the rate: mean shape / rate
 * @throws {RangeError} if shape, rate or the mean time is not above 0, or the standard deviation negative
 * @example
 * uncertainLeadTimeDemand({ shape: 4, rate: 2 }, { mean: 3, sd: 0 }); // => { mean: 6, size: 4 }
 * uncertainLeadTimeDemand({ shape: 4, rate: 2 }, { mean: 3, sd: 1.5 }); // => { mean: 6, size: 1.7778 }
 */
export function uncertainLeadTimeDemand(rate: { shape: number; rate: number }, cover: CoverTime): CountDistribution {
  requirePositive("uncertainLeadTimeDemand", "rate.shape", rate.shape);
  requirePositive("uncertainLeadTimeDemand", "rate.rate", rate.rate);
  requirePositive("uncertainLeadTimeDemand", "cover.mean", cover.mean);
  requireNonNegative("uncertainLeadTimeDemand", "cover.sd", cover.sd);
  const ofRate = 1 / rate.shape, ofTime = (cover.sd / cover.mean) ** 2;
  return { mean: (rate.shape / rate.rate) * cover.mean, size: 1 / (ofRate + ofTime + ofRate * ofTime) };
}
