import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demandAbove, demandAtMost, demandPmf, demandQuantile, demandVariance } from "../../src/stats/negative-binomial.ts";

const demands = fc.record({
  mean: fc.double({ min: 0, max: 3000, noNaN: true }),
  size: fc.oneof(fc.constant(Infinity), fc.double({ min: 0.05, max: 500, noNaN: true })),
});

describe("count distribution", () => {
  test("the probabilities, and their tails, are those of the definition", () => {
    // Mean 3 and size 2: number of failures before the second success with chance 0.4; by hand C(k + 1, k) 0.4² 0.6ᵏ.
    const demand = { mean: 3, size: 2 };
    const byHand = [0, 1, 2, 3, 4].map((k) => (k + 1) * 0.16 * 0.6 ** k);
    byHand.forEach((probability, k) => { expect(demandPmf(k, demand)).toBeCloseTo(probability, 14); });
    expect(demandAtMost(4, demand)).toBeCloseTo(byHand.reduce((sum, p) => sum + p, 0), 14);
    expect(demandVariance(demand)).toBe(3 + 9 / 2);
    expect(demandPmf(0.5, demand)).toBe(0);
    expect(demandPmf(-1, demand)).toBe(0);
  });

  test("a very large size is the Poisson distribution", () => {
    for (const k of [0, 3, 9]) {
      expect(demandAtMost(k, { mean: 4, size: 1e9 })).toBeCloseTo(demandAtMost(k, { mean: 4, size: Infinity }), 7);
    }
  });

  test("both tails add up to one and the probabilities add up to the tail", () => {
    fc.assert(fc.property(demands, fc.integer({ min: 0, max: 200 }), (demand, k) => {
      const step = demandAtMost(k, demand) - demandAtMost(k - 1, demand);
      expect(demandAtMost(k, demand) + demandAbove(k, demand)).toBeCloseTo(1, 11);
      expect(step).toBeCloseTo(demandPmf(k, demand), 10);
    }), { numRuns: 200, seed: 4 });
  });

  test("the quantile is the smallest count that is enough, and rises with the probability", () => {
    fc.assert(fc.property(demands, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (demand, probability) => {
      const count = demandQuantile(probability, demand);
      expect(demandAtMost(count, demand)).toBeGreaterThanOrEqual(probability * (1 - 1e-10));
      if (count > 0) expect(demandAtMost(count - 1, demand)).toBeLessThan(probability * (1 + 1e-10));
      expect(demandQuantile(probability / 2, demand)).toBeLessThanOrEqual(count);
    }), { numRuns: 200, seed: 5 });
  });

  test("a probability met exactly is met: three in four is the chance of at most one among two coins", () => {
    expect(demandQuantile(0.75, { mean: 1, size: 1 })).toBe(1); // by hand: ½, ¼, ⅛ …
    expect(demandQuantile(0.5, { mean: 1, size: 1 })).toBe(0);
  });

  test("impossible parameters are refused by name, requirement and value", () => {
    expect(() => demandQuantile(1, { mean: 1, size: 1 })).toThrow(new RangeError("demandQuantile: probability must lie between 0 and 1, both excluded, got 1"));
    expect(() => demandAbove(1, { mean: -1, size: 1 })).toThrow(new RangeError("demandAbove: mean must be a finite number of at least 0, got -1"));
    expect(() => demandAtMost(1, { mean: 1, size: 0 })).toThrow(new RangeError("demandAtMost: size must be above 0, got 0"));
    expect(() => demandPmf(1, { mean: NaN, size: 1 })).toThrow("got NaN");
  });
});
