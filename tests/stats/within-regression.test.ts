import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { withinRegression } from "../../src/stats/within-regression.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

const NAMES = ["x1", "x2", "x3", "x4", "x5", "x6"];

describe("withinRegression", () => {
  test("one group is plain least squares: NIST StRD Longley, certified values (tests/reference/12-strd)", () => {
    const { rows, expected } = readCase("12-strd/regression-Longley"), certified = expected.values["certified"] as Nested;
    const found = withinRegression(rows.map(() => "all"), NAMES.map((name) => rows.map((row) => Number(row[name]))), rows.map((row) => Number(row["y"])));
    if ("reason" in found) throw new Error(found.reason);
    const near = { relative: expected.tolerance["certified_rel"] as number };
    expectNear(found.effects.map((one) => one?.coefficient ?? null), numbersOf(certified["coef"]).slice(1), near, "coefficient");
    expectNear(found.effects.map((one) => one?.se ?? null), numbersOf(certified["se"]).slice(1), near, "error");
    expectNear([found.residualSd], numbersOf([certified["residual_sd"]]), near);
    expect([found.n, found.groups, found.degrees]).toEqual([16, 1, 9]);
  });

  test("equals least squares with an indicator for each group (Wooldridge 2010, ch. 10.5), whatever the levels of the groups", () => {
    const value = fc.integer({ min: -50, max: 50 });
    fc.assert(fc.property(fc.array(fc.tuple(fc.constantFrom("a", "b", "c"), value, value), { minLength: 12, maxLength: 30 }), value, (rows, lift) => {
      const groups = rows.map(([group]) => group), x = rows.map(([, one]) => one), y = rows.map(([, , one]) => one);
      const indicators = ["b", "c"].map((name) => groups.map((group) => (group === name ? 1 : 0)));
      const inside = withinRegression(groups, [x], y), dummies = withinRegression(groups.map(() => 1), [...indicators, x], y);
      const lifted = withinRegression(groups, [x], y.map((one, i) => one + (groups[i] === "b" ? lift : 0)));
      if ("reason" in inside || "reason" in dummies || "reason" in lifted) return;
      const [own, other, moved] = [inside.effects[0], dummies.effects[2], lifted.effects[0]];
      expect(own === null).toBe(other === null);
      if (!own || !other || !moved) return;
      expect(own.coefficient).toBeCloseTo(other.coefficient, 8);
      expect(own.se).toBeCloseTo(other.se, 8);
      expect(moved.coefficient).toBeCloseTo(own.coefficient, 8);
    }), { numRuns: 100 });
  });

  test("a column that never differs within a group, or repeats one before it, has no effect of its own and disturbs no other", () => {
    const groups = ["a", "a", "a", "b", "b", "b"], x = [0, 1, 2, 0, 1, 3], y = [1, 2, 4, 10, 12, 15];
    const alone = withinRegression(groups, [x], y), crowd = withinRegression(groups, [x, [5, 5, 5, 7, 7, 7], x.map((one) => 2 * one + 1)], y);
    if ("reason" in alone || "reason" in crowd) throw new Error("too few");
    expect(crowd.effects.slice(1)).toEqual([null, null]);
    expect(crowd.effects[0]?.coefficient).toBeCloseTo(alone.effects[0]?.coefficient ?? NaN, 12);
    expect(crowd.degrees).toBe(3);
  });

  test("says when groups hold too little, and refuses what is no list of numbers", () => {
    expect(withinRegression(["a", "b", "c"], [[1, 2, 3]], [1, 2, 3])).toEqual({ reason: "too few values within groups" });
    expect(() => withinRegression(["a"], [], [NaN])).toThrow(new RangeError("withinRegression: outcome must hold finite numbers only, got NaN"));
    expect(() => withinRegression(["a"], [[1, 2]], [1])).toThrow(RangeError);
    expect(() => withinRegression([], [], [])).toThrow(RangeError);
  });
});
