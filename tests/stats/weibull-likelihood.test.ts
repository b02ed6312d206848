import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lifeAt, shapeOf, timeRatio } from "../../src/stats/life-figures.ts";
import { groupLines, packLines } from "../../src/stats/life-lines.ts";
import type { LifeLine } from "../../src/stats/life-lines.ts";
import { hasCurve, weibullLife } from "../../src/stats/weibull-life.ts";
import { weibullLikelihood } from "../../src/stats/weibull-likelihood.ts";

/** Lines of every kind: failed between two inspections, by the first, exactly, good so far, and entered late. */
const line = fc.record({ low: fc.integer({ min: 0, max: 40 }), step: fc.integer({ min: 1, max: 40 }), kind: fc.constantFrom("between", "good", "exact", "first"), late: fc.boolean(), count: fc.integer({ min: 1, max: 4 }), x: fc.tuple(fc.constantFrom(0, 1), fc.constantFrom(0, 1)) })
  .map(({ low, step, kind, late, count, x }): LifeLine => {
    const entry = late ? Math.floor(low / 2) : 0;
    if (kind === "exact") return { low: low + step, high: low + step, entry, count, x };
    return { low: kind === "first" ? 0 : low, high: kind === "good" ? Infinity : low + step, entry: kind === "first" ? 0 : entry, count, x };
  });

describe("weibullLikelihood", () => {
  test("slopes and curvature are those of finite differences, with and without priors", () => {
    const place = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0.5, max: 3, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }));
    fc.assert(fc.property(fc.array(line, { minLength: 1, maxLength: 8 }), place, fc.boolean(), (lines, theta, weak) => {
      const packed = packLines(lines), prior = weak ? { shape: { median: 1.5, log_sd: 0.5 }, effects: 1 } : {}, step = 1e-5;
      const at = (place: readonly number[]) => weibullLikelihood(packed, place, prior), here = at(theta);
      theta.forEach((_, j) => {
        const moved = (by: number) => theta.map((one, k) => (k === j ? one + by : one)), up = at(moved(step)), down = at(moved(-step));
        const size = 1 + Math.abs(here.gradient[j] as number);
        expect(Math.abs((up.value - down.value) / (2 * step) - (here.gradient[j] as number)) / size).toBeLessThan(1e-5);
        theta.forEach((__, k) => {
          const exact = here.hessian[j * theta.length + k] as number, rough = ((up.gradient[k] as number) - (down.gradient[k] as number)) / (2 * step);
          expect(Math.abs(rough - exact) / (1 + Math.abs(exact))).toBeLessThan(1e-4);
        });
      });
    }), { seed: 5, numRuns: 60 });
  });

  test("lines put together give the same likelihood as one by one", () => {
    fc.assert(fc.property(fc.array(line, { minLength: 1, maxLength: 10 }), (lines) => {
      const twice = [...lines, ...lines], grouped = groupLines(twice), alike = packLines(twice).unit;
      const value = (some: readonly LifeLine[]) => weibullLikelihood({ ...packLines(some), unit: alike }, [0, 1.3, 0.2, -0.1]).value;
      expect(grouped.length).toBeLessThanOrEqual(lines.length);
      expect(value(grouped)).toBeCloseTo(value(twice), 8);
    }), { seed: 5, numRuns: 40 });
  });

  test("a line that cannot be is refused with what it was", () => {
    expect(() => packLines([{ low: 5, high: 4 }])).toThrow(new RangeError("packLines: high must be above 0 and not below low, got low 5, high 4, entry 0, count 1"));
    expect(() => packLines([{ low: 5, high: 9, entry: 6 }])).toThrow("packLines: entry must not lie above low");
    expect(() => packLines([{ low: 0, high: 0 }])).toThrow("high must be above 0");
    expect(() => packLines([{ low: 1, high: 2, x: [1] }, { low: 1, high: 2 }])).toThrow("x must be 1 finite numbers, got none");
  });
});

describe("figures of a fitted life", () => {
  const lines = [[5, 30, 2], [10, 40, 7], [20, 30, 11], [40, 20, 14]].flatMap(([at = 0, n = 0, bad = 0]) => [0, 1].flatMap((x): LifeLine[] => [
    { low: 0, high: at, count: bad + 2 * x, x: [x] }, { low: at, high: Infinity, count: n - bad, x: [x] }]));
  const fit = weibullLife(lines);
  if (!hasCurve(fit)) throw new RangeError(`needs a curve, got ${fit.status}`);

  test("in other units of exposure everything is the same but the unit", () => {
    const months = weibullLife(lines.map((one) => ({ ...one, low: one.low * 30, high: one.high * 30 })));
    if (!hasCurve(months)) throw new RangeError(`needs a curve, got ${months.status}`);
    expect([months.shape, months.scale / 30, timeRatio(months, 0).value]).toEqual([fit.shape, fit.scale, timeRatio(fit, 0).value].map((one) => expect.closeTo(one, 8)));
    expect([lifeAt(months, 0.1).low, lifeAt(months, 0.1).high]).toEqual([lifeAt(fit, 0.1).low, lifeAt(fit, 0.1).high].map((one) => expect.closeTo(30 * (one as number), 6)));
  });

  test("limits lie at the fall of the profile that defines them", () => {
    // Kept at its limit as an offset, the shape costs 3.841459 / 2 (chi-square, one degree): found here by scanning the other parameters.
    const { low } = shapeOf(fit), packed = packLines(lines);
    let best = -Infinity;
    for (let a = -3; a < 1; a += 0.002) for (let effect = -0.3; effect < 0.8; effect += 0.02) best = Math.max(best, weibullLikelihood(packed, [a, low as number, effect]).value);
    expect(fit.logLikelihood - best).toBeCloseTo(3.841459 / 2, 2);
  });

  test("a falling share is called not wear-out, with its negative shape", () => {
    const falling = weibullLife([[5, 30, 12], [10, 30, 9], [40, 30, 4]].flatMap(([at = 0, n = 0, bad = 0]) => [{ low: 0, high: at, count: bad }, { low: at, high: Infinity, count: n - bad }]));
    expect(falling.status).toBe("not wear-out");
    expect("shape" in falling && falling.shape).toBeLessThan(0);
  });
});
