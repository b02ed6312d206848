import betainc from "@stdlib/math-base-special-betainc";
import gammaln from "@stdlib/math-base-special-gammaln";

/**
 * Probability of exactly `k` among `n` when each happens with probability `share`.
 *
 * @example
 * binomialPmf(1, 2, 0.5); // => 0.5000
 */
export function binomialPmf(k: number, n: number, share: number): number {
  if (k < 0 || k > n) return 0;
  if (share <= 0 || share >= 1) return k === (share <= 0 ? 0 : n) ? 1 : 0;
  const ways = gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1);
  return Math.exp(ways + k * Math.log(share) + (n - k) * Math.log1p(-share));
}

/**
 * Probability of `k` or fewer among `n`, from its own tail of the incomplete beta function.
 *
 * @example
 * binomialAtMost(1, 2, 0.5); // => 0.7500
 */
export function binomialAtMost(k: number, n: number, share: number): number {
  if (k < 0) return 0;
  return k >= n ? 1 : betainc(share, k + 1, n - k, true, true);
}

/**
 * Probability of `k` or more among `n`, from its own tail of the incomplete beta function.
 *
 * @example
 * binomialAtLeast(1, 2, 0.5); // => 0.7500
 */
export function binomialAtLeast(k: number, n: number, share: number): number {
  if (k <= 0) return 1;
  return k > n ? 0 : betainc(share, k, n - k + 1);
}
