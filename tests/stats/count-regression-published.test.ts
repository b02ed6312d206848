import { describe, expect, test } from "vitest";
import { countRegression, negativeBinomialRegression } from "../../src/stats/count-regression.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

const is = (row: Record<string, string>, column: string, levels: readonly string[]) => levels.map((level) => Number(row[column] === level));

// tests/reference/07-glm-counts: R 4.2.2 with MASS and VGAM, sources beside the data.
describe("published counts", () => {
  test("days absent from school (Quine 1975): R's Poisson and negative binomial coefficients, errors and likelihoods", () => {
    const { rows, expected } = readCase("07-glm-counts/quine-absence"), tolerance = expected.tolerance;
    const lines = rows.map((row) => ({ x: [1, ...is(row, "eth", ["N"]), ...is(row, "sex", ["M"]), ...is(row, "age", ["F1", "F2", "F3"]), ...is(row, "learner", ["SL"])], count: Number(row["days"]) }));
    const poisson = countRegression(lines), wanted = expected.values["poisson"] as Nested;
    expectNear(poisson.coefficients, numbersOf(wanted["coef"]), { relative: tolerance["coef_rel"] as number });
    expectNear(poisson.se, numbersOf(wanted["se"]), { relative: tolerance["se_rel"] as number });
    expectNear([poisson.logLikelihood], [numberOf(wanted["loglik"])], { absolute: tolerance["loglik_abs"] as number });
    const negative = negativeBinomialRegression(lines), other = expected.values["negative_binomial"] as Nested;
    // Coefficients follow the size, whose tolerance is 1e-5.
    expectNear(negative.coefficients, numbersOf(other["coef"]), { relative: 1e-5 });
    expectNear([negative.logLikelihood], [numberOf(other["loglik"])], { absolute: tolerance["loglik_abs"] as number });
    expectNear([negative.size], [numberOf(other["theta"])], { relative: 1e-4 });
  });

  test("wave damage to ships (McCullagh & Nelder 1989, 6.3.2): months of service as the share open, deviance 38.7", () => {
    const { rows, expected } = readCase("07-glm-counts/ships-offset"), wanted = expected.values["poisson"] as Nested;
    const fit = countRegression(rows.map((row) => ({
      x: [1, ...is(row, "type", ["B", "C", "D", "E"]), ...is(row, "year", ["y65", "y70", "y75"]), ...is(row, "period", ["p75"])], count: Number(row["incidents"]), share: Number(row["service"]),
    })));
    expectNear(fit.coefficients, numbersOf(wanted["coef"]), { relative: expected.tolerance["coef_rel"] as number });
    expectNear(fit.se, numbersOf(wanted["se"]), { relative: expected.tolerance["se_rel"] as number });
    expect([fit.deviance, fit.dispersion].map((one) => Number(one.toFixed(2)))).toEqual([38.7, 1.69]);
  });

  test("flying-bomb hits (Clarke 1946), hardly more scattered than Poisson: both likelihoods are R's, the size is not asked of so flat a hill", () => {
    const { rows, expected } = readCase("07-glm-counts/nearly-poisson-flying-bombs"), absolute = expected.tolerance["loglik_abs"] as number;
    const lines = rows.map(({ hits }) => ({ x: [1], count: Number(hits) })), poisson = countRegression(lines);
    expectNear([poisson.coefficients[0] ?? null, poisson.se[0] ?? null], [numberOf((expected.values["poisson"] as Nested)["coef"]), numberOf((expected.values["poisson"] as Nested)["se"])], { relative: 1e-6 });
    expectNear([poisson.logLikelihood], [numberOf((expected.values["poisson"] as Nested)["loglik"])], { absolute });
    expectNear([negativeBinomialRegression(lines).logLikelihood], [numberOf((expected.values["negative_binomial"] as Nested)["loglik"])], { absolute });
  });
});
