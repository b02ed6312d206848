import { describe, expect, test } from "vitest";
import { ratioOfTotals } from "../../src/stats/ratio-of-totals.ts";

describe("ratioOfTotals", () => {
  test("four pairs worked out by hand: totals 200 over 4, squares about the line 2 × 10² + 2 × 5², t of 3 degrees 3.1824", () => {
    const { ratio, low, high } = ratioOfTotals([60, 40, 55, 45], [1, 1, 1, 1]);
    // s² = (100 + 100 + 25 + 25) / 3; error √(4 × 250 / 3) / 4 = 4.5644; 97.5 % point of t with 3 degrees from a t table: 3.1824.
    expect(ratio).toBe(50);
    expect(high).toBeCloseTo(50 + 3.18245 * 4.56435, 3);
    expect(low).toBeCloseTo(50 - 3.18245 * 4.56435, 3);
  });

  test("with equal weights it is the t interval of a mean; with a fixed ratio it has no width", () => {
    expect(ratioOfTotals([10, 20, 30], [1, 2, 3])).toEqual({ n: 3, ratio: 10, low: 10, high: 10 });
  });

  test("the linearised error is near that of leaving one pair out (Efron & Tibshirani 1993, An Introduction to the Bootstrap, ch. 11)", () => {
    const above = [52, 64, 49, 80, 33, 61, 58, 70, 45, 66, 51, 73], below = [1.1, 1.5, 0.9, 2.1, 0.8, 1.2, 1.3, 1.4, 1.1, 1.6, 0.9, 1.9], n = above.length;
    const left = above.map((_, k) => ratioOfTotals(above.filter((_, i) => i !== k), below.filter((_, i) => i !== k)).ratio);
    const mean = left.reduce((sum, one) => sum + one, 0) / n;
    const jackknife = Math.sqrt(((n - 1) / n) * left.reduce((sum, one) => sum + (one - mean) ** 2, 0));
    const { high, ratio } = ratioOfTotals(above, below);
    // 97.5 % point of t with 11 degrees, from a t table.
    expect(((high ?? NaN) - ratio) / 2.201 / jackknife).toBeCloseTo(1, 1);
  });

  test("says nothing of the range of one pair, and refuses what has no ratio", () => {
    expect(ratioOfTotals([50], [2])).toEqual({ n: 1, ratio: 25, low: null, high: null });
    expect(() => ratioOfTotals([1], [0])).toThrow(new RangeError("ratioOfTotals: below must add up to more than 0, got 0"));
    expect(() => ratioOfTotals([1], [-1])).toThrow(RangeError);
    expect(() => ratioOfTotals([], [])).toThrow(RangeError);
  });
});
