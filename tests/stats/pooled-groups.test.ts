import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { oneWayAnova } from "../../src/stats/one-way-anova.ts";
import { pooledGroups } from "../../src/stats/pooled-groups.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

const groupsOf = (rows: Record<string, string>[], by: string) => [...new Set(rows.map((row) => row[by]))]
  .map((name) => rows.filter((row) => row[by] === name).map((row) => Number(row["y"])));

// tests/reference/11-labour/random-effects-*: R 4.2.2 and lme4.
describe.each([
  ["dyestuff", "fitted"], ["unbalanced-gravity", "fitted"], ["boundary-petrol", "no difference between groups"],
])("random effects of %s", (name, status) => {
  const { rows, expected } = readCase(`11-labour/random-effects-${name}`), { tolerance, values } = expected;
  const groups = groupsOf(rows, "group");

  test.each([["reml", "restricted"], ["ml", "full"]] as const)("%s: likelihood, variances, common and shrunken means equal lme4's", (key, likelihood) => {
    const result = pooledGroups(groups, likelihood), wanted = values[key] as Nested;
    if ("reason" in result) throw new Error(result.reason);
    expect(result.status).toBe(status);
    expectNear([result.logLikelihood], [numberOf(wanted["loglik"])], { absolute: tolerance["loglik_abs"] as number });
    expectNear([result.between, result.within, result.between / (result.between + result.within)],
      numbersOf([wanted["var_between"], wanted["var_within"], wanted["icc"]]), { relative: tolerance["variance_rel"] as number });
    expectNear([result.common], [numberOf(wanted["mu"])], { relative: tolerance["mean_rel"] as number });
    expectNear([result.commonSe, ...result.groups.map((group) => group.weight)],
      numbersOf([wanted["se_mu"], ...(wanted["shrinkage_weight"] as unknown as number[])]), { relative: tolerance["variance_rel"] as number });
    expectNear(result.groups.map((group) => group.pooled), numbersOf(wanted["shrunk_mean"]), { relative: tolerance["mean_rel"] as number });
    expectNear(result.groups.map((group) => group.own), numbersOf(values["raw_mean"]), { relative: 1e-12 });
  });

  test("the analysis of variance and its moment estimate equal R's", () => {
    const result = oneWayAnova(groups), wanted = values["anova"] as Nested;
    if ("reason" in result) throw new Error(result.reason);
    expectNear([
      result.between.squares / result.between.degrees, result.within.squares / result.within.degrees, result.f, result.p,
      result.between.degrees, result.within.degrees, result.meanSize, result.betweenVariance,
    ], numbersOf(["ms_between", "ms_within", "F", "p", "df1", "df2", "n0", "var_between_moment"].map((key) => wanted[key])), { relative: 1e-9 });
  });
});

// tests/reference/12-strd/anova-*: NIST StRD, certified values.
describe.each(["SiRstv", "SmLs04"])("NIST's analysis of variance %s", (name) => {
  test("equals the certified values", () => {
    const { rows, expected } = readCase(`12-strd/anova-${name}`), certified = expected.values["certified"] as Nested;
    const result = oneWayAnova(groupsOf(rows, "group"));
    if ("reason" in result) throw new Error(result.reason);
    expectNear([result.between.squares, result.within.squares, result.f, result.rSquared, result.residualSd],
      numbersOf(["ss_between", "ss_within", "F", "r_squared", "residual_sd"].map((key) => certified[key])),
      { relative: expected.tolerance["certified_rel"] as number });
    expect([result.between.degrees, result.within.degrees]).toEqual(expected.values["df"]);
  });
});

describe("pooledGroups", () => {
  const values = fc.array(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 8 }), { minLength: 2, maxLength: 12 });

  test("a pooled mean lies between the group's own and the common one, nearer to its own the more values it has", () => {
    fc.assert(fc.property(values, (groups) => {
      const result = pooledGroups(groups);
      if ("reason" in result) return;
      for (const { own, pooled, weight, se } of result.groups) {
        expect(pooled).toBeGreaterThanOrEqual(Math.min(own, result.common) - 1e-9);
        expect(pooled).toBeLessThanOrEqual(Math.max(own, result.common) + 1e-9);
        expect(weight >= 0 && weight <= 1 && Number.isFinite(se)).toBe(true);
      }
      const bySize = [...result.groups].sort((a, b) => a.n - b.n);
      expect(bySize.every((group, i) => i === 0 || group.weight >= (bySize[i - 1]?.weight ?? 0) - 1e-12)).toBe(true);
    }), { seed: 12 });
  });

  test("under five groups says so, and four values weigh as much as the common mean", () => {
    const result = pooledGroups([[1, 2, 3, 4], [11, 12, 13, 14], [6, 7, 8, 9]]);
    if ("reason" in result) throw new Error(result.reason);
    expect(result.status).toBe("few groups, fixed prior");
    expect(result.groups[0]?.weight).toBeCloseTo(0.5, 12);
  });

  test("groups that cannot be pooled give a reason, and lists that are none are refused", () => {
    expect(pooledGroups([[1], [2], [3]])).toEqual({ reason: "one value in every group" });
    expect(pooledGroups([[1, 1], [2, 2]])).toEqual({ reason: "no spread within groups" });
    expect(oneWayAnova([[1, 2]])).toEqual({ reason: "one group" });
    expect(oneWayAnova([[1], [2]])).toEqual({ reason: "one value in every group" });
    expect(oneWayAnova([[1, 1], [2, 2]])).toEqual({ reason: "no spread within groups" });
    expect(() => pooledGroups([])).toThrow(new RangeError("pooledGroups: groups must not be empty, got none"));
    expect(() => pooledGroups([[1], []])).toThrow(new RangeError("pooledGroups: group must not be empty, got none"));
    expect(() => oneWayAnova([[1, NaN]])).toThrow(new RangeError("oneWayAnova: group must hold finite numbers only, got NaN"));
  });
});
