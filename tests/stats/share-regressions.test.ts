import { describe, expect, test } from "vitest";
import { binomialRegression, clusterErrors } from "../../src/stats/binomial-regression.ts";
import type { BinomialLine } from "../../src/stats/binomial-regression.ts";
import { knownShapeLife } from "../../src/stats/known-shape-life.ts";
import { gradeShares, proportionalOdds } from "../../src/stats/proportional-odds.ts";
import type { GradedLine } from "../../src/stats/proportional-odds.ts";
import { lifeAt } from "../../src/stats/life-figures.ts";
import { hasCurve, weibullLife } from "../../src/stats/weibull-life.ts";
import { inspectedOnce } from "./inspection-shares.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

const of = (values: Nested, ...keys: string[]) => keys.map((key) => numberOf(values[key]));

// tests/reference/07-glm-counts: glm and brglm2 0.9 of R 4.2.2.
describe("binomialRegression", () => {
  const budworm = readCase("07-glm-counts/binomial-budworm"), apart = readCase("07-glm-counts/separation-constructed");
  const moths: BinomialLine[] = budworm.rows.map((row) => {
    const [, dose] = Object.entries(row).find(([name]) => name.includes("dose")) ?? [];
    return { x: [1, row["sex"] === "M" ? 1 : 0, Math.log2(Number(dose))], inspected: Number(row["inspected"] ?? row["n"] ?? 20), failed: Number(row["failed"] ?? row["dead"] ?? row["killed"]) };
  });
  const models: BinomialLine[] = apart.rows.map((row) => ({ x: [1, Number(row["model"] === "B"), Number(row["model"] === "C"), Number(row["age"])], inspected: 1, failed: Number(row["failed"]) }));

  test.each(["logit", "cloglog"] as const)("moths by dose, %s: estimates, errors, deviance and the bias-reduced fit equal R's", (link) => {
    const wanted = budworm.expected.values[link] as Nested, ml = wanted["ml"] as Nested, firth = wanted["firth"] as Nested;
    const fit = binomialRegression(moths, link), reduced = binomialRegression(moths, link, { bias_reduced: true });
    expectNear(fit.coefficients, numbersOf(ml["coef"]), { relative: 1e-6 });
    expectNear(fit.se, numbersOf(ml["se"]), { relative: 1e-6 });
    expectNear([fit.deviance], of(ml, "deviance"), { relative: 1e-7 });
    expectNear(reduced.coefficients, numbersOf(firth["coef"]), { relative: 1e-6 });
    expectNear(reduced.se, numbersOf(firth["se"]), { relative: 1e-6 });
  });

  test.each(["logit", "cloglog"] as const)("a model that never failed, %s: no estimate is claimed, the bias-reduced one is finite and R's", (link) => {
    const firth = (apart.expected.values[link] as Nested)["firth"] as Nested, reduced = binomialRegression(models, link, { bias_reduced: true });
    expectNear(reduced.coefficients, numbersOf(firth["coef"]), { relative: 1e-6 });
    expectNear(reduced.se, numbersOf(firth["se"]), { relative: 1e-6 });
    expect(Math.abs(binomialRegression(models, link).coefficients[2] as number)).toBeGreaterThan(10);
  });

  // tests/reference/03-current-status/cluster-robust-bacteria: sandwich 3.0.2 of R 4.2.2.
  test.each(["without_group", "with_group"])("repeat findings of one unit, %s: plain and cluster-robust errors equal R's", (name) => {
    const { rows, expected } = readCase("03-current-status/cluster-robust-bacteria"), wanted = expected.values[name] as Nested;
    const lines = rows.map((row) => ({
      x: [1, Math.log(Number(row["exposure"])), ...(name === "with_group" ? [Number(row["group"] === "drug+"), Number(row["group"] === "placebo")] : [])],
      inspected: 1, failed: Number(row["failed"]),
    }));
    const fit = binomialRegression(lines, "cloglog");
    expectNear([fit.logLikelihood], of(wanted, "loglik"), { absolute: 1e-7 });
    expectNear(fit.coefficients, numbersOf(wanted["coef"]), { relative: 1e-6 });
    expectNear(fit.se, numbersOf(wanted["se_model"]), { relative: 1e-6 });
    expectNear(clusterErrors(fit, rows.map((row) => row["unit"] as string)), numbersOf(wanted["se_cluster_HC0"]), { relative: 1e-6 });
  });
});

// tests/reference/03-current-status/edge-cases: brglm2, optimize and uniroot of R 4.2.2.
describe("current status at the edges", () => {
  const { rows, expected: { values } } = readCase("03-current-status/edge-cases");
  const of_set = (set: string) => rows.filter((row) => row["set"] === set).map((row) => ({ exposure: Number(row["exposure"]), inspected: Number(row["inspected"]), failed: Number(row["failed"]) }));
  const lines = (set: string) => of_set(set).flatMap(({ exposure, inspected, failed }) => inspectedOnce(exposure, inspected, failed));

  test.each([
    ["separated", "separated"], ["zero_failures", "none failed"], ["all_failed", "all failed"], ["one_exposure", "one exposure"], ["one_failure", "ok"], ["quasi_separated_tie", "separated"],
  ])("set %s has the status %s", (set, status) => expect(weibullLife(lines(set)).status).toBe(status));

  test.each(["separated", "one_failure", "quasi_separated_tie"])("set %s: the bias-reduced estimate equals R's", (set) => {
    const wanted = (values[set]?.["bias_reduced"] as Nested)["mean_bias_reduction"] as Nested;
    const fit = binomialRegression(of_set(set).map(({ exposure, ...rest }) => ({ ...rest, x: [1, Math.log(exposure)] })), "cloglog", { bias_reduced: true });
    expectNear(fit.coefficients, of(wanted, "intercept", "slope"), { relative: 1e-4 });
    expectNear(fit.se, numbersOf(wanted["se"]), { relative: 1e-4 });
  });

  test("with one failure the plain estimate is R's, and with separation a finite one is labelled", () => {
    const wanted = values["one_failure"]?.["mle"] as Nested, one = weibullLife(lines("one_failure")), apart = weibullLife(lines("separated"));
    if (!hasCurve(one) || !hasCurve(apart)) throw new RangeError(`needs curves, got ${one.status} and ${apart.status}`);
    expectNear([one.shape, one.logLikelihood], of(wanted, "slope", "loglik_bernoulli"), { relative: 1e-5 });
    const b50 = lifeAt(apart, 0.5);
    expect([b50.value > 41, b50.value < 70, b50.low !== null && b50.low > 20, b50.high !== null && b50.high < 140]).toEqual([true, true, true, true]);
    expect(apart.prior).toMatchObject({ shape: { median: 1.5, log_sd: 0.5 } });
  });

  test.each(Object.keys(values).flatMap((set) => [[set, 1], [set, 2]] as const))("set %s with shape %d: scale and limits equal R's", (set, shape) => {
    const wanted = (values[set]?.["known_shape"] as Nested)[`beta_${shape}`] as Nested, fit = knownShapeLife(lines(set), shape), relative = 1e-6;
    if ("eta_lower_95_one_sided" in wanted) expectNear([fit.low], of(wanted, "eta_lower_95_one_sided"), { relative });
    else if ("eta_upper_95_one_sided" in wanted) expectNear([fit.high], of(wanted, "eta_upper_95_one_sided"), { relative });
    else expectNear([fit.scale, fit.low, fit.high, fit.logLikelihood], of(wanted, "eta", "eta_profile_lo", "eta_profile_hi", "loglik_bernoulli"), { relative });
  });
});

// tests/reference/06-ordinal: MASS::polr and ordinal::clm of R 4.2.2.
describe("proportionalOdds", () => {
  const miners = readCase("06-ordinal/pneumoconiosis-degree"), renters = readCase("06-ordinal/housing");
  const degree = ["normal", "mild", "severe"], satisfaction = ["Low", "Medium", "High"];
  const worn: GradedLine[] = miners.rows.map((row) => ({ grade: degree.indexOf(row["degree"] as string), x: [Math.log(Number(row["exposure_years"]))], count: Number(row["count"]) })).filter(({ count }) => count > 0);
  const dummies = (row: Record<string, string>) => [
    ...["Medium", "High"].map((level) => Number(row["influence"] === level)), ...["Apartment", "Atrium", "Terrace"].map((level) => Number(row["type"] === level)), Number(row["contact"] === "High"),
  ];
  const happy: GradedLine[] = renters.rows.map((row) => ({ grade: satisfaction.indexOf(row["satisfaction"] as string), x: dummies(row), count: Number(row["count"]) }));

  test.each<[string, GradedLine[], Nested]>([["miners", worn, miners.expected.values], ["renters", happy, renters.expected.values]])("%s: coefficients, thresholds, errors and log-likelihood equal R's", (_name, some, values) => {
    const fit = proportionalOdds(some);
    if (fit.status !== "ok") throw new RangeError(`needs a fit, got ${fit.status}`);
    expectNear(fit.coefficients, [values["coef"]].flat().map(numberOf), { relative: 1e-5 });
    expectNear(fit.thresholds, numbersOf(values["thresholds"]), { relative: 1e-5 });
    expectNear(fit.se, [...numbersOf(values["se_thresholds"]), ...[values["se"]].flat().map(numberOf)], { relative: 1e-5 });
    expectNear([fit.logLikelihood], of(values, "loglik"), { absolute: 1e-6 });
  });

  test("shares of every grade equal R's predictions, and one grade alone gives none", () => {
    const wanted = miners.expected.values["predicted"] as Nested, fit = proportionalOdds(worn);
    if (fit.status !== "ok") throw new RangeError(`needs a fit, got ${fit.status}`);
    const shares = numbersOf((wanted["newdata"] as Nested)["lx"]).flatMap((log) => gradeShares(fit, [log]));
    expectNear(shares, (wanted["probabilities"] as unknown as number[][]).flat(), { relative: 1e-5 });
    expect(proportionalOdds([{ grade: 0, x: [1] }])).toEqual({ status: "one grade" });
  });
});
