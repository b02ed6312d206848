import betainc from "@stdlib/math-base-special-betainc";
import gammaln from "@stdlib/math-base-special-gammaln";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { excessSpread, pooledShares } from "../../src/stats/beta-binomial.ts";
import { betaMixtureInterval } from "../../src/stats/beta-mixture.ts";
import type { Seen } from "../../src/stats/beta-prior.ts";
import { drawNormal } from "../../src/stats/draws.ts";
import { logRising } from "../../src/stats/log-rising.ts";
import { seededRandom } from "../../src/stats/random.ts";
import { readCase } from "./reference-case.ts";

const seenOf = (name: string): Seen[] => readCase(`02-empirical-bayes/${name}`).rows.map((row) => ({ failed: Number(row["y"]), inspected: Number(row["n"]) }));
const toxoplasmosis = seenOf("betabinomial-toxoplasmosis"), cancer = seenOf("betabinomial-boundary-cancer");

/** Models with log-odds spread normally around −2 and 3 … 3 + `most` inspections each. */
function shop(random: () => number, models: number, most: number, spread: number): { truth: number[]; seen: Seen[] } {
  const truth = Array.from({ length: models }, () => 1 / (1 + Math.exp(2 - drawNormal(random, 0, spread))));
  const seen = truth.map((share) => {
    const inspected = 3 + Math.floor(random() * most);
    return { inspected, failed: Array.from({ length: inspected }, () => random() < share).filter(Boolean).length };
  });
  return { truth, seen };
}

describe("pooledShares", () => {
  test("equals plain integration over a dense grid, which shares no code with it", () => {
    const logBeta = (a: number, b: number) => gammaln(a) + gammaln(b) - gammaln(a + b);
    const points: { a: number; b: number; log: number }[] = [];
    for (let x = -2; x <= 1.5; x += 0.05) {
      for (let spread = 0.02; spread < 2; spread += 0.04) {
        const mean = 1 / (1 + Math.exp(-x)), a = 1 / (spread ** 2 * (1 - mean)), b = 1 / (spread ** 2 * mean);
        const fit = toxoplasmosis.reduce((sum, { failed, inspected }) => sum + logBeta(a + failed, b + inspected - failed) - logBeta(a, b), 0);
        points.push({ a, b, log: fit + 0.5 * Math.log(mean * (1 - mean)) });
      }
    }
    const best = Math.max(...points.map((point) => point.log)), kept = points.filter((point) => point.log > best - 14);
    const weights = kept.map((point) => Math.exp(point.log - best)), total = weights.reduce((sum, weight) => sum + weight, 0);
    const { models, status } = pooledShares(toxoplasmosis);
    expect(status).toBe("pooled");
    for (const city of [0, 4, 13, 29]) {
      const { failed, inspected } = toxoplasmosis[city] as Seen, { share, low, high } = models[city] as (typeof models)[number];
      const over = (f: (a: number, b: number) => number) =>
        kept.reduce((sum, { a, b }, i) => sum + (weights[i] as number) * f(a + failed, b + inspected - failed), 0) / total;
      expect(Math.abs(share - over((a, b) => a / (a + b)))).toBeLessThan(2e-4);
      expect(Math.abs(over((a, b) => betainc(low, a, b)) - 0.025)).toBeLessThan(3e-4);
      expect(Math.abs(over((a, b) => betainc(high, a, b, true, true)) - 0.025)).toBeLessThan(3e-4);
    }
  });

  test("the 20 cities with stomach cancer deaths do not differ: every share is the pooled one, to the last digit", () => {
    // tests/reference/02-empirical-bayes/betabinomial-boundary-cancer: pooled 0.000993312627661658 (R).
    const { status, common, models } = pooledShares(cancer);
    expect(status).toBe("no difference between models");
    expect(common).toBeCloseTo(0.000993312627661658, 15);
    expect(models.every(({ share, low, high }) => share === common && low <= common && high >= common)).toBe(true);
  });

  test("limits hold the true shares in 95 of 100 models, in shops with and without differences", () => {
    const random = seededRandom(17), covered: Record<string, number> = {};
    for (const [models, most, spread] of [[16, 60, 0], [16, 60, 0.5], [8, 20, 0.4], [3, 30, 0.5]] as const) {
      let inside = 0, all = 0;
      for (let turn = 0; turn < 60; turn += 1) {
        const { truth, seen } = shop(random, models, most, spread);
        pooledShares(seen).models.forEach(({ low, high }, i) => {
          all += 1;
          if (low <= (truth[i] as number) && (truth[i] as number) <= high) inside += 1;
        });
      }
      covered[`${models} models, spread ${spread}`] = inside / all;
    }
    expect(Object.entries(covered).filter(([, share]) => share < 0.93)).toEqual([]);
  });

  test("a share lies between the model's own and the other models', and the limits hold it", () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 12 }), (seed, models) => {
      const { seen } = shop(seededRandom(seed), models, 40, 0.8), { models: pooled } = pooledShares(seen);
      const raw = seen.map(({ failed, inspected }) => failed / inspected);
      // The prior's half failure can carry a share past all raw ones, by that much.
      const room = 0.5 / seen.reduce((sum, one) => sum + one.inspected, 0) + 0.03;
      return pooled.every(({ share, low, high }) => low > 0 && high < 1 && low <= share && share <= high
        && share >= Math.min(...raw) - room && share <= Math.max(...raw) + room);
    }), { numRuns: 40, seed: 8 });
  });

  test("a long record keeps its own share, a short one takes the common one", () => {
    const seen = [...Array.from({ length: 8 }, (_, i) => ({ failed: 10 + 2 * i, inspected: 200 })), { failed: 90, inspected: 200 }, { failed: 1, inspected: 1 }];
    const { models, common } = pooledShares(seen);
    expect(models[8]?.share).toBeGreaterThan(0.42);
    expect(models[9]?.share).toBeLessThan(common + 0.15);
  });

  test("under five models says so and counts the common share like one failure", () => {
    const { status, models } = pooledShares([{ failed: 0, inspected: 40 }, { failed: 8, inspected: 40 }, { failed: 16, inspected: 80 }]);
    expect(status).toBe("few models, fixed prior");
    // By hand with the mean of the shares near 0.13: (0 + 1.15) / (40 + 1.15 / 0.13) = 0.024, and next to no pull on the others.
    expect(models[0]?.share).toBeCloseTo(0.024, 2);
    expect(models[1]?.share).toBeCloseTo(0.19, 2);
    expect(models[2]?.share).toBeCloseTo(0.195, 2);
  });

  test("rare failures keep usable limits: above 0 for models with none, and far below what the model's own record allows", () => {
    const { models } = pooledShares([0, 0, 1, 0, 0, 0, 0, 1].map((failed) => ({ failed, inspected: 60 })));
    expect(models.every(({ low, high }) => low > 1e-9 && low < 0.004 && high > 0.008 && high < 0.05)).toBe(true);
  });

  test("never and always failing models give limits inside 0…1", () => {
    const never = pooledShares(Array.from({ length: 6 }, () => ({ failed: 0, inspected: 30 })));
    expect(never.status).toBe("no difference between models");
    expect(never.models.every(({ share, low, high }) => share === 0 && low === 0 && high > 0.005 && high < 0.15)).toBe(true);
    const always = pooledShares(Array.from({ length: 6 }, () => ({ failed: 4, inspected: 4 })));
    expect(always.models.every(({ share, low, high }) => share === 1 && high === 1 && low > 0.4)).toBe(true);
  });

  test("impossible counts are refused by name, requirement and value", () => {
    expect(() => pooledShares([])).toThrow(new RangeError("pooledShares: seen must not be empty, got none"));
    expect(() => pooledShares([{ failed: 0, inspected: 0 }])).toThrow(new RangeError("pooledShares: inspected must be a whole number of at least 1, got 0"));
    expect(() => pooledShares([{ failed: 0, inspected: 1 }], 0)).toThrow(new RangeError("pooledShares: level must lie between 0 and 1, both excluded, got 0"));
  });
});

describe("excessSpread", () => {
  test("is above 0 exactly where the reference fits found a difference", () => {
    expect(excessSpread(toxoplasmosis)).toBeGreaterThan(0);
    expect(excessSpread(cancer)).toBeLessThanOrEqual(0);
  });
});

describe("betaMixtureInterval", () => {
  test.each([[0.3, 20], [0.5, 0.5], [2, 50], [300, 4000], [30, 2]])("the limits of Beta(%d, %d) leave 2.5 % on either side", (a, b) => {
    const { low, high, mean } = betaMixtureInterval([{ a, b, weight: 7, logBeta: gammaln(a) + gammaln(b) - gammaln(a + b) }], 0.95);
    expect(Math.abs(betainc(low, a, b) - 0.025)).toBeLessThan(3e-4);
    expect(Math.abs(betainc(high, a, b, true, true) - 0.025)).toBeLessThan(3e-4);
    expect(mean).toBeCloseTo(a / (a + b), 14);
  });
});

describe("logRising", () => {
  test("equals the sum of logarithms, for small and huge starts and counts", () => {
    for (const a of [1e-3, 0.5, 7, 15.9, 16.1, 2e3, 1e9]) {
      for (const count of [0, 1, 3, 4, 5, 17, 300]) {
        let sum = 0;
        for (let j = 0; j < count; j += 1) sum += Math.log(a + j);
        expect(Math.abs(logRising(a, count) - sum)).toBeLessThan(1e-11 * Math.max(1, Math.abs(sum)));
      }
    }
  });
});
