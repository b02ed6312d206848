import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/stats/random.ts";
import { windowEnds } from "../../src/stats/window-ends.ts";
import type { LookedAgain, NameWritten } from "../../src/stats/window-ends.ts";

/** Looks at parts fitted over 30 months: three in ten had failed, nine in ten of those fitted in months 12 to 16. */
function looks(seed: number, a_month = 8): LookedAgain[] {
  const random = seededRandom(seed);
  return Array.from({ length: 30 * a_month }, (_, i) => {
    const stretch = Math.floor(i / a_month), bad = stretch >= 12 && stretch <= 16;
    return { stretch, like: i % 2, group: 0, failed: random() < (bad ? 0.9 : 0.3), count: 1 };
  });
}
const all = (seeds: number, of: (seed: number) => ReturnType<typeof windowEnds>) => Array.from({ length: seeds }, (_, seed) => of(seed + 1));

describe("windowEnds", () => {
  test("finds both ends to within one month in at least nine of ten, and its ranges hold the true months about as often as they say", () => {
    const ends = all(40, (seed) => windowEnds(looks(seed), [], 9));
    expect(ends.filter((one) => one && Math.abs(one.first.middle - 12) <= 1 && Math.abs(one.last.middle - 16) <= 1).length).toBeGreaterThanOrEqual(36);
    const held = ends.filter((one) => one && one.first.low <= 12 && one.first.high >= 12).length + ends.filter((one) => one && one.last.low <= 16 && one.last.high >= 16).length;
    expect(held).toBeGreaterThanOrEqual(72);
  });

  test("where few parts were looked at again, the lot written beside others that were fitted then narrows both ends", () => {
    const names: NameWritten[] = Array.from({ length: 30 }, (_, stretch) => ({ stretch, name: stretch < 12 ? "A" : stretch <= 16 ? "B" : "C", count: 2 }));
    const width = (one: ReturnType<typeof windowEnds>) => (one ? one.first.high - one.first.low + one.last.high - one.last.low : NaN);
    const without = all(10, (seed) => windowEnds(looks(seed, 3), [], 9)), withNames = all(10, (seed) => windowEnds(looks(seed, 3), names, 9));
    const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
    expect(mean(withNames.map(width))).toBeLessThan(mean(without.map(width)) / 2);
    expect(withNames.filter((one) => one?.first.middle === 12 && one.last.middle === 16).length).toBeGreaterThanOrEqual(9);
  });

  test("a lot that was in use at another time does not draw the window there", () => {
    const names: NameWritten[] = [20, 21, 22, 23].map((stretch) => ({ stretch, name: "D", count: 3 }));
    const ends = windowEnds(looks(3), names, 9);
    expect(Math.abs((ends?.first.middle ?? 0) - 12)).toBeLessThanOrEqual(1);
    expect(Math.abs((ends?.last.middle ?? 0) - 16)).toBeLessThanOrEqual(1);
  });

  test("with one month only, that month is both ends, whatever had failed", () => {
    const one = { middle: 0, low: 0, high: 0 };
    expect(windowEnds([{ stretch: 0, like: 0, group: 0, failed: true, count: 1 }], [], 9)).toEqual({ first: one, last: one });
    expect(windowEnds([{ stretch: 0, like: 0, group: 0, failed: false, count: 1 }], [{ stretch: 0, name: "A", count: 3 }], 9)).toEqual({ first: one, last: one });
  });

  test("of two months, two sound looks in one and two failed in the other, the window is the failed one", () => {
    // By hand, at the usual share 1/2: month 1 weighs the sum of (2 - 2 · 2^-t)² over the ten t, 30; month 0 the sum of 4^(1 - t), 1.7.
    const two = [0, 0, 1, 1].map((stretch) => ({ stretch, like: 0, group: 0, failed: stretch === 1, count: 1 }));
    expect(windowEnds(two, [], 1)).toMatchObject({ first: { middle: 1, high: 1 }, last: { middle: 1, high: 1 } });
  });

  test("looks counted together give the ends of the same looks one by one", () => {
    const single = looks(5), cells = Array.from({ length: 30 }, (_, stretch) => [0, 1].flatMap((like) => [true, false].map((failed) => ({
      stretch, like, group: 0, failed, count: single.filter((one) => one.stretch === stretch && one.like === like && one.failed === failed).length,
    })))).flat();
    expect(cells.reduce((sum, { count }) => sum + count, 0)).toBe(single.length);
    expect(windowEnds(cells, [], 9)).toEqual(windowEnds(single, [], 9));
  });

  test("refuses what is no month, no count and no level", () => {
    expect(() => windowEnds([{ stretch: 0.5, like: 0, group: 0, failed: true, count: 1 }], [], 9)).toThrow("stretch must be a whole number");
    expect(() => windowEnds([], [{ stretch: 0, name: "A", count: -1 }], 9)).toThrow("count must be a whole number");
    expect(() => windowEnds([{ stretch: 0, like: 0, group: 0, failed: true, count: 0.5 }], [], 9)).toThrow("count must be a whole number");
    expect(() => windowEnds([], [], 0)).toThrow("longest must be a finite number above 0");
    expect(() => windowEnds([], [], 9, 1)).toThrow("level must lie between 0 and 1");
  });
});
