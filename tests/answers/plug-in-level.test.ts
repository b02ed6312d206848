import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { plugInLevel, toBuy } from "../../src/answers/stock/plug-in-level.ts";
import stockCsv from "../reference/trade-stock/stock.csv?raw";
import suppliersCsv from "../reference/trade-stock/suppliers.csv?raw";

type Line = Record<string, string>;
const table = (text: string) => Papa.parse<Line>(text.trim(), { header: true }).data;
const suppliers = new Map(table(suppliersCsv).map((row) => [row.code ?? "", row]));
const lines = table(stockCsv);
const planned = lines.filter((line) => line.needed_level !== "");
const TARGETS: Record<string, number> = { A: 0.95, B: 0.9, C: 0.8 };
const n = (line: Line | undefined, column: string) => Number(line?.[column]);

/** tests/reference/trade-stock/SOURCE.md: an invented shop; the arithmetic of the rule, not a fact. */
describe("plugInLevel", () => {
  test("is checked on more than forty lines", () => expect(planned.length).toBeGreaterThan(40));

  test.each(planned.map((line) => [line.sku ?? "", line] as const))("gives mean, level and order of %s as the rule does by hand", (_sku, line) => {
    const supplier = suppliers.get(line.supplier ?? "");
    const { mean, level } = plugInLevel({
      per_year: n(line, "use_per_year"), season_factor: 1.55, review_days: 14, target: TARGETS[line.criticality ?? ""] ?? NaN,
      lead_days: n(supplier, "actual_mean"), lead_days_sd: n(supplier, "actual_sd"),
    });
    // The printed mean comes from use before it was rounded to one decimal.
    expect(Math.abs(mean - n(line, "mean_in_protection_time"))).toBeLessThanOrEqual(0.02);
    expect(level).toBe(n(line, "needed_level"));
    expect(toBuy(level, {
      on_hand: n(line, "on_hand"), on_order: n(line, "on_order"), waiting: 0, pack_qty: n(line, "pack"), min_order_qty: n(line, "min_order"),
    })).toBe(n(line, "buy_now"));
  });
});

describe("toBuy", () => {
  const shelf = { on_hand: 9, on_order: 2, waiting: 0, pack_qty: 5, min_order_qty: 5 };

  test("buys nothing when shelf and orders reach the level", () => expect(toBuy(11, shelf)).toBe(0));
  test("adds what open jobs wait for", () => expect(toBuy(11, { ...shelf, waiting: 3 })).toBe(5));
  test("buys at least the smallest order, in full packs", () => expect(toBuy(12, { ...shelf, min_order_qty: 12 })).toBe(15));
});
