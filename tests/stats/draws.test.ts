import gammainc from "@stdlib/math-base-special-gammainc";
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { describe, expect, test } from "vitest";
import { drawGamma, drawLogNormal, drawNormal, drawPoisson, drawWeibull, logNormalOf } from "../../src/stats/draws.ts";
import { seededRandom } from "../../src/stats/random.ts";
import type { Random } from "../../src/stats/random.ts";

const N = 20_000;
/** Kolmogorov's distance stays below 1.95 / √n in 999 of 1000 samples (Smirnov 1948, Ann. Math. Statist. 19:279; from memory). */
const LIMIT = 1.95 / Math.sqrt(N);

function distance(draw: (random: Random) => number, cdf: (x: number) => number, seed: number): number {
  const random = seededRandom(seed);
  const values = Array.from({ length: N }, () => draw(random)).sort((a, b) => a - b);
  return Math.max(...values.map((value, i) => Math.max((i + 1) / N - cdf(value), cdf(value) - i / N)));
}

describe("draws follow their distribution", () => {
  test.each([
    ["normal", (r: Random) => drawNormal(r, 10, 2), (x: number) => normalCdf(x, 10, 2)],
    ["log-normal", (r: Random) => drawLogNormal(r, 3.7, 0.5), (x: number) => normalCdf(Math.log(x), 3.7, 0.5)],
    ["Weibull", (r: Random) => drawWeibull(r, 1.7, 300), (x: number) => -Math.expm1(-((x / 300) ** 1.7))],
    ["gamma with shape 3.2", (r: Random) => drawGamma(r, 3.2, 0.5), (x: number) => gammainc(x * 0.5, 3.2)],
    ["gamma with shape 0.3", (r: Random) => drawGamma(r, 0.3, 2), (x: number) => gammainc(x * 2, 0.3)],
  ])("%s draws stay within Kolmogorov's distance", (_name, draw, cdf) => {
    expect(distance(draw, cdf, 5)).toBeLessThan(LIMIT);
  });

  test.each([0.3, 4, 29, 95.5])("Poisson draws of mean %d have that mean, that variance and the right share of zeros", (mean) => {
    const random = seededRandom(11);
    const counts = Array.from({ length: N }, () => drawPoisson(random, mean));
    const average = counts.reduce((sum, k) => sum + k, 0) / N;
    const variance = counts.reduce((sum, k) => sum + (k - average) ** 2, 0) / (N - 1);
    const zeros = counts.filter((k) => k === 0).length / N, expected = Math.exp(-mean);
    expect(Math.abs(average - mean)).toBeLessThan(4 * Math.sqrt(mean / N));
    expect(Math.abs(variance - mean)).toBeLessThan(4 * Math.sqrt((2 * mean ** 2 + mean) / N));
    expect(Math.abs(zeros - expected)).toBeLessThanOrEqual(4 * Math.sqrt((expected * (1 - expected)) / N));
    expect(counts.every(Number.isInteger)).toBe(true);
  });

  test("a Poisson draw of mean 0 is 0", () => {
    expect(drawPoisson(() => 0.999, 0)).toBe(0);
  });

  test("a log-normal known by mean 24 and standard deviation 9 has them", () => {
    const { logMean, logSd } = logNormalOf(24, 9);
    const mean = Math.exp(logMean + logSd ** 2 / 2);
    expect(mean).toBeCloseTo(24, 10);
    expect(mean * Math.sqrt(Math.expm1(logSd ** 2))).toBeCloseTo(9, 10);
  });
});

describe("draws refuse impossible parameters", () => {
  const never: Random = () => { throw new Error("a number was drawn"); };
  test("before a number is drawn, naming function, requirement and value", () => {
    expect(() => drawGamma(never, 0, 1)).toThrow(new RangeError("drawGamma: shape must be a finite number above 0, got 0"));
    expect(() => drawWeibull(never, 2, -1)).toThrow(new RangeError("drawWeibull: scale must be a finite number above 0, got -1"));
    expect(() => drawPoisson(never, NaN)).toThrow(new RangeError("drawPoisson: mean must be a finite number of at least 0, got NaN"));
    expect(() => drawNormal(never, 0, -2)).toThrow(new RangeError("drawNormal: sd must be a finite number of at least 0, got -2"));
    expect(() => logNormalOf(0, 1)).toThrow(new RangeError("logNormalOf: mean must be a finite number above 0, got 0"));
  });
});
