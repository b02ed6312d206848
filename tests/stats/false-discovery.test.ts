import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { falseDiscovery } from "../../src/stats/false-discovery.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";

describe("falseDiscovery", () => {
  // tests/reference/01-intervals/multiplicity: the worked example of Benjamini & Hochberg (1995) and constructed sets, R's p.adjust.
  const { rows, expected } = readCase("01-intervals/multiplicity");

  test.each(Object.keys(expected.values))("set %s equals R's adjusted values", (set) => {
    const pValues = rows.filter((row) => row["set"] === set).map((row) => Number(row["p"]));
    expectNear(falseDiscovery(pValues), numbersOf(expected.values[set]?.["BH"]), { relative: expected.tolerance["default_rel"] as number }, set);
  });

  test("the worked example keeps the four hypotheses that its authors reject at 5 %", () => {
    const pValues = rows.filter((row) => row["set"] === "BH1995").map((row) => Number(row["p"]));
    expect(falseDiscovery(pValues).filter((q) => q !== null && q <= 0.05).length).toBe(4);
  });

  test("missing p values stay missing and do not count as comparisons", () => {
    expect(falseDiscovery([null, 0.02, null])).toEqual([null, 0.02, null]);
    expect(falseDiscovery([])).toEqual([]);
  });

  test("q values rise with p, keep the order of the input, and lie between p and 1", () => {
    fc.assert(fc.property(fc.array(fc.option(fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 40 }), (pValues) => {
      const pairs = falseDiscovery(pValues).map((q, i) => [pValues[i], q] as const);
      expect(pairs.every(([p, q]) => (p === null) === (q === null))).toBe(true);
      const known = pairs.flatMap(([p, q]) => (typeof p === "number" && q !== null ? [{ p, q }] : [])).sort((a, b) => a.p - b.p);
      expect(known.every(({ p, q }, i) => q >= p && q <= 1 && q >= (known[i - 1]?.q ?? 0))).toBe(true);
    }), { seed: 3 });
  });

  test("a p value outside 0…1 is refused", () => {
    expect(() => falseDiscovery([0.2, 1.2])).toThrow(new RangeError("falseDiscovery: pValues must lie in 0…1, got 1.2"));
    expect(() => falseDiscovery([NaN])).toThrow("got NaN");
  });
});
