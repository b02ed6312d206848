import { describe, expect, test } from "vitest";
import { univariate } from "../../src/stats/univariate.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

describe("univariate", () => {
  // tests/reference/12-strd/univariate: NIST StRD, certified values.
  const { rows, expected } = readCase("12-strd/univariate");

  test.each(["Michelso", "NumAcc1", "NumAcc2"])("NIST's %s has the certified mean, standard deviation and lag-1 autocorrelation", (set) => {
    const { mean, sd, lag1, n } = univariate(rows.filter((row) => row["set"] === set).map((row) => Number(row["y"])));
    const certified = (expected.values["certified"] as Nested)[set] as Nested;
    expectNear([mean, sd, lag1], numbersOf([certified["mean"], certified["sd"], certified["lag1_autocorrelation"]]),
      { relative: expected.tolerance["certified_rel"] as number });
    expect(n).toBe(((expected.values["R"] as Nested)[set] as Nested)["n"]);
  });

  test("what cannot be had is missing, not a number that is none", () => {
    expect(univariate([4])).toEqual({ n: 1, mean: 4, sd: null, lag1: null });
    expect(univariate([4, 4, 4])).toEqual({ n: 3, mean: 4, sd: 0, lag1: null });
    expect(() => univariate([])).toThrow(new RangeError("univariate: values must not be empty, got none"));
    expect(() => univariate([1, NaN])).toThrow(new RangeError("univariate: values must hold finite numbers only, got NaN"));
  });
});
