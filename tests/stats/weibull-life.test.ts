import { describe, expect, test } from "vitest";
import { failedBy, lifeAt, shapeOf } from "../../src/stats/life-figures.ts";
import type { LifeLine } from "../../src/stats/life-lines.ts";
import { hasCurve, weibullLife } from "../../src/stats/weibull-life.ts";
import type { WeibullLife } from "../../src/stats/weibull-life.ts";
import { inspectedOnce } from "./inspection-shares.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

function fitted(lines: readonly LifeLine[]): WeibullLife {
  const fit = weibullLife(lines);
  if (!hasCurve(fit)) throw new RangeError(`fitted: needs a curve, got ${fit.status}`);
  return fit;
}
const of = (values: Nested, ...keys: string[]) => keys.map((key) => numberOf(values[key]));

// R 4.2.2: glm with cloglog link and survival::survreg, checked against each other; sources in tests/reference/03-current-status/*/SOURCE.md.
describe.each(["flour-beetle", "pneumoconiosis", "coalminers-breathlessness"])("current-status fit of %s", (name) => {
  const { rows, expected: { values } } = readCase(`03-current-status/${name}`);
  const exposure = rows.map((row) => Number(Object.values(row)[0]));
  const lines = rows.flatMap((row, i) => inspectedOnce(exposure[i] as number, Number(row["inspected"]), Number(row["failed"])));
  const fit = fitted(lines), relative = 1e-5;

  test("shape, scale, their error and the log-likelihood equal R's", () => {
    expectNear([fit.logLikelihood], of(values, "loglik_bernoulli"), { absolute: 1e-7 });
    expectNear([fit.shape, fit.scale, fit.shape_se / fit.shape, fit.n, fit.failed],
      of(values, "shape_beta", "scale_eta", "se_log_beta_observed_info", "n_units", "n_failed"), { relative });
  });

  test("B10, B50 and the shape have R's profile limits", () => {
    for (const [key, share] of [["B10", 0.1], ["B50", 0.5]] as const) {
      const wanted = (values["quantiles"] as Nested)[key] as Nested, life = lifeAt(fit, share);
      expectNear([life.value, life.low, life.high], of(wanted, "estimate", "profile_lo", "profile_hi"), { relative }, key);
    }
    const shape = shapeOf(fit);
    expectNear([shape.low, shape.high], of(values, "beta_profile_lo", "beta_profile_hi"), { relative }, "shape");
  });

  test("shares failed by an exposure equal R's", () => {
    const wanted = values["failure_probability"] as Nested;
    expectNear(numbersOf(wanted["t"]).map((t) => failedBy(fit, t).value), numbersOf(wanted["estimate"]), { relative });
  });
});

const exact = (time: number, status: number): LifeLine => (status === 1 ? { low: time, high: time } : { low: time, high: Infinity });

// R 4.2.2, survival 3.5.3; sources in tests/reference/04-life-data/*/SOURCE.md.
describe("exact and censored lives", () => {
  const fans = readCase("04-life-data/diesel-fans"), cured = readCase("04-life-data/leukaemia-aml");
  const CASES: [string, LifeLine[], Nested][] = [
    ["diesel fans", fans.rows.map((row) => exact(Number(row["time"]), Number(row["status"]))), fans.expected.values["weibull"] as Nested],
    ...["Maintained", "Nonmaintained"].map((group): [string, LifeLine[], Nested] => [
      `leukaemia, ${group}`, cured.rows.filter((row) => row["group"] === group).map((row) => exact(Number(row["time"]), Number(row["status"]))), cured.expected.values[group]?.["weibull"] as Nested,
    ]),
  ];

  test.each(CASES)("%s: estimates, log-likelihood and profile limits equal R's", (_name, lines, values) => {
    const fit = fitted(lines), shape = shapeOf(fit), beta = values["beta"] as Nested, relative = 1e-5;
    expectNear([fit.shape, fit.scale], [numberOf(beta["estimate"]), numberOf((values["eta"] as Nested)["estimate"])], { relative: 1e-6 });
    expectNear([fit.logLikelihood], of(values, "loglik"), { absolute: 1e-7 });
    expectNear([fit.shape_se / fit.shape, shape.low, shape.high], of(beta, "se_log", "profile_lo", "profile_hi"), { relative }, "shape");
    for (const [key, share] of [["B10", 0.1], ["B50", 0.5]] as const) {
      const wanted = (values["quantiles"] as Nested)[key] as Nested, life = lifeAt(fit, share);
      expectNear([life.value, life.low, life.high], of(wanted, "estimate", "profile_lo", "profile_hi"), { relative }, key);
    }
  });

  const { rows, expected } = readCase("04-life-data/interval-breast-retraction");
  test.each(["RCT", "RT"])("interval-censored lives, group %s: estimates, errors and log-likelihood equal R's", (group) => {
    const lines = rows.filter((row) => row["group"] === group).map((row) => ({ low: Number(row["lo"]), high: row["hi"] === "" ? Infinity : Number(row["hi"]), count: Number(row["count"]) }));
    const fit = fitted(lines), wanted = (expected.values[group] as Nested)["weibull"] as Nested;
    expectNear([fit.shape, fit.scale, lifeAt(fit, 0.1).value], of(wanted, "beta", "eta", "B10"), { relative: 1e-5 });
    expectNear([(fit.shape_se / fit.shape) ** 2], [numberOf((wanted["cov_log_eta_log_sigma"] as unknown as Nested[][])[1]?.[1])], { relative: 1e-5 });
    expectNear([fit.logLikelihood], of(wanted, "loglik"), { absolute: 1e-6 });
  });
});

test("a fit says why there is none instead of giving a number", () => {
  expect(weibullLife(inspectedOnce(10, 5, 0))).toEqual({ status: "none failed" });
  expect(weibullLife(inspectedOnce(10, 5, 5))).toEqual({ status: "all failed" });
  expect(weibullLife(inspectedOnce(25, 12, 3))).toEqual({ status: "one exposure" });
});
