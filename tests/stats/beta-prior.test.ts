import betaCdf from "@stdlib/stats-base-dists-beta-cdf";
import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { describe, expect, test } from "vitest";
import { fitBetaPrior } from "../../src/stats/beta-prior.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

const seenOf = (rows: Record<string, string>[]) => rows.map((row) => ({ failed: Number(row["y"]), inspected: Number(row["n"]) }));

describe("beta prior over 34 cities tested for toxoplasmosis", () => {
  // tests/reference/02-empirical-bayes/betabinomial-toxoplasmosis: Efron 1978, 1986; R 4.2.2 and VGAM.
  const { rows, expected } = readCase("02-empirical-bayes/betabinomial-toxoplasmosis");
  const relative = expected.tolerance["default_rel"] as number, absolute = expected.tolerance["loglik_abs"] as number;
  const seen = seenOf(rows), fit = fitBetaPrior(seen), { values } = expected;
  const alpha = fit.mean * fit.strength, beta = (1 - fit.mean) * fit.strength;

  test("log-likelihoods and parameters equal R's", () => {
    expect(fit.status).toBe("fitted");
    expectNear([fit.logLikelihood, fit.logLikelihoodPooled], numbersOf([values["loglik"], values["loglik_binomial"]]), { absolute });
    expectNear([alpha, beta, fit.mean, fit.strength, 1 / (fit.strength + 1), 2 * (fit.logLikelihood - fit.logLikelihoodPooled)], numbersOf([
      values["alpha"], values["beta"], values["mu"], values["phi"], values["rho"], values["lr_overdispersion"]]), { relative });
  });

  test("every city's plug-in share, limits, weight and chance of being above the mean equal R's", () => {
    const posterior = values["posterior"] as Nested;
    const cities = seen.map(({ failed, inspected }) => [alpha + failed, beta + inspected - failed, inspected] as const);
    expectNear(cities.map(([a, b]) => a / (a + b)), numbersOf(posterior["shrunk_mean"]), { relative });
    expectNear(cities.map(([a, b]) => betaQuantile(0.025, a, b)), numbersOf(posterior["shrunk_lo"]), { relative });
    expectNear(cities.map(([a, b]) => betaQuantile(0.975, a, b)), numbersOf(posterior["shrunk_hi"]), { relative });
    expectNear(cities.map(([a, b, n]) => n / (a + b)), numbersOf(posterior["shrinkage_weight_on_raw"]), { relative });
    expectNear(cities.map(([a, b]) => betaCdf(1 - fit.mean, b, a)), numbersOf(posterior["prob_above_pooled"]), { relative: 4 * relative });
  });
});

describe("beta prior over 20 cities with stomach cancer deaths", () => {
  // tests/reference/02-empirical-bayes/betabinomial-boundary-cancer: Tsutakawa et al. 1985; R 4.2.2 and LearnBayes.
  const { rows, expected } = readCase("02-empirical-bayes/betabinomial-boundary-cancer");

  test("has its maximum where nothing differs, and says so instead of reporting a huge strength", () => {
    const fit = fitBetaPrior(seenOf(rows));
    expect([fit.status, fit.strength]).toEqual(["no difference between models", Infinity]);
    expectNear([fit.mean, fit.logLikelihoodPooled], numbersOf([expected.values["pooled"], expected.values["loglik_binomial"]]),
      { relative: expected.tolerance["default_rel"] as number });
  });
});

describe("fitBetaPrior", () => {
  test("models that never, or always, fail do not differ", () => {
    expect(fitBetaPrior([{ failed: 0, inspected: 9 }, { failed: 0, inspected: 2 }])).toMatchObject({ status: "no difference between models", mean: 0 });
    expect(fitBetaPrior([{ failed: 9, inspected: 9 }, { failed: 2, inspected: 2 }])).toMatchObject({ status: "no difference between models", mean: 1 });
  });

  test("impossible counts are refused by name, requirement and value", () => {
    expect(() => fitBetaPrior([])).toThrow(new RangeError("fitBetaPrior: seen must not be empty, got none"));
    expect(() => fitBetaPrior([{ failed: 2, inspected: 1 }])).toThrow(new RangeError("fitBetaPrior: failed must be a whole number in 0…1, got 2"));
  });
});
