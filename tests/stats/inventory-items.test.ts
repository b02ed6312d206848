import { describe, expect, test } from "vitest";
import type { CountDistribution } from "../../src/stats/negative-binomial.ts";
import { orderQuantity } from "../../src/stats/order-quantity.ts";
import { smallestOrderUpTo } from "../../src/stats/order-up-to.ts";
import { smallestReorderPoint } from "../../src/stats/reorder-point.ts";
import { smallestLevel, stockLevel } from "../../src/stats/stock-level.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/09-inventory/items: six constructed items, R 4.2.2 with exact probabilities.
const { rows, expected } = readCase("09-inventory/items");
const relative = expected.tolerance["default_rel"] as number;
const items = rows.map((row) => {
  const value = (name: string) => Number(row[name]);
  const perYear = value("annual_demand"), variance = value("variance_to_mean");
  const over = (years: number): CountDistribution =>
    ({ mean: perYear * years, size: variance > 1 ? (perYear * years) / (variance - 1) : Infinity });
  return {
    name: row["item"] as string, perYear, pack: value("pack_size"), poisson: variance <= 1,
    costs: { perYear, orderCost: value("order_cost"), holdingCost: value("holding_rate") * value("unit_cost") },
    delivery: over(value("lead_time_years")), protection: over(value("lead_time_years") + value("review_years")),
    reviewMean: perYear * value("review_years"),
    values: expected.values[row["item"] as string] as Nested,
  };
});

describe.each(items)("item $name", ({ pack, costs, delivery, protection, values }) => {
  test("the economic quantity, its multiple of the pack and their costs equal R's", () => {
    const { economic, economicCost, inPacks, inPacksCost, ordersPerYear } = orderQuantity(costs, pack);
    const eoq = values["eoq"] as Nested;
    expect(inPacks).toBe(eoq["pack_multiple"]);
    expectNear([economic, economicCost, inPacksCost], numbersOf([eoq["eoq"], eoq["cost"], eoq["pack_cost"]]), { relative });
    expectNear([ordersPerYear], numbersOf([eoq["cycles_per_year"] ?? "NA"]), { relative });
  });

  test("every stock level has R's chances, backorders and stock on hand", () => {
    const table = values["base_stock_lead_time"] as Nested;
    const levels = numbersOf(table["S"]).map((level) => stockLevel(level, delivery));
    expect(levels.length).toBeGreaterThan(3);
    for (const [property, column] of [["readyRate", "P_D_le_S"], ["fillRate", "P_D_le_S_minus_1"], ["shortRate", "P_D_gt_S"]] as const) {
      expectNear(levels.map((level) => level[property]), numbersOf(table[column]), { relative }, property);
    }
    // R adds up a table of probabilities that ends where 10⁻¹⁵ is left, so its sums are short by a few of those.
    expectNear(levels.map((level) => level.backorders), numbersOf(table["expected_backorders"]), { relative, absolute: 5e-15 }, "backorders");
    // Level − mean + backorders cancels at small levels, in R as here: 10⁻¹³ of the mean is all there is to compare.
    expectNear(levels.map((level) => level.onHand), numbersOf(table["expected_on_hand"]), { relative, absolute: delivery.mean * 1e-13 }, "onHand");
  });

  test("the smallest levels for 90, 95 and 99 % equal R's exactly", () => {
    for (const [demand, key] of [[delivery, "smallest_S_ready_rate"], [protection, "smallest_S_protection_interval"]] as const) {
      expect({ p90: smallestLevel(0.9, demand), p95: smallestLevel(0.95, demand), p99: smallestLevel(0.99, demand) }).toEqual(values[key]);
    }
  });
});

describe.each(items.filter(({ perYear }) => perYear > 0))("used item $name", ({ delivery, protection, reviewMean, values }) => {
  test("ordering up to a level at every review equals R for both kinds of target", () => {
    for (const [measure, key] of [["fillRate", "RS_fill_95"], ["readyRate", "RS_cycle_95"]] as const) {
      const result = smallestOrderUpTo(0.95, measure, { delivery, protection, reviewMean }), wanted = values[key] as Nested;
      expect(result.level).toBe(wanted["S"]);
      expectNear([result.readyRate, result.fillRate, result.backorders, result.onHand], numbersOf([
        wanted["cycle_service_P_D_le_S"], wanted["fill_rate"], wanted["expected_backorders_end_of_cycle"],
        wanted["expected_on_hand_end_of_cycle"]]), { relative }, key);
    }
  });
});

describe.each(items.filter(({ perYear, poisson }) => perYear > 0 && poisson))("item $name used one at a time", ({ pack, costs, delivery, values }) => {
  test("the smallest reorder point for 95 and 99 % of parts at once equals R's", () => {
    for (const [target, key] of [[0.95, "sQ_fill_95"], [0.99, "sQ_fill_99"]] as const) {
      const wanted = values[key] as Nested, result = smallestReorderPoint(target, Math.max(1, orderQuantity(costs, pack).inPacks), delivery);
      expect([result.point, result.quantity]).toEqual([wanted["s"], wanted["Q"]]);
      expectNear([result.fillRate, result.backorders, result.onHand, result.readyRate], numbersOf([
        wanted["fill_rate"], wanted["expected_backorders"], wanted["expected_on_hand"], wanted["cycle_service_P_D_le_s"]]), { relative }, key);
    }
  });
});
