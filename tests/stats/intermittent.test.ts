import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitGammaPrior } from "../../src/stats/gamma-prior.ts";
import { croston, demandPattern, oneStepForecasts, tsb } from "../../src/stats/intermittent.ts";
import { demandQuantile } from "../../src/stats/negative-binomial.ts";
import { univariate } from "../../src/stats/univariate.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/08-intermittent: constructed series to follow by hand, and weekly counts (surveillance), R 4.2.2 and forecast.
const byHand = readCase("08-intermittent/by-hand"), { tolerance } = byHand.expected;
const series = (rows: Record<string, string>[]) => rows.map((row) => Number(row["demand"]));
const weekly = (name: string) => { const { rows, expected } = readCase(`08-intermittent/${name}`); return [name, series(rows), expected.values] as const; };
const cases = [
  ...["hand", "one_demand", "leading_zeros", "all_positive"].map((set) =>
    [set, series(byHand.rows.filter((row) => row["set"] === set)), byHand.expected.values[set] as Nested] as const),
  weekly("weekly-m1"), weekly("weekly-q2"),
];
const relative = tolerance["default_rel"] as number, alphas = [0.1, 0.2];

describe.each(cases)("demand of %s", (_name, list, values) => {
  test("interval, variation and class equal R's", () => {
    const { interval, cv2, pattern } = demandPattern(list);
    expectNear([interval, cv2], numbersOf([values["adi_periods_over_demands"], values["cv2_sample_sd"]]), { relative });
    expect(pattern).toBe(values["class_syntetos_boylan_croston"] ?? null);
  });

  test.each(alphas)("Croston, Syntetos-Boylan and Teunter-Syntetos-Babai with weight %d equal R's", (alpha) => {
    const wanted = (values["methods"] as Nested)[`alpha_${alpha}`] as Nested;
    const smoothed = croston(list, alpha), fading = tsb(list, alpha, alpha);
    expectNear(
      [smoothed.size, smoothed.interval, smoothed.croston, smoothed.sba, fading.size, fading.probability, fading.forecast],
      numbersOf(["demand_size", "demand_interval", "croston", "sba", "tsb_size", "tsb_prob", "tsb"].map((key) => wanted[key])), { relative });
  });

  test.each(alphas)("one-step forecasts with weight %d and their errors equal R's", (alpha) => {
    const wanted = (values["methods"] as Nested)[`alpha_${alpha}`] as Nested, said = oneStepForecasts(list, alpha);
    expectNear(said.croston.slice(-6), numbersOf(wanted["croston_one_step_last6"]), { relative });
    const error = list.slice(1).reduce((sum, demand, i) => sum + Math.abs(demand - (said.croston[i + 1] as number)), 0) / (list.length - 1);
    const step = list.slice(1).reduce((sum, demand, i) => sum + Math.abs(demand - (list[i] as number)), 0) / (list.length - 1);
    expectNear([error, error / step], numbersOf([wanted["mae_croston"], wanted["mase_croston"]]), { relative });
    // R starts TSB with the first demand already known; before it we have nothing to forecast from.
    const first = list.findIndex((demand) => demand > 0), known = (_: unknown, i: number) => list.length - 6 + i > first;
    expectNear(said.tsb.slice(-6).filter(known), numbersOf(wanted["tsb_one_step_last6"]).filter(known), { relative });
  });

  test("the negative binomial size and likelihood equal R's", () => {
    const wanted = values["distribution"] as Nested, fitted = fitGammaPrior(list, list.map(() => 1));
    const size = fitted.status === "no difference between lines" ? Infinity : fitted.shape;
    expectNear([size], [numberOf(wanted["nb_size_ml"])], { relative: tolerance["nb_ml_rel"] as number });
    if (fitted.fit === null) return;
    expectNear([fitted.fit.logLikelihood, fitted.fit.logLikelihoodPooled], numbersOf([wanted["loglik_nb"], wanted["loglik_poisson"]]), { relative });
  });

  test("quantiles of demand over one to eight periods equal R's exactly", () => {
    const { mean } = univariate(list), sizes = values["distribution"] as Nested, targets = [0.5, 0.8, 0.9, 0.95, 0.99];
    for (const periods of [1, 2, 4, 8]) {
      const wanted = (values["lead_time_demand_iid"] as Nested)[`L_${periods}`] as Nested;
      for (const [key, size] of [["poisson_q", Infinity], ["nb_ml_q", numberOf(sizes["nb_size_ml"])], ["nb_moments_q", numberOf(sizes["nb_size_moments"])]] as const) {
        expectNear(targets.map((target) => demandQuantile(target, { mean: periods * mean, size: periods * size })), numbersOf(wanted[key]), {}, key);
      }
    }
  });
});

describe("intermittent demand", () => {
  test("no demand seen gives forecasts of 0, no class and no amounts", () => {
    const none = series(byHand.rows.filter((row) => row["set"] === "all_zero"));
    expect(none.length).toBe(5);
    expect(demandPattern(none)).toEqual({ interval: null, cv2: null, pattern: null });
    expect(croston(none, 0.1)).toEqual({ size: null, interval: null, croston: 0, sba: 0 });
    expect(tsb(none, 0.1, 0.1)).toEqual({ size: null, probability: 0, forecast: 0 });
  });

  test("a line that is no longer used fades with TSB and stays with Croston", () => {
    const used = [1, 0, 2, 1, 0, 1, 1, 2], dead = [...used, ...new Array<number>(52).fill(0)];
    expect(croston(dead, 0.1).croston).toBe(croston(used, 0.1).croston);
    expect(tsb(dead, 0.1, 0.1).forecast).toBeLessThan(0.01 * tsb(used, 0.1, 0.1).forecast);
  });

  test("forecasts scale with the amounts and never look ahead", () => {
    const demands = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 20 })), { minLength: 2, maxLength: 40 });
    fc.assert(fc.property(demands, fc.double({ min: 0.05, max: 0.5, noNaN: true }), (list, alpha) => {
      const said = oneStepForecasts(list, alpha), shorter = oneStepForecasts(list.slice(0, -1), alpha);
      expect(said.croston.slice(0, -1)).toEqual(shorter.croston);
      expect(said.tsb.slice(0, -1)).toEqual(shorter.tsb);
      expect(croston(list.map((demand) => 3 * demand), alpha).sba).toBeCloseTo(3 * croston(list, alpha).sba, 9);
    }), { seed: 15 });
  });

  test("series and weights that are none are refused", () => {
    expect(() => croston([], 0.1)).toThrow(new RangeError("croston: series must not be empty, got none"));
    expect(() => tsb([1, -1], 0.1, 0.1)).toThrow(new RangeError("tsb: series must be a finite number of at least 0, got -1"));
    expect(() => oneStepForecasts([1], 1)).toThrow(new RangeError("oneStepForecasts: alpha must lie between 0 and 1, both excluded, got 1"));
  });
});
