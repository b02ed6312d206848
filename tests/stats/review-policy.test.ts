import { describe, expect, test } from "vitest";
import { expectedDemand } from "../../src/answers/stock/expected-demand.ts";
import { demandQuantile } from "../../src/stats/negative-binomial.ts";
import { reorderPoint, smallestReorderPoint } from "../../src/stats/reorder-point.ts";
import { bestReviewPolicy } from "../../src/stats/review-policy.ts";
import { readCase } from "./reference-case.ts";

type Numbers = Record<string, number>;
// tests/reference/09-inventory/policies: classical test problems (Veinott & Wagner 1965; Zheng & Federgruen 1991), R 4.2.2.
const values = readCase("09-inventory/policies").expected.values as unknown as {
  sS: Record<string, { s: number; S: number; cost: number }>; normal_sQ: Numbers;
  compound_poisson: { mean: number; variance: number; lambda_L: number; quantiles_50_90_95_99: number[] };
};
const poisson = (mean: number) => ({ mean, size: Infinity });

describe("bestReviewPolicy", () => {
  test.each([[10, "sS_mean10"], [20, "sS_mean20"]] as const)("gives the published rule and cost for a mean of %i", (mean, name) => {
    const { point, upTo, cost } = bestReviewPolicy({ order: 64, holding: 1, shortage: 9 }, poisson(mean), poisson(mean)), wanted = values.sS[name];
    expect([point, upTo]).toEqual([wanted?.s, wanted?.S]);
    expect(Math.abs(cost / (wanted?.cost ?? NaN) - 1)).toBeLessThan(1e-8);
  });

  test("orders one by one up to the critical ratio when an order costs nothing (Arrow, Harris & Marschak 1951)", () => {
    const cover = poisson(3), { point, upTo } = bestReviewPolicy({ order: 0, holding: 1, shortage: 19 }, poisson(1), cover);
    expect([point, upTo]).toEqual([upTo - 1, demandQuantile(0.95, cover)]);
  });

  test("fills up further the dearer an order is, and waits longer before", () => {
    const rules = [0, 2, 10, 50].map((order) => bestReviewPolicy({ order, holding: 0.1, shortage: 2 }, poisson(0.4), poisson(1)));
    for (let i = 1; i < rules.length; i += 1) {
      expect(rules[i]?.upTo).toBeGreaterThanOrEqual(rules[i - 1]?.upTo ?? NaN);
      expect(rules[i]?.point).toBeLessThanOrEqual(rules[i - 1]?.point ?? NaN);
    }
  });

  test("refuses costs that are none", () =>
    expect(() => bestReviewPolicy({ order: 1, holding: 0, shortage: 1 }, poisson(1), poisson(1))).toThrow(new RangeError("bestReviewPolicy: costs.holding must be a finite number above 0, got 0")));
});

describe("demand in clumps", () => {
  const { mean, variance, quantiles_50_90_95_99: wanted } = values.compound_poisson;

  test("has the levels of the compound Poisson distribution with the same clumps, at 99 % one piece more", () => {
    // Sizes 1 to 4 with .6 .25 .1 .05: squares over pieces = (.6 + 1 + .9 + .8) / 1.6 = variance / mean.
    const belief = { shape: 1e9, rate: (1e9 * 20) / mean, clump: variance / mean, unevenness: 0 };
    const levels = [0.5, 0.9, 0.95, 0.99].map((target) => expectedDemand(belief, { days: 6, sd: 0 }, 14, 1, target).level);
    expect(variance / mean).toBeCloseTo(3.3 / 1.6, 12);
    expect(levels).toEqual(wanted.map((level, i) => (i === 3 ? level + 1 : level)));
  });
});

describe("reorder points of a large line", () => {
  const { mean_L: mean = NaN, sd_L: sd = NaN, Q = NaN, fill_rate_at_s_P1_95: filled = NaN, s_P1_95: level = NaN, s_P2_99: point = NaN } = values.normal_sQ;
  const demand = { mean, size: mean ** 2 / (sd ** 2 - mean) };

  test("come out where the normal distribution puts them, but for whole pieces and its thinner tail", () => {
    expect(Math.abs(demandQuantile(0.95, demand) - level)).toBeLessThan(2);
    expect(Math.abs(reorderPoint(Math.round(level), Q, demand).fillRate - filled)).toBeLessThan(1e-3);
    expect(Math.abs(smallestReorderPoint(0.99, Q, demand).point - point)).toBeLessThan(2);
  });
});
