import { describe, expect, test } from "vitest";
import { drawGamma, drawPoisson } from "../../src/stats/draws.ts";
import { fitsOf, spreadCount, spreadsOf } from "../../src/stats/miss-spreads.ts";
import type { Miss } from "../../src/stats/miss-spreads.ts";
import { demandQuantile } from "../../src/stats/negative-binomial.ts";
import { seededRandom } from "../../src/stats/random.ts";

const YEAR = 52, ASSUMED = { scatter: 1, mean: 0, year: YEAR };
const misses = (actuals: readonly number[], mean: number, horizon = 1): Miss[] => actuals.map((actual, from) => ({ from, horizon, mean, actual, fits: fitsOf(mean, actual) }));
/** Counts that vary three times as much as Poisson ones around 20: gamma means of size 10. */
const scattered = (n: number) => { const random = seededRandom(11); return Array.from({ length: n }, () => drawPoisson(random, drawGamma(random, 10, 0.5))); };

describe("how wide the misses say the range must be", () => {
  test("counts drawn with three times Poisson's variance are told so, and a tenth more", () => {
    const [near = NaN] = spreadsOf(misses(scattered(2000), 20), ASSUMED, 2001);
    // 1.1 × 3; about 75 looks of a year's half-life count, so within a quarter.
    expect(Math.abs(near / 3.3 - 1)).toBeLessThan(0.25);
  });

  test("one cluster among sparse counts leaves the ninth tenth where most weeks need it", () => {
    // One in three weeks holds 1 … 3, three in a row hold an outbreak; the mean of the others is about a half.
    const actuals = [0, 1, 0, 0, 3, 0, 0, 2, 0, 1, 0, 0, 29, 17, 11, 2, 0, 0, 1, 0, 0, 1, 0, 3, 0, 0, 1, 0, 0, 0, 2, 0, 1, 0, 0, 0, 1, 0, 0, 0], mean = 0.5;
    const [near = NaN] = spreadsOf(misses(actuals, mean), ASSUMED, 41), square = actuals.reduce((sum, one) => sum + (one - mean) ** 2 / mean, 0) / actuals.length;
    // By squared misses the ninth tenth is 0, though 15 of the 40 weeks hold more.
    expect([demandQuantile(0.9, spreadCount(mean, square)), demandQuantile(0.9, spreadCount(mean, near)) > 0]).toEqual([0, true]);
  });

  test("what came after the day asked is not looked at", () => {
    const [then = NaN] = spreadsOf(misses([...scattered(60), 400, 400], 20), ASSUMED, 60), [alone = NaN] = spreadsOf(misses(scattered(60), 20), ASSUMED, 60);
    expect(then).toBe(alone);
  });

  test("further ahead is never told narrower than nearer", () => {
    const [near = NaN, , far = NaN] = spreadsOf([...misses(scattered(100), 20), ...misses(new Array<number>(100).fill(20), 20, 13)], ASSUMED, 120);
    expect(far).toBeGreaterThanOrEqual(near);
  });
});
