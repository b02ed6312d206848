import gammainc from "@stdlib/math-base-special-gammainc";
import gammaln from "@stdlib/math-base-special-gammaln";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import smallGammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";
import { rootBetween } from "./root-between.ts";

/**
 * Beyond this argument the package's expansion for large arguments is used where it does not hold: 2 % off at
 * shape 1001 (version 0.3.1), without a sign. `incomplete-gamma.test.ts` shows it.
 */
const TRUSTED = 900;
const ENOUGH = 1e-16;

/** xˢ e⁻ˣ / Γ(s + 1), from the distance between x and s, so that large terms do not cancel. */
function prefix(x: number, shape: number): number {
  const away = (x - shape) / shape;
  const stirling = gammaln(shape + 1) - (shape + 0.5) * Math.log(shape) + shape - 0.5 * Math.log(2 * Math.PI);
  const correction = shape > 100 ? 1 / (12 * shape) - 1 / (360 * shape ** 3) : stirling;
  return Math.exp(-shape * (away - Math.log1p(away)) - correction) / Math.sqrt(2 * Math.PI * shape);
}

/** Lower tail by its series, for x below the shape (Abramowitz & Stegun 6.5.29). */
function lowerSeries(x: number, shape: number): number {
  let term = 1, sum = 1;
  for (let k = 1; term > sum * ENOUGH; k += 1) {
    term *= x / (shape + k);
    sum += term;
  }
  return prefix(x, shape) * sum;
}

/** Upper tail by its continued fraction, for x above the shape (Abramowitz & Stegun 6.5.31, evaluated after Lentz 1976). */
function upperFraction(x: number, shape: number): number {
  let b = x + 1 - shape, c = Infinity, d = 1 / b, fraction = d;
  for (let k = 1; ; k += 1) {
    const a = k * (shape - k);
    b += 2;
    c = b + a / c;
    d = 1 / (b + a * d);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < ENOUGH * 4) return prefix(x, shape) * shape * fraction;
  }
}

/**
 * Probability that a gamma variable of this shape and rate 1 stays below `x`; also that a Poisson count with mean `x`
 * reaches the whole number `shape`.
 *
 * @example
 * gammaBelow(2, 3); // => 0.3233
 * gammaBelow(1000, 1001); // => 0.4916
 */
export function gammaBelow(x: number, shape: number): number {
  if (x <= 0) return 0;
  if (x <= TRUSTED || shape < 1) return gammainc(x, shape);
  return x < shape + 1 ? lowerSeries(x, shape) : 1 - upperFraction(x, shape);
}

/**
 * Probability that a gamma variable of this shape and rate 1 exceeds `x`, from its own tail; also that a Poisson count
 * with mean `x` stays below the whole number `shape`.
 *
 * @example
 * gammaAbove(2, 3); // => 0.6767
 * gammaAbove(40, 3); // => 3.5729e-15
 */
export function gammaAbove(x: number, shape: number): number {
  if (x <= 0) return 1;
  if (x <= TRUSTED || shape < 1) return gammainc(x, shape, true, true);
  return x < shape + 1 ? 1 - lowerSeries(x, shape) : upperFraction(x, shape);
}

/**
 * Value that a gamma variable of this shape and rate 1 stays below with `probability`.
 *
 * @example
 * gammaQuantile(0.95, 1); // => 2.995732
 * gammaQuantile(0.975, 1001); // => 1063.9521
 */
export function gammaQuantile(probability: number, shape: number): number {
  const z = normalQuantile(probability, 0, 1);
  // Wilson & Hilferty 1931: close enough to tell whether the package can be trusted there, and to bracket the root.
  const near = shape * (1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape))) ** 3;
  if (shape < TRUSTED / 2 || near < TRUSTED / 2) return smallGammaQuantile(probability, shape, 1);
  const reach = Math.sqrt(shape);
  return rootBetween(
    probability < 0.5
      ? (x) => gammaBelow(x, shape) - probability
      : (x) => 1 - probability - gammaAbove(x, shape),
    Math.max(0, near - reach), near + reach);
}
