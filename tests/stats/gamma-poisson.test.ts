import { describe, expect, test } from "vitest";
import { drawGamma, drawPoisson } from "../../src/stats/draws.ts";
import { predictiveDemand, predictiveQuantile, rateAbove, rateKnowledge, rateLimits } from "../../src/stats/gamma-poisson.ts";
import { fitGammaPrior } from "../../src/stats/gamma-prior.ts";
import { demandPmf, demandQuantile } from "../../src/stats/negative-binomial.ts";
import { seededRandom } from "../../src/stats/random.ts";
import { rateUpperLimit } from "../../src/stats/rate-interval.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

// tests/reference/02-empirical-bayes/gammapoisson-pumps: failures of ten pumps (Gaver & O'Muircheartaigh 1987), R 4.2.2 and MASS.
const { rows, expected } = readCase("02-empirical-bayes/gammapoisson-pumps");
const relative = expected.tolerance["default_rel"] as number, absolute = expected.tolerance["loglik_abs"] as number;
const pumps = rows.map((row) => ({ events: Number(row["events"]), exposure: Number(row["exposure"]) }));
const prior = fitGammaPrior(pumps.map((pump) => pump.events), pumps.map((pump) => pump.exposure));
const known = pumps.map((pump) => rateKnowledge(prior, pump.events, pump.exposure));

describe("gamma prior over the pumps", () => {
  test("log-likelihoods, parameters and their standard errors equal R's", () => {
    const { values } = expected, fit = prior.fit;
    expect(prior.status).toBe("fitted");
    if (fit === null) throw new Error("the fit is missing");
    expectNear([fit.logLikelihood, fit.logLikelihoodPooled], numbersOf([values["loglik"], values["loglik_poisson"]]), { absolute });
    expectNear([prior.shape, prior.rate, prior.shape / prior.rate, fit.logMean, fit.logShape, fit.seLogMean, fit.seLogShape], numbersOf([
      values["alpha"], values["beta"], values["prior_mean"], values["log_mean"], values["log_alpha"], values["se_log_mean"],
      values["se_log_alpha"]]), { relative });
  });

  test("every pump's shrunken rate, limits and chance of being above the mean equal R's", () => {
    const posterior = expected.values["posterior"] as Nested;
    expectNear(known.map(({ shape, rate }) => shape / rate), numbersOf(posterior["shrunk_mean"]), { relative });
    expectNear(known.map((one) => rateLimits(one)[0]), numbersOf(posterior["shrunk_lo"]), { relative });
    expectNear(known.map((one) => rateLimits(one)[1]), numbersOf(posterior["shrunk_hi"]), { relative });
    // A tail of 10⁻²¹ changes by 60 times the relative change of the parameters.
    expectNear(known.map((one) => rateAbove(prior.shape / prior.rate, one)), numbersOf(posterior["prob_above_mean"]), { relative: 60 * relative });
  });

  test("every pump's future count has R's mean, chance of none, and exactly R's quantiles", () => {
    const predictive = expected.values["predictive"] as Nested, horizon = Number(predictive["horizon"]);
    expectNear(known.map((one) => predictiveDemand(one, horizon).mean), numbersOf(predictive["mean"]), { relative });
    expectNear(known.map((one) => demandPmf(0, predictiveDemand(one, horizon))), numbersOf(predictive["p_zero"]), { relative });
    for (const percent of [50, 90, 95, 99]) {
      expect(known.map((one) => predictiveQuantile(one, horizon, percent / 100))).toEqual(predictive[`q${percent}`]);
    }
  });
});

describe("predictive stock", () => {
  // tests/reference/09-inventory/policies, gamma_poisson_predictive: constructed, R 4.2.2.
  const cases = readCase("09-inventory/policies").expected.values["gamma_poisson_predictive"] as unknown as Nested[];
  test.each(cases)("after $events events in $exposure equals R for 90, 95 and 99 %, beside the plug-in Poisson stock", (one) => {
    const value = (name: string) => Number(one[name]), targets = [0.9, 0.95, 0.99], horizon = value("horizon");
    const knowledge = rateKnowledge({ shape: value("prior_shape"), rate: value("prior_rate") }, value("events"), value("exposure"));
    expect(targets.map((target) => predictiveQuantile(knowledge, horizon, target))).toEqual(one["S_90_95_99"]);
    const plugIn = { mean: (value("events") / value("exposure")) * horizon, size: Infinity };
    expect(targets.map((target) => demandQuantile(target, plugIn))).toEqual(one["plug_in_poisson_S_90_95_99"]);
  });

  test("holds its target on simulated shops, also for parts never used before, where a plug-in Poisson falls short", () => {
    const random = seededRandom(31), enough = { all: 0, unused: 0, plugIn: 0 }, count = { all: 0, unused: 0 };
    for (let shop = 0; shop < 60; shop += 1) {
      const lines = Array.from({ length: 40 }, () => {
        const rate = drawGamma(random, 0.7, 0.35);
        return { rate, events: drawPoisson(random, rate) };
      });
      const learnt = fitGammaPrior(lines.map((line) => line.events), lines.map(() => 1));
      for (const { rate, events } of lines) {
        const future = drawPoisson(random, rate * 0.5), stock = predictiveQuantile(rateKnowledge(learnt, events, 1), 0.5, 0.95);
        count.all += 1;
        if (future <= stock) enough.all += 1;
        if (events > 0) continue;
        count.unused += 1;
        if (future <= stock) enough.unused += 1;
        if (future === 0) enough.plugIn += 1;
      }
    }
    expect(count.unused).toBeGreaterThan(500);
    expect(enough.all / count.all).toBeGreaterThan(0.945);
    expect(enough.unused / count.unused).toBeGreaterThan(0.945);
    expect(enough.plugIn / count.unused).toBeLessThan(0.92);
  });

  test("rises with the target, with the horizon and with every event seen", () => {
    for (let events = 0; events < 12; events += 1) {
      const here = rateKnowledge(prior, events, 4), more = rateKnowledge(prior, events + 1, 4);
      expect(predictiveQuantile(here, 1, 0.9)).toBeLessThanOrEqual(predictiveQuantile(here, 1, 0.95));
      expect(predictiveQuantile(here, 1, 0.9)).toBeLessThanOrEqual(predictiveQuantile(here, 2, 0.9));
      expect(predictiveQuantile(here, 1, 0.9)).toBeLessThanOrEqual(predictiveQuantile(more, 1, 0.9));
    }
  });
});

describe("gamma prior where none can be fitted", () => {
  test("counts as even as one common rate would give say so, and the stand-in stays near the common rate", () => {
    const even = fitGammaPrior([4, 5, 5, 6, 5, 4], [10, 10, 10, 10, 10, 10]);
    expect(even.status).toBe("no difference between lines");
    expect(even.fit).toBeNull();
    expect(even.shape / even.rate).toBeCloseTo(29 / 60, 2);
    expect(even.shape).toBeGreaterThan(3);
    expect(even.shape).toBeLessThan(1000);
  });

  test("one single event among many lines is fitted or stood in for, never a number that is none", () => {
    for (const events of [[1, 0, 0, 0, 0, 0], [0, 0, 0, 0, 3, 0], [1, 1, 1, 1, 1, 1]]) {
      const { shape, rate } = fitGammaPrior(events, [1, 2, 3, 1, 2, 3]);
      expect(shape > 0 && rate > 0 && Number.isFinite(shape) && Number.isFinite(rate)).toBe(true);
    }
  });

  test("nothing used yet gives a stock of none, with the upper limit of the rate to show beside it", () => {
    const none = fitGammaPrior([0, 0, 0, 0, 0, 0], [52, 52, 52, 52, 52, 52]);
    expect(none.status).toBe("nothing used yet");
    expect(predictiveQuantile(rateKnowledge(none, 0, 52), 4, 0.95)).toBe(0);
    // tests/reference/08-intermittent/by-hand, set all_zero: 0.599146454710798 a period after five without demand (R).
    expectNear([rateUpperLimit(0, 5)], [0.599146454710798], { relative: 1e-9 });
    expect(rateUpperLimit(0, 0)).toBeNull();
  });

  test("what cannot be a record is refused by name, requirement and value", () => {
    expect(() => fitGammaPrior([1, 2], [1])).toThrow(new RangeError("fitGammaPrior: events and exposures must be equally long, got 2 and 1"));
    expect(() => fitGammaPrior([], [])).toThrow(new RangeError("fitGammaPrior: events must not be empty, got none"));
    expect(() => fitGammaPrior([1.5], [1])).toThrow(new RangeError("fitGammaPrior: events must be a whole number of at least 0, got 1.5"));
    expect(() => fitGammaPrior([1], [0])).toThrow(new RangeError("fitGammaPrior: exposures must be a finite number above 0, got 0"));
    expect(() => predictiveQuantile({ shape: 0, rate: 1 }, 1, 0.9)).toThrow(new RangeError("predictiveDemand: shape must be a finite number above 0, got 0"));
    expect(() => rateKnowledge(prior, -1, 1)).toThrow(new RangeError("rateKnowledge: events must be a whole number of at least 0, got -1"));
  });
});
