/** From here on Stirling's series is right to twelve digits. */
const STIRLING_FROM = 16;

/** Correction of Stirling's formula for ln Γ(x). */
const correction = (x: number): number => (1 / 12 - (1 / 360 - 1 / (1260 * x ** 2)) / x ** 2) / x;

/**
 * ln a(a + 1)…(a + count − 1), the logarithm of a rising factorial.
 *
 * The difference of two log-gammas from the package loses its digits when `a` is large, and this sum is what the marginal
 * likelihoods are made of, some hundred thousand times a screen. Stirling's series, the difference taken before the
 * logarithm (Abramowitz & Stegun 6.1.41).
 *
 * @param a above 0
 * @param count a whole number of at least 0
 * @example
 * logRising(0.5, 2); // => -0.287682
 * logRising(1e9, 3); // => 62.1697975138
 */
export function logRising(a: number, count: number): number {
  let low = a, left = count, product = 1;
  while (left > 0 && (low < STIRLING_FROM || left <= 4)) {
    product *= low;
    low += 1;
    left -= 1;
  }
  if (left === 0) return Math.log(product);
  const high = low + left;
  return Math.log(product) + (low - 0.5) * Math.log1p(left / low) + left * Math.log(high) - left + correction(high) - correction(low);
}
