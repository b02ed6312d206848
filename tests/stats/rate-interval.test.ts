import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareRates } from "../../src/stats/compare-rates.ts";
import { midPRateInterval } from "../../src/stats/mid-p-rate-interval.ts";
import { jeffreysRateInterval, rateInterval } from "../../src/stats/rate-interval.ts";
import { expectNear, numbersOf, readCase, readRows } from "./reference-case.ts";

// tests/reference/01-intervals/poisson-rates: deaths by horse kick (pscl::prussian) and constructed edges, R 4.2.2.
const { rows, expected } = readCase("01-intervals/poisson-rates");
const tolerance = { relative: expected.tolerance["default_rel"] as number, absolute: expected.tolerance["default_abs"] as number };

describe("intervals of a rate", () => {
  const methods = [["garwood", rateInterval], ["jeffreys", jeffreysRateInterval], ["midp", midPRateInterval]] as const;

  test.each(methods.flatMap(([name, interval]) => [0.95, 0.9].map((level) => [name, level, interval] as const)))(
    "%s at level %d equals R's values in every row, and no exposure gives nothing", (name, level, interval) => {
      const values = expected.values[`level_${level.toFixed(2)}`];
      const limits = rows.map((row) => interval(Number(row["events"]), Number(row["exposure"]), level));
      expectNear(limits.map((pair) => pair && pair[0]), numbersOf(values?.[`${name}_lo`]), tolerance, `${name} low`);
      expectNear(limits.map((pair) => pair && pair[1]), numbersOf(values?.[`${name}_hi`]), tolerance, `${name} high`);
    });

  test.each(methods)("%s contains the observed rate and scales with the unit of exposure", (_name, interval) => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 2000 }), fc.double({ min: 0.01, max: 1e4, noNaN: true }), (events, exposure) => {
      const [low, high] = interval(events, exposure) ?? [NaN, NaN];
      const [perHalf] = interval(events, exposure * 2) ?? [NaN];
      expect(low <= events / exposure && events / exposure <= high).toBe(true);
      expect(perHalf * 2).toBeCloseTo(low, 9 - Math.ceil(Math.log10(low + 1)));
    }), { numRuns: 60, seed: 2 });
  });

  test("impossible counts and exposures are refused by name, requirement and value", () => {
    expect(() => rateInterval(-1, 2)).toThrow(new RangeError("rateInterval: events must be a whole number of at least 0, got -1"));
    expect(() => midPRateInterval(1, -2)).toThrow(new RangeError("midPRateInterval: exposure must be a finite number of at least 0, got -2"));
    expect(() => jeffreysRateInterval(1, 2, 95)).toThrow(new RangeError("jeffreysRateInterval: level must lie between 0 and 1, both excluded, got 95"));
  });
});

describe("compareRates", () => {
  const pairs = readRows("01-intervals/poisson-rates/pairs.csv");
  const compared = pairs.map((row) => compareRates(
    { events: Number(row["x1"]), exposure: Number(row["t1"]) }, { events: Number(row["x2"]), exposure: Number(row["t2"]) }));
  const two = expected.values["two_rates"];

  test.each([
    ["ratio", "rate_ratio"], ["pLess", "p_less"], ["pGreater", "p_greater"], ["pLikelihood", "p_two_sided_minlike"],
    ["pCentral", "p_two_sided_central"], ["pMid", "p_two_sided_midp"],
  ] as const)("%s equals R's %s for every pair", (property, column) => {
    expectNear(compared.map((pair) => pair[property]), numbersOf(two?.[column]), tolerance, property);
  });

  test.each([["exact", "ci_exact"], ["midP", "ci_midp"]] as const)("the %s limits equal R's for every pair", (property, column) => {
    expectNear(compared.map((pair) => pair[property][0]), numbersOf(two?.[`${column}_lo`]), tolerance, `${property} low`);
    expectNear(compared.map((pair) => pair[property][1]), numbersOf(two?.[`${column}_hi`]), tolerance, `${property} high`);
  });

  test("a pair without exposure on one side is a caller's mistake", () => {
    expect(() => compareRates({ events: 1, exposure: 0 }, { events: 1, exposure: 2 }))
      .toThrow(new RangeError("compareRates: exposure must be a finite number above 0, got 0"));
  });
});
