import gammainc from "@stdlib/math-base-special-gammainc";
import { describe, expect, test } from "vitest";
import { gammaAbove, gammaBelow, gammaQuantile } from "../../src/stats/incomplete-gamma.ts";

const SHAPES = [1, 2, 7, 30, 150, 600, 890, 901, 1001, 5000];
const points = SHAPES.flatMap((shape) => [-5, -3, -1, -0.3, 0, 0.3, 1, 3, 5].map((z) => [shape + z * Math.sqrt(shape), shape] as const))
  .filter(([x]) => x > 0);

/** P(Poisson(mean) < shape) by adding the probabilities up, starting at the largest used; no special function in it. */
function poissonBelow(mean: number, shape: number): number {
  let logFactorial = 0;
  for (let k = 2; k < shape; k += 1) logFactorial += Math.log(k);
  let term = Math.exp(-mean + (shape - 1) * Math.log(mean) - logFactorial), sum = 0;
  for (let k = shape - 1; k >= 0 && term > sum * 1e-18; k -= 1) {
    sum += term;
    term *= k / mean;
  }
  return sum;
}

describe("incomplete gamma function", () => {
  test("equals the sum of Poisson probabilities over shapes from 1 to 5000, far into the tails", () => {
    const off = points.map(([x, shape]) => Math.abs(gammaAbove(x, shape) / poissonBelow(x, shape) - 1));
    expect(Math.max(...off)).toBeLessThan(1e-10);
  });

  test("both tails add up to one", () => {
    expect(points.every(([x, shape]) => Math.abs(gammaBelow(x, shape) + gammaAbove(x, shape) - 1) < 1e-12)).toBe(true);
  });

  test("the package's own function is not trusted beyond 900 because it is off by more than 1 % there", () => {
    expect(Math.abs(gammainc(1001, 1001, true, true) / poissonBelow(1001, 1001) - 1)).toBeGreaterThan(0.01);
  });

  test("the quantile is undone by the probability, in both tails", () => {
    for (const shape of [0.5, 3, 449, 451, 1001, 40000]) {
      for (const probability of [1e-6, 0.025, 0.4, 0.5, 0.8, 0.975]) {
        expect(Math.abs(gammaBelow(gammaQuantile(probability, shape), shape) / probability - 1)).toBeLessThan(1e-9);
      }
    }
  });
});
