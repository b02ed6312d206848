import { requirePositive, requireShare } from "./requirement.ts";
import { shareInterval } from "./share-interval.ts";

/**
 * What was seen of reels that came together, summed over batches of `n` inspections with `k` failures.
 *
 * `pairs` Σ n(n − 1), `alike_failed` Σ k(k − 1), `failed_in_pairs` Σ k(n − 1); `share` is what their model fails in.
 */
export interface Mates { share: number; pairs: number; alike_failed: number; failed_in_pairs: number }

/**
 * Weak prior knowledge of how alike batch mates are: a correlation of 0.05, worth 400 pairs. One charter's reels share
 * water and habits, which moves a share of one in ten by some points; nobody has measured it.
 */
const USUAL = 0.05, WORTH = 400;

/**
 * How alike batch mates fail, from 0 (no more than strangers) to 1 (all or none).
 *
 * Moment estimate of the correlation between two inspections of one batch (Donner 1986, International Statistical Review
 * 54:67-82, for shares Fleiss & Cuzick 1979), drawn toward a usual 0.05 while pairs are few, never below 0.
 *
 * @param mates one entry a model
 * @example
 * likenessOfMates([]); // => 0.05
 */
export function likenessOfMates(mates: readonly Mates[]): number {
  let together = USUAL * WORTH, possible = WORTH;
  for (const { share, pairs, alike_failed, failed_in_pairs } of mates) {
    if (!(share > 0 && share < 1)) continue;
    together += (alike_failed - 2 * share * failed_in_pairs + share ** 2 * pairs) / (share * (1 - share));
    possible += pairs;
  }
  return Math.min(1, Math.max(0, together / possible));
}

/**
 * How many times fewer independent inspections a count is worth when some came in one batch: 1 + likeness × mean number of
 * mates (Kish 1965, Survey Sampling, sec. 5.4).
 *
 * @param pairs Σ n(n − 1) over its batches
 * @throws {RangeError} if `inspected` is not above 0
 * @example
 * designEffect(100, 300, 0.1); // => 1.3000
 */
export function designEffect(inspected: number, pairs: number, likeness: number): number {
  requirePositive("designEffect", "inspected", inspected);
  return 1 + (likeness * pairs) / inspected;
}

/**
 * Wilson's range for a share, as wide as fewer inspections would make it.
 *
 * @param widen from `designEffect`
 * @throws {RangeError} if a count is impossible or `widen` not above 0
 * @example
 * widenedShareInterval(10, 100, 1); // => [0.0552, 0.1744]
 */
export function widenedShareInterval(failed: number, inspected: number, widen: number, level = 0.95): [number, number] {
  requireShare("widenedShareInterval", failed, inspected);
  requirePositive("widenedShareInterval", "widen", widen);
  if (widen <= 1) return shareInterval(failed, inspected, level);
  const worth = Math.max(1, Math.round(inspected / widen));
  const [low, high] = shareInterval(Math.min(worth, Math.round((failed * worth) / inspected)), worth, level), share = failed / inspected;
  return [Math.min(low, share), Math.max(high, share)];
}
