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

/** Rarer than this beside the likeliest count, a count adds nothing. */
const NOTHING = 1e-300;

/** Hypergeometric chances of fewer, exactly and more than `seen`, walked outwards from the likeliest count. */
function tails(seen: number, drawn: number, failed: number, total: number) {
  const least = Math.max(0, drawn + failed - total), most = Math.min(drawn, failed);
  const likeliest = Math.min(most, Math.max(least, Math.floor(((drawn + 1) * (failed + 1)) / (total + 2))));
  const rise = (count: number) => ((drawn - count) * (failed - count)) / ((count + 1) * (total - drawn - failed + count + 1));
  const sum = { below: 0, at: 0, above: 0 };
  const add = (count: number, weight: number) => { sum[count < seen ? "below" : count > seen ? "above" : "at"] += weight; };
  for (let count = likeliest, weight = 1; count <= most && weight > NOTHING; weight *= rise(count), count += 1) add(count, weight);
  for (let count = likeliest - 1, weight = 1; count >= least; count -= 1) {
    weight /= rise(count);
    if (weight < NOTHING) break;
    add(count, weight);
  }
  const all = sum.below + sum.at + sum.above;
  return { below: sum.below / all, at: sum.at / all, above: sum.above / all };
}

/**
 * Whether two shares of failures differ, by the exact test that holds both totals fixed.
 *
 * The first count is then hypergeometric (Fisher 1935, The Design of Experiments); mid-p after Lancaster (1961, JASA
 * 56:223-234). Each tail is a sum of its own, never one minus the other. With no failure, or nothing but failures, nothing can differ
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
  const { below, at, above } = tails(first.failed, first.inspected, failed, inspected);
  const pHighMid = above + at / 2, pLowMid = below + at / 2;
  return {
    pHigh: Math.min(1, above + at), pLow: Math.min(1, below + at),
    pHighMid, pMid: Math.min(1, 2 * Math.min(pHighMid, pLowMid)),
  };
}
