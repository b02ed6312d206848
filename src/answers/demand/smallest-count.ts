import { demandQuantile } from "../../stats/negative-binomial.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";

/** Counts beyond this are reached only by figures that are none. */
const LARGEST = 1e6;

/**
 * The same as `demandQuantile`, added up term by term: ten times faster for the small counts of a bench, of which route
 * scores need thousands. For figures the owner sees `demandQuantile` stands, which keeps its digits in the tail.
 *
 * @example
 * smallestCount(0.95, { mean: 2.4, size: 2.56 }); // => 7
 */
export function smallestCount(probability: number, { mean, size }: CountDistribution): number {
  if (mean === 0) return 0;
  const ratio = mean / (size + mean);
  let term = Math.exp(-size * Math.log1p(mean / size)), sum = term, count = 0;
  // A mean of hundreds has no first term left to start from.
  if (term < 1e-290) return demandQuantile(probability, { mean, size });
  while (sum < probability && count < LARGEST) {
    term *= (ratio * (count + size)) / (count + 1);
    sum += term;
    count += 1;
  }
  return count;
}
