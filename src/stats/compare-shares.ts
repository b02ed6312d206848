import hypergeometricPmf from "@stdlib/stats-base-dists-hypergeometric-pmf";
import type { Seen } from "./beta-prior.ts";
import { requireShare } from "./requirement.ts";

export interface ShareComparison {
  /** Chance of a first count this high, or this low, if both shares were the same. */
  pHigh: number;
  pLow: number;
  /** The same with half weight on the count seen. */
  pHighMid: number;
  /** Two-sided, twice the smaller half-weighted tail: right on average. The one to show. */
  pMid: number;
}

/**
 * Whether two shares of failures differ, by the exact test that holds both totals fixed.
 *
 * The first count is then hypergeometric (Fisher 1935, The Design of Experiments); mid-p after Lancaster (1961, JASA
 * 56:223-234). Both tails are added up from their own end. With no failure, or nothing but failures, nothing can differ
 * and every value is 1.
 *
 * @param first one model
 * @param others all other models together
 * @throws {RangeError} if a count is impossible
 * @example
 * compareShares({ failed: 8, inspected: 20 }, { failed: 10, inspected: 100 }).pMid; // => 0.0027
 * compareShares({ failed: 0, inspected: 5 }, { failed: 0, inspected: 7 }).pMid; // => 1
 */
export function compareShares(first: Seen, others: Seen): ShareComparison {
  requireShare("compareShares", first.failed, first.inspected);
  requireShare("compareShares", others.failed, others.inspected);
  const failed = first.failed + others.failed, inspected = first.inspected + others.inspected;
  if (failed === 0 || failed === inspected) return { pHigh: 1, pLow: 1, pHighMid: 1, pMid: 1 };
  const chance = (count: number) => hypergeometricPmf(count, inspected, failed, first.inspected);
  const least = Math.max(0, failed - others.inspected), most = Math.min(failed, first.inspected);
  let above = 0, below = 0;
  for (let count = most; count > first.failed; count -= 1) above += chance(count);
  for (let count = least; count < first.failed; count += 1) below += chance(count);
  const point = chance(first.failed), pHighMid = above + point / 2, pLowMid = below + point / 2;
  return {
    pHigh: Math.min(1, above + point), pLow: Math.min(1, below + point),
    pHighMid, pMid: Math.min(1, 2 * Math.min(pHighMid, pLowMid)),
  };
}
