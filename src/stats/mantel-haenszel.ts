import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireInside, requirePositive, requireShare, requireWhole } from "./requirement.ts";

/** What was seen within one set of conditions: of the model in question, and of the others. */
export interface Stratum { failed: number; inspected: number; others_failed: number; others_inspected: number }

export interface LikeWithLike {
  status: "compared" | "no failure to compare" | "nothing alike";
  /** How many times as often it fails as the others within the same conditions; null when either side has no failure. */
  ratio: number | null;
  low: number | null;
  high: number | null;
  /** Standard deviation of the ratio's logarithm. */
  log_sd: number | null;
  /** Inspections that have a like among the others, and the failures among them. */
  inspected: number;
  failed: number;
  others_failed: number;
  /** Failures beyond those to expect if both failed alike within each stratum, and the variance of that. */
  excess: number;
  variance: number;
  /** Two-sided, from excess and variance; 1 when nothing can differ. */
  p: number;
}

/** Sums over the strata that hold both sides. */
function sums(strata: readonly Stratum[]) {
  const sum = { inspected: 0, failed: 0, others_failed: 0, mine: 0, theirs: 0, spread: 0, excess: 0, variance: 0 };
  for (const { failed, inspected, others_failed, others_inspected } of strata) {
    if (inspected === 0 || others_inspected === 0) continue;
    const all = inspected + others_inspected, bad = failed + others_failed;
    sum.inspected += inspected;
    sum.failed += failed;
    sum.others_failed += others_failed;
    sum.mine += (failed * others_inspected) / all;
    sum.theirs += (others_failed * inspected) / all;
    sum.spread += (inspected * others_inspected * bad - failed * others_failed * all) / all ** 2;
    sum.excess += failed - (inspected * bad) / all;
    sum.variance += (inspected * others_inspected * bad * (all - bad)) / (all ** 2 * (all - 1));
  }
  return sum;
}

function requireStrata(strata: readonly Stratum[]): void {
  for (const { failed, inspected, others_failed, others_inspected } of strata) {
    requireWhole("mantelHaenszel", "inspected", inspected);
    requireWhole("mantelHaenszel", "others_inspected", others_inspected);
    if (inspected > 0) requireShare("mantelHaenszel", failed, inspected);
    if (others_inspected > 0) requireShare("mantelHaenszel", others_failed, others_inspected);
  }
}

/**
 * Like with like: how many times as often one model fails as the others, taken within each set of conditions and then
 * together.
 *
 * Mantel–Haenszel ratio of shares (Mantel & Haenszel 1959, JNCI 22:719-748; for shares Rothman & Boice 1979) with the limits
 * of Greenland & Robins (1985, Biometrics 41:55-68), which hold for few large and for many thin strata; the test is
 * Mantel and Haenszel's without continuity correction. Strata that hold only one side say nothing and are left out.
 *
 * @param widen how many times fewer inspections they are worth because some belong together; 1 when none do
 * @throws {RangeError} if a count is impossible, `widen` below 1 or `level` not inside 0…1
 * @example
 * const strata = [{ failed: 8, inspected: 20, others_failed: 10, others_inspected: 50 }];
 * mantelHaenszel(strata).ratio; // => 2.0000
 */
export function mantelHaenszel(strata: readonly Stratum[], { level = 0.95, widen = 1 } = {}): LikeWithLike {
  requireStrata(strata);
  requireInside("mantelHaenszel", "level", level);
  requirePositive("mantelHaenszel", "widen", widen);
  const { inspected, failed, others_failed, mine, theirs, spread, excess, variance } = sums(strata);
  const counts = { inspected, failed, others_failed, excess, variance };
  const p = variance > 0 ? Math.min(1, 2 * normalCdf(-Math.abs(excess) / Math.sqrt(variance * widen), 0, 1)) : 1;
  if (mine === 0 || theirs === 0) {
    const status = inspected === 0 ? "nothing alike" as const : "no failure to compare" as const;
    return { status, ratio: null, low: null, high: null, log_sd: null, ...counts, p };
  }
  const ratio = mine / theirs, log_sd = Math.sqrt((spread * widen) / (mine * theirs));
  const far = Math.exp(normalQuantile((1 + level) / 2, 0, 1) * log_sd);
  return { status: "compared", ratio, low: ratio / far, high: ratio * far, log_sd, ...counts, p };
}
