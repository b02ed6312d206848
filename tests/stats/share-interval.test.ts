import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exactShareInterval } from "../../src/stats/exact-share-interval.ts";
import { jeffreysShareInterval } from "../../src/stats/jeffreys-share-interval.ts";
import { midPShareInterval } from "../../src/stats/mid-p-share-interval.ts";
import { shareInterval } from "../../src/stats/share-interval.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";

// tests/reference/01-intervals/binomial: 15 herds (lme4::cbpp) and constructed edges, R 4.2.2.
const { rows, expected } = readCase("01-intervals/binomial");
const methods = [
  ["wilson", shareInterval], ["clopper_pearson", exactShareInterval], ["jeffreys", jeffreysShareInterval], ["midp", midPShareInterval],
] as const;

describe("intervals of a share", () => {
  test.each(methods.flatMap(([name, interval]) => [0.95, 0.8].map((level) => [name, level, interval] as const)))(
    "%s at level %d equals R's values in every row", (name, level, interval) => {
      const values = expected.values[`level_${level.toFixed(2)}`];
      const limits = rows.map((row) => interval(Number(row["x"]), Number(row["n"]), level));
      const tolerance = { relative: expected.tolerance["default_rel"] as number, absolute: expected.tolerance["default_abs"] as number };
      expectNear(limits.map(([low]) => low), numbersOf(values?.[`${name}_lo`]), tolerance, `${name} low`);
      expectNear(limits.map(([, high]) => high), numbersOf(values?.[`${name}_hi`]), tolerance, `${name} high`);
    });

  const counts = fc.integer({ min: 1, max: 3000 }).chain((n) => fc.record({ n: fc.constant(n), k: fc.integer({ min: 0, max: n }) }));
  test.each(methods)("%s contains the observed share, is mirrored for the share found good, and widens with the level", (_name, interval) => {
    fc.assert(fc.property(counts, ({ k, n }) => {
      const [low, high] = interval(k, n), [goodLow, goodHigh] = interval(n - k, n), [narrowLow, narrowHigh] = interval(k, n, 0.8);
      expect(low).toBeLessThanOrEqual(k / n + 1e-15);
      expect(high).toBeGreaterThanOrEqual(k / n - 1e-15);
      expect([low + goodHigh, high + goodLow].every((sum) => Math.abs(sum - 1) < 1e-9)).toBe(true);
      expect(low <= narrowLow && high >= narrowHigh).toBe(true);
    }), { numRuns: 60, seed: 1 });
  });

  test("the exact interval covers the truth at least as often as it says, for every share", () => {
    const n = 12, limits = Array.from({ length: n + 1 }, (_, k) => exactShareInterval(k, n));
    for (let share = 0.005; share < 1; share += 0.005) {
      let chance = (1 - share) ** n, covered = 0;
      limits.forEach(([low, high], k) => {
        if (low <= share && share <= high) covered += chance;
        chance *= ((n - k) / (k + 1)) * (share / (1 - share));
      });
      expect(covered).toBeGreaterThanOrEqual(0.95 - 1e-9);
    }
  });

  test("impossible counts are refused by name, requirement and value", () => {
    expect(() => shareInterval(1, 0)).toThrow(new RangeError("shareInterval: inspected must be a whole number of at least 1, got 0"));
    expect(() => exactShareInterval(3, 2)).toThrow(new RangeError("exactShareInterval: failed must be a whole number in 0…2, got 3"));
    expect(() => jeffreysShareInterval(0.5, 2)).toThrow(new RangeError("jeffreysShareInterval: failed must be a whole number in 0…2, got 0.5"));
    expect(() => midPShareInterval(1, 2, 1)).toThrow(new RangeError("midPShareInterval: level must lie between 0 and 1, both excluded, got 1"));
    expect(() => shareInterval(NaN, 2)).toThrow("got NaN");
  });
});
