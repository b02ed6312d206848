import { describe, expect, test } from "vitest";
import { isotonic } from "../../src/stats/isotonic.ts";
import { kaplanMeier } from "../../src/stats/kaplan-meier.ts";
import { turnbull } from "../../src/stats/turnbull.ts";
import { inspectedOnce } from "./inspection-shares.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

describe("isotonic", () => {
  // tests/reference/13-isotonic-smooth-rank/cars: Iso::pava and stats::isoreg of R 4.2.2.
  const { rows, expected } = readCase("13-isotonic-smooth-rank/cars"), sets = expected.values["isotonic"] as Nested;
  const NAMES: Record<string, string> = { isoreg_example: "isoreg_example", weighted: "vigour_like_weights", cars: "cars", small: "small" };

  test.each(Object.keys(NAMES).filter((name) => name in sets))("rising and falling steps of %s equal R's", (name) => {
    const points = rows.filter((row) => row["set"] === NAMES[name]).map((row) => ({ x: Number(row["x"]), y: Number(row["y"]), weight: Number(row["w"]) }));
    const wanted = sets[name] as Nested;
    for (const way of ["increasing", "decreasing"] as const) {
      const steps = isotonic(points, way);
      expectNear(steps.map(({ y }) => y), numbersOf(wanted[way]), { relative: 1e-10 }, way);
      expectNear(steps.map(({ weight }) => weight), numbersOf(wanted["weight"]), { relative: 1e-12 }, "weight");
    }
  });

  test.each(["flour-beetle", "pneumoconiosis", "coalminers-breathlessness"])("shares failed of %s equal R's steps without a shape, and so do Turnbull's", (name) => {
    const { rows: seen, expected: { values } } = readCase(`03-current-status/${name}`), wanted = values["npmle"] as Nested;
    const points = seen.map((row) => ({ x: Number(Object.values(row)[0]), y: Number(row["failed"]) / Number(row["inspected"]), weight: Number(row["inspected"]) }));
    expectNear(isotonic(points).map(({ y }) => y), numbersOf(wanted["F"]), { relative: 1e-10 });
    const { masses } = turnbull(points.flatMap(({ x, y, weight }) => inspectedOnce(x, weight, Math.round(y * weight))));
    const by = numbersOf(wanted["t"]).map((t) => masses.filter(({ right }) => right <= t).reduce((sum, { mass }) => sum + mass, 0));
    expectNear(by, numbersOf(wanted["F"]), { absolute: 1e-5 });
  });
});

// tests/reference/04-life-data/interval-breast-retraction: package npsurv 0.5.0 of R 4.2.2.
describe.each(["RCT", "RT"])("turnbull, group %s", (group) => {
  const { rows, expected } = readCase("04-life-data/interval-breast-retraction"), wanted = (expected.values[group] as Nested)["npmle"] as Nested;
  const lines = rows.filter((row) => row["group"] === group).map((row) => ({ low: Number(row["lo"]), high: row["hi"] === "" ? Infinity : Number(row["hi"]), count: Number(row["count"]) }));
  const { masses, logLikelihood, converged } = turnbull(lines);

  test("intervals, masses and log-likelihood equal R's", () => {
    const kept = masses.filter(({ mass }) => mass > 1e-4);
    expect(converged).toBe(true);
    expect(kept.map(({ left }) => left)).toEqual(numbersOf(wanted["left"]));
    expect(kept.map(({ right }) => right)).toEqual(numbersOf(wanted["right"]));
    expectNear(kept.map(({ mass }) => mass), numbersOf(wanted["mass"]), { absolute: 1e-5 });
    expectNear([logLikelihood], [numberOf(wanted["loglik"])], { absolute: 1e-6 });
  });
});

test("turnbull lets parts that entered late speak only of what came after", () => {
  // By hand: of two watched from 0 one failed by 5; of two that entered good at 5 one failed by 9: 1/2 are good at 5, 2/3 of those at 9.
  const { masses } = turnbull([{ low: 0, high: 5 }, { low: 9, high: Infinity }, { low: 5, high: 9, entry: 5 }, { low: 9, high: Infinity, entry: 5 }]);
  const good = masses.filter(({ right }) => right === Infinity).reduce((sum, { mass }) => sum + mass, 0);
  expect(good).toBeCloseTo(1 / 3, 5);
  expect(masses[0]).toMatchObject({ left: 0, right: 5 });
  expect(masses[0]?.mass).toBeCloseTo(1 / 2, 5);
});

// tests/reference/04-life-data: survival::survfit of R 4.2.2.
describe("kaplanMeier", () => {
  const fans = readCase("04-life-data/diesel-fans"), cured = readCase("04-life-data/leukaemia-aml");
  const lives = (rows: Record<string, string>[]) => rows.map((row) => ({ time: Number(row["time"]), failed: row["status"] === "1" }));
  test.each<[string, ReturnType<typeof lives>, Nested]>([
    ["diesel fans", lives(fans.rows), fans.expected.values["kaplan_meier"] as Nested],
    ...["Maintained", "Nonmaintained"].map((group): [string, ReturnType<typeof lives>, Nested] => [
      group, lives(cured.rows.filter((row) => row["group"] === group)), cured.expected.values[group]?.["kaplan_meier"] as Nested]),
  ])("%s: times, reels at risk, shares, Greenwood's error and limits equal R's", (_name, some, wanted) => {
    const steps = kaplanMeier(some);
    for (const [column, key] of [["time", "time"], ["at_risk", "at_risk"], ["failed", "events"], ["good", "survival"]] as const) {
      expectNear(steps.map((step) => step[column]), numbersOf(wanted[key]), { absolute: 1e-12 }, column);
    }
    const inner = steps.map(({ good }) => good > 0), some_of = (values: readonly number[]) => values.filter((_, i) => inner[i]);
    for (const [column, key] of [["se", "greenwood_se"], ["low", "loglog_lo"], ["high", "loglog_hi"]] as const) {
      expectNear(some_of(steps.map((step) => step[column])), some_of(numbersOf(wanted[key])), { relative: 1e-6 }, column);
    }
  });
});
