import { demandAtMost, demandQuantile } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireInside } from "./requirement.ts";

export interface CountBand { readonly low: number; readonly high: number; /** Chance that the count lies in it, ends included. */ readonly chance: number }

/**
 * Whole numbers that hold the count with a chance as near to `level` as whole numbers allow.
 *
 * With small means the numbers between the two quantiles hold far more (a Poisson mean of 2: 0 to 4 holds 95 %, not 80 %), so an
 * end is moved in by one where that comes nearer.
 *
 * @throws {RangeError} if `level` lies outside 0…1
 * @example
 * countBand({ mean: 2, size: Infinity }, 0.8); // => { low: 1, high: 4, chance: 0.8120 }
 */
export function countBand(count: CountDistribution, level: number): CountBand {
  requireInside("countBand", "level", level);
  const from = demandQuantile((1 - level) / 2, count), to = demandQuantile((1 + level) / 2, count);
  const bands = [[from, to], [from + 1, to], [from, to - 1], [from + 1, to - 1]].filter(([low = 0, high = 0]) => low <= high)
    .map(([low = 0, high = 0]) => ({ low, high, chance: demandAtMost(high, count) - demandAtMost(low - 1, count) }));
  return bands.reduce((best, band) => (Math.abs(band.chance - level) < Math.abs(best.chance - level) - 1e-9 ? band : best));
}
