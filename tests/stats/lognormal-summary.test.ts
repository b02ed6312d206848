import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { harrellDavis } from "../../src/stats/harrell-davis.ts";
import { lognormalSummary } from "../../src/stats/lognormal-summary.ts";
import { quantileLimits } from "../../src/stats/quantile-limits.ts";
import { quantile } from "../../src/stats/quantile.ts";
import { univariate } from "../../src/stats/univariate.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/11-labour: figure-finding times (HSAUR3::EFT) and constructed edge cases, R 4.2.2 and Hmisc.
const finding = readCase("11-labour/figure-finding-times"), edges = readCase("11-labour/edge-cases");
const times = (group?: string) => finding.rows.filter((row) => group === undefined || row["group"] === group).map((row) => Number(row["time"]));
const hours = (set: string) => edges.rows.filter((row) => row["set"] === set).map((row) => Number(row["hours"]));
const full = [
  ["all", times(), finding], ["corner", times("corner"), finding], ["row", times("row"), finding], ["outlier", hours("outlier"), edges],
] as const;

describe.each(full)("times of %s", (name, list, { expected }) => {
  const values = expected.values[name] as Nested, relative = expected.tolerance["default_rel"] as number;
  const { n, median, mean, curve, reason } = lognormalSummary(list), { sd } = univariate(list);

  test("count, mean, spread and middle equal R's", () => {
    expectNear([n, mean, sd, median], numbersOf(["n", "mean", "sd", "median"].map((key) => values[key])), { relative });
  });

  test("the curve, the modified Cox interval and the range for the next job equal R's", () => {
    expect(reason).toBeNull();
    expectNear([curve?.logMean, curve?.logSd, curve?.mean, curve?.meanLow, curve?.meanHigh, curve?.nextLow, curve?.nextHigh].map((value) => value ?? null),
      numbersOf(["log_mean", "log_sd", "lognormal_mean_plugin", "modified_cox_lo", "modified_cox_hi", "prediction_lo", "prediction_hi"]
        .map((key) => values[key])), { relative });
  });

  test.each(["p25", "p50", "p75", "p90"])("%s: type 7, Harrell-Davis and the distribution-free limits equal R's", (key) => {
    const wanted = (values["quantiles"] as Nested)[key] as Nested, share = numberOf(wanted["p"]);
    const limits = quantileLimits(list, share);
    expectNear([quantile(list, share), harrellDavis(list, share)], numbersOf([wanted["type7"], wanted["harrell_davis"]]), { relative });
    expect([limits.low ?? "-Inf", limits.high ?? "Inf"]).toEqual([wanted["lo"], wanted["hi"]]);
    expectNear([limits.coverage], [numberOf(wanted["coverage"])], { relative });
  });
});

describe("times that give no curve", () => {
  test.each([["n1", "one time only"], ["constant", "all times the same"], ["with_zero", "times of zero or less"]])(
    "set %s keeps R's mean and quantiles and says: %s", (set, reason) => {
      const list = hours(set), wanted = edges.expected.values[set] as Nested, summary = lognormalSummary(list);
      expect([summary.curve, summary.reason]).toEqual([null, reason]);
      expectNear([summary.n, summary.mean, summary.median, ...[0.25, 0.5, 0.75, 0.9].map((share) => quantile(list, share))],
        numbersOf([wanted["n"], wanted["mean"], wanted["median"], ...(wanted["quantile_type7_p25_p50_p75_p90"] as unknown as number[])]), { relative: 1e-9 });
    });

  test("two times give a curve with a range so wide that it warns by itself", () => {
    const { curve, p80, mean } = lognormalSummary(hours("n2")), wanted = edges.expected.values["n2"] as Nested;
    expectNear([mean, univariate(hours("n2")).sd], numbersOf([wanted["mean"], wanted["sd"]]), { relative: 1e-9 });
    expect((curve?.meanHigh ?? 0) / (curve?.meanLow ?? 1)).toBeGreaterThan(1e6);
    expect(p80).toBeNull();
  });
});

describe("quantiles", () => {
  const list = fc.array(fc.double({ min: 0.01, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 60 });
  test("rise with the share, stay within the list, and lie between their limits", () => {
    fc.assert(fc.property(list, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (values, share) => {
      const here = quantile(values, share), { low, high } = quantileLimits(values, share);
      expect(quantile(values, share / 2)).toBeLessThanOrEqual(here);
      expect(here >= Math.min(...values) && here <= Math.max(...values)).toBe(true);
      expect(harrellDavis(values, share / 2)).toBeLessThanOrEqual(harrellDavis(values, share) + 1e-9 * Math.max(...values));
      if (low !== null) expect(low).toBeLessThanOrEqual(here);
      if (high !== null) expect(high).toBeGreaterThanOrEqual(here);
    }), { seed: 13 });
  });

  test("an upper limit of the 80 % quantile takes 17 values", () => {
    // By hand: the largest of n values is enough when 0.8ⁿ ≤ 0.025, n ≥ ln 40 / ln 1.25 = 16.5.
    const ones = (n: number) => Array.from({ length: n }, (_, i) => i);
    expect(quantileLimits(ones(16), 0.8).high).toBeNull();
    expect(quantileLimits(ones(17), 0.8).high).toBe(16);
  });

  test("the curve's mean lies in its interval and changes with the unit of time", () => {
    fc.assert(fc.property(list.filter((values) => new Set(values).size > 1), (values) => {
      const curve = lognormalSummary(values).curve, scaled = lognormalSummary(values.map((value) => value * 60)).curve;
      if (curve === null || scaled === null) throw new Error("a curve is missing");
      expect(curve.meanLow <= curve.mean && curve.mean <= curve.meanHigh).toBe(true);
      expect(scaled.p80 / curve.p80 / 60).toBeCloseTo(1, 6);
    }), { seed: 14 });
  });

  test("lists that are none are refused by name, requirement and value", () => {
    expect(() => quantile([], 0.5)).toThrow(new RangeError("quantile: values must not be empty, got none"));
    expect(() => quantile([1], 1.5)).toThrow(new RangeError("quantile: probability must lie in 0…1, got 1.5"));
    expect(() => quantileLimits([1], 0)).toThrow(new RangeError("quantileLimits: probability must lie between 0 and 1, both excluded, got 0"));
    expect(() => harrellDavis([Infinity], 0.5)).toThrow(new RangeError("harrellDavis: values must hold finite numbers only, got Infinity"));
    expect(() => lognormalSummary([])).toThrow(new RangeError("lognormalSummary: minutes must not be empty, got none"));
  });
});
