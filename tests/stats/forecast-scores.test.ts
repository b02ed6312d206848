import { describe, expect, test } from "vitest";
import { bestSmoothing, holtWinters, holtWintersAhead, simpleSmoothing } from "../../src/stats/exponential-smoothing.ts";
import { meanStep, pinballLoss, scaledError } from "../../src/stats/forecast-scores.ts";
import { leastSquares } from "../../src/stats/least-squares.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

describe("measures of forecasts", () => {
  // tests/reference/10-seasonal/accuracy-measures: constructed, R 4.2.2; Hyndman & Koehler 2006, Gneiting & Raftery 2007.
  const { rows, expected: { values, tolerance } } = readCase("10-seasonal/accuracy-measures"), relative = tolerance["default_rel"] as number;
  const train = rows.filter((row) => row["part"] === "train").map((row) => Number(row["y"])), tested = rows.filter((row) => row["part"] === "test");
  const of = (key: string) => tested.map((row) => Number(row[key]));

  test("scaled errors, by the last step and by the season, are R's", () => {
    const scaled = (lag: number) => scaledError(of("y"), of("forecast"), meanStep(train, lag) as number);
    expectNear([scaled(1), scaled(Number(values["seasonal_period"]))], [numberOf(values["mase_lag1"]), numberOf(values["mase_seasonal"])], { relative });
  });
  test("pinball losses at the three levels are R's", () => {
    const losses = numbersOf(values["taus"]).map((tau, i) => { const said = of(["q10", "q50", "q90"][i] as string); return of("y").reduce((sum, y, t) => sum + pinballLoss(y, said[t] as number, tau), 0) / tested.length; });
    expectNear(losses, numbersOf(values["pinball"]), { relative });
  });
  test("a yardstick of a history shorter than its lag is null", () => { expect(meanStep([1, 2], 4)).toBeNull(); });
});

describe("exponential smoothing", () => {
  // tests/reference/10-seasonal/monthly-airpassengers: Box, Jenkins & Reinsel; stats::HoltWinters of R 4.2.2.
  const { rows, expected } = readCase("10-seasonal/monthly-airpassengers"), wanted = expected.values["holt_winters_fixed"] as Nested;
  const train = rows.slice(0, 120).map((row) => Number(row["value"]));

  test("Holt–Winters with R's weights and start has R's errors, state and two years ahead", () => {
    const start = { level: numberOf(wanted["start_level"]), trend: numberOf(wanted["start_trend"]), seasons: numbersOf(wanted["start_seasonal"]) };
    const { state, sse } = holtWinters(train, start, { level: 0.3, trend: 0.05, season: 0.2, damping: 1 }, 12);
    expectNear([sse, state.level, state.trend], ["sse", "level", "trend"].map((key) => numberOf(wanted[key])), { relative: 1e-7 });
    expectNear(state.seasons, numbersOf(wanted["seasonal"]), { relative: 1e-7 });
    expectNear(holtWintersAhead(state, train.length, 24, 1), numbersOf(wanted["forecast"]), { relative: 1e-7 });
  });
  test("a missing value moves no level and costs nothing", () => {
    expect(simpleSmoothing([4, null, 8], 0.5)).toEqual(simpleSmoothing([4, 8], 0.5));
  });
  test("a steady list wants little weight, a shifted one much", () => {
    const shifted = [...Array.from({ length: 20 }, () => 5), ...Array.from({ length: 20 }, () => 15)];
    expect(bestSmoothing(shifted).weight).toBeGreaterThan(0.5);
    expect(bestSmoothing([5, 6, 4, 6, 5, 4, 6, 4, 5, 6, 4, 5, 6, 4, 5, 4, 6]).weight).toBeLessThan(0.1);
  });
});

describe("leastSquares", () => {
  test("Norris of NIST's reference data has its certified line", () => {
    // Certified intercept and slope: NIST StRD, Norris, from memory (also in /reference/12-strd).
    const x = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];
    const y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];
    expectNear(leastSquares([Float64Array.from(x, () => 1), Float64Array.from(x)], Float64Array.from(y)) ?? [], [-0.262323073774029, 1.00211681802045], { relative: 1e-10 });
  });
  test("a column that mixes others gives null", () => {
    expect(leastSquares([Float64Array.of(1, 1, 1), Float64Array.of(1, 2, 3), Float64Array.of(2, 3, 4)], Float64Array.of(1, 2, 4))).toBeNull();
  });
});
