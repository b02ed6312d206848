import { describe, expect, test } from "vitest";
import { drawGamma, drawPoisson } from "../../src/stats/draws.ts";
import { leadTimeDemand, uncertainLeadTimeDemand } from "../../src/stats/lead-time-demand.ts";
import { demandQuantile, demandVariance } from "../../src/stats/negative-binomial.ts";
import { roundedOrder } from "../../src/stats/order-quantity.ts";
import { seededRandom } from "../../src/stats/random.ts";
import { smallestLevel, stockLevel } from "../../src/stats/stock-level.ts";
import { expectNear, numbersOf, readCase, readRows } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/09-inventory/policies: constructed parameters, R 4.2.2 with exact probabilities.
const { expected } = readCase("09-inventory/policies");
const relative = expected.tolerance["default_rel"] as number;

describe("leadTimeDemand", () => {
  const values = expected.values["gamma_lead_time"] as Nested;
  const demand = leadTimeDemand(Number(values["lambda"]), { mean: Number(values["lead_time_mean"]), sd: Number(values["lead_time_sd"]) });

  test("Poisson demand over a gamma lead time has R's size, levels, chances and backorders", () => {
    const table = values["base_stock"] as Nested, levels = numbersOf(table["S"]).map((level) => stockLevel(level, demand));
    expectNear([demand.size, smallestLevel(0.95, demand)], numbersOf([values["size"], values["p95"]]), { relative });
    expectNear(levels.map((level) => level.readyRate), numbersOf(table["P_D_le_S"]), { relative });
    expectNear(levels.map((level) => level.fillRate), numbersOf(table["P_D_le_S_minus_1"]), { relative });
    expectNear(levels.map((level) => level.shortRate), numbersOf(table["P_D_gt_S"]), { relative });
    expectNear(levels.map((level) => level.backorders), numbersOf(table["expected_backorders"]), { relative });
    expectNear(levels.map((level) => level.onHand), numbersOf(table["expected_on_hand"]), { relative, absolute: 1e-13 });
  });

  test("the level for a critical ratio equals R's, for steady and for spread demand", () => {
    const { mean, ratio, poisson_S, nb_size_2_S } = expected.values["newsvendor"] as Nested;
    expect(demandQuantile(Number(ratio), { mean: Number(mean), size: Infinity })).toBe(poisson_S);
    expect(demandQuantile(Number(ratio), { mean: Number(mean), size: 2 })).toBe(nb_size_2_S);
  });

  test("every plannable stock line of the demo scenario gets its needed level and its order", () => {
    const lines = readRows("09-inventory/stock-lines/data.csv");
    const planned = lines.map((row) => {
      const value = (name: string) => Number(row[name]);
      const daily = (value("use_per_year") * 1.55) / 365;
      const varying = leadTimeDemand(daily, { mean: value("lead_days") + 14, sd: value("lead_days_sd") });
      const level = smallestLevel(value("target"), varying);
      const buy = roundedOrder(level - value("on_hand") - value("on_order"), value("pack_qty"), value("min_order_qty"));
      return { line: row["line"], mean: varying.mean, level, buy };
    });
    expect(planned.length).toBe(56);
    expect(planned.map(({ line, level, buy }) => ({ line, level, buy }))).toEqual(
      lines.map((row) => ({ line: row["line"], level: Number(row["needed_level"]), buy: Number(row["buy_now"]) })));
  });
});

describe("uncertainLeadTimeDemand", () => {
  test("has the mean and variance of counts drawn with an uncertain rate over an uncertain time", () => {
    const random = seededRandom(9), n = 40_000;
    const counts = Array.from({ length: n }, () => drawPoisson(random, drawGamma(random, 3, 1.5) * drawGamma(random, 4, 2)));
    const demand = uncertainLeadTimeDemand({ shape: 3, rate: 1.5 }, { mean: 2, sd: 1 });
    const mean = counts.reduce((sum, k) => sum + k, 0) / n;
    const variance = counts.reduce((sum, k) => sum + (k - mean) ** 2, 0) / n;
    expect(Math.abs(mean / demand.mean - 1)).toBeLessThan(0.02);
    expect(Math.abs(variance / demandVariance(demand) - 1)).toBeLessThan(0.06);
  });

  test("a rate known exactly leaves the spread of the lead time, and a steady lead time that of the rate", () => {
    expect(uncertainLeadTimeDemand({ shape: 1e12, rate: 5e11 }, { mean: 3, sd: 1.5 }).size).toBeCloseTo(4, 6);
    expect(uncertainLeadTimeDemand({ shape: 2, rate: 1 }, { mean: 3, sd: 0 }).size).toBe(2);
  });

  test("times that cannot be are refused", () => {
    expect(() => leadTimeDemand(1, { mean: 0, sd: 1 })).toThrow(new RangeError("leadTimeDemand: cover.mean must be a finite number above 0, got 0"));
    expect(() => uncertainLeadTimeDemand({ shape: 1, rate: 1 }, { mean: 1, sd: -1 }))
      .toThrow(new RangeError("uncertainLeadTimeDemand: cover.sd must be a finite number of at least 0, got -1"));
  });
});
