import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demandAbove } from "../../src/stats/negative-binomial.ts";
import { orderQuantity, roundedOrder } from "../../src/stats/order-quantity.ts";
import { orderUpTo, smallestOrderUpTo } from "../../src/stats/order-up-to.ts";
import { reorderPoint, smallestReorderPoint } from "../../src/stats/reorder-point.ts";
import { expectedBackorders, smallestLevel } from "../../src/stats/stock-level.ts";

describe("roundedOrder", () => {
  test("is a whole number of packs, enough, not below the minimum, and never a pack too many", () => {
    fc.assert(fc.property(fc.integer({ min: -50, max: 500 }), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 100 }), (needed, pack, minimum) => {
      const order = roundedOrder(needed, pack, minimum);
      if (needed <= 0) { expect(order).toBe(0); return; }
      expect(order % pack).toBe(0);
      expect(order).toBeGreaterThanOrEqual(Math.max(needed, minimum));
      expect(order - pack).toBeLessThan(Math.max(needed, minimum));
    }), { seed: 6 });
  });

  test("does not buy a pack more for the rounding of 0.1 × 3", () => {
    expect(roundedOrder(0.1 * 3, 0.1)).toBeCloseTo(0.3, 12);
  });

  test("refuses what cannot be a pack, a minimum or a need", () => {
    expect(() => roundedOrder(3, 0)).toThrow(new RangeError("roundedOrder: pack must be a finite number above 0, got 0"));
    expect(() => roundedOrder(3, 1, -1)).toThrow(new RangeError("roundedOrder: minimum must be a finite number of at least 0, got -1"));
    expect(() => roundedOrder(NaN, 1)).toThrow(new RangeError("roundedOrder: needed must be a number, got NaN"));
  });
});

describe("orderQuantity", () => {
  test("no multiple of the pack costs less than the one it names", () => {
    const amount = fc.double({ min: 0.1, max: 2000, noNaN: true });
    fc.assert(fc.property(amount, amount, amount, fc.integer({ min: 1, max: 50 }), (perYear, orderCost, holdingCost, pack) => {
      const { inPacks, inPacksCost } = orderQuantity({ perYear, orderCost, holdingCost }, pack);
      const cost = (quantity: number) => (orderCost * perYear) / quantity + (holdingCost * quantity) / 2;
      for (const packs of [inPacks / pack - 1, inPacks / pack + 1].filter((count) => count >= 1)) {
        expect(cost(packs * pack)).toBeGreaterThanOrEqual(inPacksCost * (1 - 1e-12));
      }
    }), { seed: 7 });
  });

  test("refuses costs that are not above 0", () => {
    expect(() => orderQuantity({ perYear: 1, orderCost: 0, holdingCost: 1 }))
      .toThrow(new RangeError("orderQuantity: orderCost must be a finite number above 0, got 0"));
  });
});

describe("stock levels", () => {
  test("one more on the shelf lowers the number waiting by the chance that it was missing", () => {
    for (const demand of [{ mean: 3.4, size: 2 }, { mean: 40, size: Infinity }]) {
      for (let level = 0; level < 60; level += 1) {
        const fewer = expectedBackorders(level, demand) - expectedBackorders(level + 1, demand);
        expect(fewer).toBeCloseTo(demandAbove(level, demand), 10);
      }
    }
  });

  test("impossible levels and targets are refused", () => {
    const demand = { mean: 1, size: 1 }, review = { delivery: demand, protection: demand, reviewMean: 0 };
    expect(() => expectedBackorders(-1, demand)).toThrow(new RangeError("expectedBackorders: level must be a whole number of at least 0, got -1"));
    expect(() => smallestLevel(95, demand)).toThrow(new RangeError("smallestLevel: target must lie between 0 and 1, both excluded, got 95"));
    expect(() => orderUpTo(1, review)).toThrow(new RangeError("orderUpTo: reviewMean must be a finite number above 0, got 0"));
    expect(() => smallestOrderUpTo(0, "fillRate", { ...review, reviewMean: 1 })).toThrow("smallestOrderUpTo: target must lie between 0 and 1");
    expect(() => reorderPoint(-2, 1, demand)).toThrow(new RangeError("reorderPoint: point must be a whole number of at least -1, got -2"));
    expect(() => smallestReorderPoint(0.9, 0, demand)).toThrow(new RangeError("reorderPoint: quantity must be a whole number of at least 1, got 0"));
  });
});
