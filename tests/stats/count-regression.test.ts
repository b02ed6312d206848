import { describe, expect, test } from "vitest";
import { countRegression, negativeBinomialRegression } from "../../src/stats/count-regression.ts";
import type { CountLine } from "../../src/stats/count-regression.ts";
import { demandQuantile } from "../../src/stats/negative-binomial.ts";
import { yearWaves } from "../../src/stats/year-waves.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/10-seasonal/weekly-salmonella: Salmonella Agona, England and Wales 1990-1995 (Farrington et al. 1996), R 4.2.2 with MASS.
const { rows, expected } = readCase("10-seasonal/weekly-salmonella"), relative = expected.tolerance["default_rel"] as number;
const values = expected.values, week = 7 / 365.25;
const row = (i: number, pairs: number) => [1, i * week, ...yearWaves(i, 1 / week, pairs)];
const lines = (pairs: number): CountLine[] => rows.map(({ count }, i) => ({ x: row(i, pairs), count: Number(count) }));

describe("weekly counts by trend and season", () => {
  test("the Poisson fit has R's coefficients, errors, likelihood, deviance and dispersion", () => {
    const fit = countRegression(lines(2)), wanted = values["poisson"] as Nested;
    expect(fit.status).toBe("ok");
    expectNear(fit.coefficients, numbersOf(wanted["coef"]), { relative });
    expectNear(fit.se, numbersOf(wanted["se"]), { relative });
    expectNear([fit.logLikelihood, fit.deviance, fit.dispersion], ["loglik", "deviance", "pearson_dispersion"].map((key) => numberOf(wanted[key])), { relative });
  });

  test("the negative binomial fit has R's coefficients, likelihood and size", () => {
    const fit = negativeBinomialRegression(lines(2)), wanted = values["negative_binomial"] as Nested;
    // Coefficients follow the size, whose tolerance is 1e-4.
    expectNear(fit.coefficients, numbersOf(wanted["coef"]), { relative: 1e-5 });
    expectNear([fit.logLikelihood], [numberOf(wanted["loglik"])], { relative });
    expectNear([fit.size], [numberOf(wanted["theta"])], { relative: expected.tolerance["theta_rel"] as number });
  });

  test.each([0, 1, 2, 3, 4])("with %d pairs the likelihoods of both kinds are R's", (pairs) => {
    const wanted = values["selection"] as Nested, at = (key: string) => numbersOf(wanted[key])[pairs] as number;
    const poisson = countRegression(lines(pairs)), negative = negativeBinomialRegression(lines(pairs));
    expectNear([poisson.logLikelihood, poisson.dispersion, negative.logLikelihood], [at("poisson_loglik"), at("pearson_dispersion"), at("nb_loglik")], { relative });
    expectNear([negative.size], [at("nb_theta")], { relative: expected.tolerance["theta_rel"] as number });
  });

  test("thirteen weeks ahead have R's means and whole-number quantiles", () => {
    const fit = negativeBinomialRegression(lines(2)), wanted = values["forecast_next_13"] as Nested, levels = numbersOf(values["quantile_levels"]);
    const means = numbersOf(wanted["week"]).map((at) => Math.exp(row(at - 1, 2).reduce((sum, one, j) => sum + one * (fit.coefficients[j] as number), 0)));
    expectNear(means, numbersOf(wanted["nb_mean"]), { relative: 1e-5 });
    const quantiles = means.map((mean) => levels.map((level) => demandQuantile(level, { mean, size: fit.size })));
    expect(quantiles).toEqual((wanted["nb_q"] as unknown as unknown[]).map((list) => numbersOf(list).map((one) => one + 0)));
  });
});

describe("countRegression", () => {
  test("a half-open week counts for half: 4 in half a week and 16 in two whole ones is a rate of 8", () => {
    const fit = countRegression([{ x: [1], count: 4, share: 0.5 }, { x: [1], count: 7 }, { x: [1], count: 9 }]);
    expect(Math.exp(fit.coefficients[0] as number)).toBeCloseTo(20 / 2.5, 9);
  });
  test("a covariate that repeats another is told, not solved", () => {
    expect(countRegression([1, 2, 3, 4].map((t) => ({ x: [1, t, 2 * t], count: t }))).status).toBe("did not converge");
  });
  test("counts that are not whole numbers are refused", () => {
    expect(() => countRegression([{ x: [1], count: 1.5 }])).toThrow(RangeError);
  });
});
