import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareShares } from "../../src/stats/compare-shares.ts";
import { contingency } from "../../src/stats/contingency.ts";
import { fisherExact } from "../../src/stats/fisher-exact.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

/** Table of counts with rows and columns in the order of the reference cells. */
function tableOf(cells: Nested): number[][] {
  const rows = [...new Set(cells["row"] as unknown as string[])], width = numbersOf(cells["observed"]).length / rows.length;
  return rows.map((_, i) => numbersOf(cells["observed"]).slice(i * width, (i + 1) * width));
}

// tests/reference/14-contingency/piston-rings and 15-records/parts-by-model: HSAUR3::pistonrings, R 4.2.2.
describe.each(["14-contingency/piston-rings", "15-records/parts-by-model"])("table of %s", (name) => {
  const { rows, expected } = readCase(name);
  const relative = expected.tolerance["default_rel"] as number, values = expected.values, cells = values["cells"] as Nested;
  const result = contingency(tableOf(cells));
  if ("reason" in result) throw new Error(result.reason);

  test("the counts are those of the data", () => {
    const [row, column] = name.startsWith("14") ? ["compressor", "leg"] : ["model", "part"];
    const count = (i: number) => rows.filter((one) => one[row as string] === (cells["row"] as unknown as string[])[i]
      && one[column as string] === (cells["col"] as unknown as string[])[i]).reduce((sum, one) => sum + Number(one["n"] ?? 1), 0);
    expect(result.cells.map((cell) => cell.observed)).toEqual(result.cells.map((_, i) => count(i)));
  });

  test("chi-square, likelihood ratio, their chances and Cramér's V equal R's", () => {
    expectNear([result.total, result.degrees, result.chiSquare, result.p, result.g, result.pG, result.cramersV, result.smallestExpected],
      numbersOf(["n", "df", "chi2", "p", "G2", "p_G2", "cramers_v", "min_expected"].map((key) => values[key])), { relative });
  });

  test.each([
    ["expected", "expected"], ["pearson", "pearson_residual"], ["adjusted", "adjusted_residual"], ["pHigh", "p_exact_upper"],
    ["pHighMid", "p_midp_upper"], ["oddsRatio", "odds_ratio_haldane"], ["q", "bh_of_two_sided_adjusted_residual_p"],
  ] as const)("%s of every cell equals R's %s", (property, column) => {
    expectNear(result.cells.map((cell) => cell[property]), numbersOf(cells[column]), { relative }, property);
  });

  test("Fisher's exact test equals R's network algorithm", () => {
    const exact = fisherExact(tableOf(cells));
    expectNear(["p" in exact ? exact.p : null], [numberOf(values["fisher_exact_p"])], { relative: expected.tolerance["fisher_rel"] as number });
  });
});

describe("fisherExact", () => {
  test("equals adding up every table, for random small tables", () => {
    const logFactorial = (n: number): number => (n < 2 ? 0 : Math.log(n) + logFactorial(n - 1));
    const logs = (table: number[][]) => -table.flat().reduce((sum, count) => sum + logFactorial(count), 0);
    const size = fc.record({ height: fc.integer({ min: 2, max: 3 }), width: fc.integer({ min: 2, max: 3 }) });
    const tables = size.chain(({ height, width }) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: width, maxLength: width }), { minLength: height, maxLength: height }));
    fc.assert(fc.property(tables.filter((table) => table.flat().some((count) => count > 0)), (table) => {
      const width = table[0]?.length ?? 0, all: number[] = [];
      const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0));
      const columns = Array.from({ length: width }, (_, j) => table.reduce((sum, row) => sum + (row[j] as number), 0));
      // The last row and the last column follow from the others.
      const fill = (cells: number[]): void => {
        if (cells.length < (rows.length - 1) * (width - 1)) {
          for (let count = 0; count <= Math.max(...rows); count += 1) fill([...cells, count]);
          return;
        }
        const free = rows.slice(0, -1).map((_, i) => cells.slice(i * (width - 1), (i + 1) * (width - 1)));
        const full = free.map((row, i) => [...row, (rows[i] as number) - row.reduce((sum, count) => sum + count, 0)]);
        full.push(columns.map((count, j) => count - full.reduce((sum, row) => sum + (row[j] as number), 0)));
        if (full.flat().every((count) => count >= 0)) all.push(logs(full));
      };
      fill([]);
      const seen = logs(table), total = all.reduce((sum, log) => sum + Math.exp(log), 0);
      const byHand = all.filter((log) => log <= seen + 1e-9).reduce((sum, log) => sum + Math.exp(log), 0) / total;
      const exact = fisherExact(table);
      expect("p" in exact ? Math.abs(exact.p - byHand) : 1).toBeLessThan(1e-10);
    }), { numRuns: 40, seed: 9 });
  });

  test("a table too large to go through says so instead of freezing the screen", () => {
    expect(fisherExact(Array.from({ length: 16 }, (_, i) => Array.from({ length: 12 }, (_, j) => 5 + ((i * j) % 7))))).toEqual({ reason: "table too large" });
    expect(fisherExact(Array.from({ length: 8 }, () => [30, 40, 50]))).toEqual({ reason: "table too large" });
  });

  test("tables that are none are refused", () => {
    expect(() => fisherExact([[1, 2], [3]])).toThrow(new RangeError("fisherExact: table must have rows of one length, got 2, 1"));
    expect(() => contingency([[1, -2], [3, 4]])).toThrow(new RangeError("contingency: table must be a whole number of at least 0, got -2"));
    expect(contingency([[1, 0], [3, 0]])).toEqual({ reason: "a row or column without counts" });
    expect(contingency([[3, 4]])).toEqual({ reason: "fewer than two rows or columns" });
    expect(contingency([])).toEqual({ reason: "fewer than two rows or columns" });
    expect(fisherExact([])).toEqual({ reason: "no counts" });
  });
});

describe("compareShares", () => {
  test("equals Fisher's exact test where both tails are alike, and the tails overlap in the count seen", () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), fc.nat(), fc.nat(), (n, m, i, j) => {
      const first = { failed: i % (n + 1), inspected: n }, others = { failed: j % (m + 1), inspected: m };
      const { pHigh, pLow, pHighMid, pMid } = compareShares(first, others), mirrored = compareShares(others, first);
      expect(pMid).toBeCloseTo(mirrored.pMid, 10);
      expect(pMid).toBeLessThanOrEqual(1);
      if (first.failed + others.failed === 0 || first.failed + others.failed === n + m) return;
      expect(pHigh + pLow - 1).toBeCloseTo(2 * (pHigh - pHighMid), 10);
    }), { seed: 10 });
  });

  test("equals a table worked out by hand: 3 of 4 against 1 of 4", () => {
    // Given four failures among eight, P(3 or more of the first four) = (16 + 1) / 70.
    const { pHigh, pLow, pHighMid, pMid } = compareShares({ failed: 3, inspected: 4 }, { failed: 1, inspected: 4 });
    expect([pHigh, pLow, pHighMid, pMid]).toEqual([17 / 70, 69 / 70, 9 / 70, 18 / 70].map((value) => expect.closeTo(value, 12) as number));
  });

  test("differences far beyond doubt stay numbers", () => {
    const { pHigh, pLow, pMid } = compareShares({ failed: 3000, inspected: 3000 }, { failed: 0, inspected: 4000 });
    expect([pHigh, pLow, pMid]).toEqual([0, 1, 0]);
  });

  test("impossible counts are refused by name, requirement and value", () => {
    expect(() => compareShares({ failed: 3, inspected: 2 }, { failed: 0, inspected: 1 }))
      .toThrow(new RangeError("compareShares: failed must be a whole number in 0…2, got 3"));
  });
});
