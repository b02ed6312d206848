import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/stats/random.ts";
import { windowScan } from "../../src/stats/window-scan.ts";
import type { Fitted } from "../../src/stats/window-scan.ts";

/** Fittings of some kinds over 30 months, failing by their own share, and by `bad` within months 12 to 16. */
function fittings(seed: number, bad: number | null, shares = [0.3, 0.3, 0.3]): Fitted[] {
  const random = seededRandom(seed);
  return Array.from({ length: 300 }, () => {
    const stretch = Math.floor(random() * 30), kind = Math.floor(random() * shares.length);
    const share = bad !== null && stretch >= 12 && stretch <= 16 ? bad : shares[kind] ?? 0;
    return { stretch, kind, like: kind, failed: random() < share, count: 1 };
  });
}

describe("windowScan", () => {
  test("finds the months of a bad batch to within one, with the smallest p the shufflings allow", () => {
    const { window, p } = windowScan(fittings(1, 0.85), 9, 199, seededRandom(2));
    expect(Math.abs((window?.first ?? 0) - 12)).toBeLessThanOrEqual(1);
    expect(Math.abs((window?.last ?? 0) - 16)).toBeLessThanOrEqual(1);
    expect(p).toBe(1 / 200);
  });

  test("without a batch p is below 5 % in about one shop of twenty", () => {
    const low = Array.from({ length: 40 }, (_, i) => windowScan(fittings(100 + i, null), 9, 99, seededRandom(i)).p ?? 1).filter((p) => p <= 0.05).length;
    expect(low).toBeLessThanOrEqual(5);
  });

  test("a bad model that came in one summer is not a bad batch: shuffling stays within each kind", () => {
    const random = seededRandom(8);
    const summer = fittings(3, null, [0.2, 0.2]).concat(Array.from({ length: 60 }, () => ({ stretch: 12 + Math.floor(random() * 5), kind: 2, like: 2, failed: random() < 0.8, count: 1 })));
    expect(windowScan(summer, 9, 199, seededRandom(4)).p).toBeGreaterThan(0.05);
  });

  test("the likelihood ratio is the one worked out by hand", () => {
    // One kind, share 1/2: month 0 has 2 of 2 failed (expected 1), month 1 has 0 of 2: 2 ln 2 each.
    const four = [{ stretch: 0, kind: 0, like: 0, failed: true, count: 2 }, { stretch: 1, kind: 0, like: 0, failed: false, count: 2 }];
    const { window, p } = windowScan(four, 1, 0, () => 0);
    expect(window).toMatchObject({ first: 0, last: 0, fitted: 2, failed: 2, expected: 1, log_ratio: 4 * Math.log(2) });
    expect(p).toBe(1);
  });

  test("p is the share of all orders that are as bad, worked out by hand, whether few failed or nearly all did", () => {
    const month = (stretch: number, failed: number, sound: number, kind = 0): Fitted[] =>
      [{ stretch, kind, like: 0, failed: true, count: failed }, { stretch, kind, like: 0, failed: false, count: sound }].filter(({ count }) => count > 0);
    const p = (pieces: Fitted[]) => windowScan(pieces, 1, 19_999, seededRandom(11)).p ?? NaN, near = (share: number) => 4 * Math.sqrt((share * (1 - share)) / 20_000);
    // 4 failed of 8, all in one of two months of 4: two orders of C(8, 4) = 70.
    expect(Math.abs(p([...month(0, 4, 0), ...month(1, 0, 4)]) - 2 / 70)).toBeLessThan(near(2 / 70));
    // 6 failed of 8, both sound ones in one month: 2 · C(4, 2) of C(8, 2) = 28 orders.
    expect(Math.abs(p([...month(0, 4, 0), ...month(1, 2, 2)]) - 12 / 28)).toBeLessThan(near(12 / 28));
    // Two kinds of 2 and 2, each shuffled by itself: each has its 2 failed in month 0 in one of 6 orders, in month 1 in another.
    expect(Math.abs(p([0, 1].flatMap((kind) => [...month(0, 2, 0, kind), ...month(1, 0, 2, kind)])) - 2 / 36)).toBeLessThan(near(2 / 36));
  });

  test("pieces counted together give the window and p of the same pieces one by one", () => {
    const single = fittings(7, 0.7), cells = new Map<string, Fitted>();
    for (const one of single) {
      const key = JSON.stringify(one), known = cells.get(key);
      cells.set(key, { ...one, count: (known?.count ?? 0) + 1 });
    }
    const apart = windowScan(single, 9, 999, seededRandom(3)), together = windowScan([...cells.values()], 9, 999, seededRandom(3));
    expect(cells.size).toBeLessThan(single.length);
    expect(together.window).toMatchObject({ first: apart.window?.first, last: apart.window?.last, fitted: apart.window?.fitted, failed: apart.window?.failed });
    expect(Math.abs((together.p ?? NaN) - (apart.p ?? NaN))).toBeLessThan(0.05);
  });

  test("the same seed gives the same answer; nothing failed gives no window", () => {
    expect(windowScan(fittings(5, null), 6, 50, seededRandom(9))).toEqual(windowScan(fittings(5, null), 6, 50, seededRandom(9)));
    expect(windowScan(fittings(5, 0, [0, 0, 0]), 6, 50, seededRandom(9))).toEqual({ window: null, p: null });
    expect(() => windowScan([{ stretch: -1, kind: 0, like: 0, failed: false, count: 1 }], 6, 1, () => 0)).toThrow("stretch must be a whole number of at least 0");
    expect(() => windowScan([{ stretch: 0, kind: 0, like: 0, failed: false, count: 0 }], 6, 1, () => 0)).toThrow("count must be a whole number of at least 1");
  });
});
