import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { compareShares } from "./compare-shares.ts";
import { falseDiscovery } from "./false-discovery.ts";
import { gammaAbove } from "./incomplete-gamma.ts";
import { requireTable } from "./requirement.ts";

export interface ContingencyCell {
  row: number;
  column: number;
  observed: number;
  expected: number;
  pearson: number;
  /** Like a standard normal number when rows and columns are unrelated (Haberman 1973, Biometrics 29:205-220). */
  adjusted: number;
  /** Chance of a count this high given both margins, and the same with half weight on the count seen. */
  pHigh: number;
  pHighMid: number;
  /** Odds of cell against rest, half added to each of the four counts so that it always exists. */
  oddsRatio: number;
  /** False-discovery value of the two-sided adjusted residual among all cells. */
  q: number;
}

export interface Contingency {
  total: number;
  degrees: number;
  chiSquare: number;
  p: number;
  /** Likelihood ratio. */
  g: number;
  pG: number;
  cramersV: number;
  smallestExpected: number;
  cells: ContingencyCell[];
}

/** Why a table has no test. */
export interface NoContingency { reason: "fewer than two rows or columns" | "a row or column without counts" }

const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);

/**
 * Whether rows and columns of a table of counts go together, and which cells stand out.
 *
 * Pearson's chi-square and the likelihood ratio (Agresti 2013, Categorical Data Analysis), adjusted residuals (Haberman
 * 1973), and each cell against the rest exactly. A row or column without counts says nothing: leave it out first.
 *
 * @param table counts by row, then by column
 * @throws {RangeError} if the table is not rectangular or a count is not a whole number ≥ 0
 * @example
 * contingency([[10, 20], [20, 10]]).chiSquare; // => 6.6667
 * contingency([[10, 20], [20, 10]]).p; // => 0.0098
 * contingency([[1, 2], [0, 0]]); // => { reason: "a row or column without counts" }
 */
export function contingency(table: readonly (readonly number[])[]): Contingency | NoContingency {
  requireTable("contingency", table);
  const rows = table.map(sum), columns = (table[0] ?? []).map((_, j) => sum(table.map((row) => row[j] as number)));
  if (rows.length < 2 || columns.length < 2) return { reason: "fewer than two rows or columns" };
  if (Math.min(...rows, ...columns) === 0) return { reason: "a row or column without counts" };
  const total = sum(rows);
  const cells = table.flatMap((counts, row) => counts.map((observed, column) => {
    const inRow = rows[row] as number, inColumn = columns[column] as number, expected = (inRow * inColumn) / total;
    const rest = { row: inRow - observed, column: inColumn - observed, both: total - inRow - inColumn + observed };
    const pearson = (observed - expected) / Math.sqrt(expected);
    const { pHigh, pHighMid } = compareShares(
      { failed: observed, inspected: inRow }, { failed: rest.column, inspected: total - inRow });
    return {
      row, column, observed, expected, pearson, pHigh, pHighMid,
      adjusted: pearson / Math.sqrt((1 - inRow / total) * (1 - inColumn / total)),
      oddsRatio: ((observed + 0.5) * (rest.both + 0.5)) / ((rest.row + 0.5) * (rest.column + 0.5)),
    };
  }));
  const q = falseDiscovery(cells.map(({ adjusted }) => 2 * normalCdf(-Math.abs(adjusted), 0, 1)));
  const degrees = (rows.length - 1) * (columns.length - 1);
  const chiSquare = sum(cells.map(({ pearson }) => pearson ** 2));
  const g = 2 * sum(cells.map(({ observed, expected }) => (observed === 0 ? 0 : observed * Math.log(observed / expected))));
  return {
    total, degrees, chiSquare, p: gammaAbove(chiSquare / 2, degrees / 2), g, pG: gammaAbove(g / 2, degrees / 2),
    cramersV: Math.sqrt(chiSquare / total / (Math.min(rows.length, columns.length) - 1)),
    smallestExpected: Math.min(...cells.map(({ expected }) => expected)),
    cells: cells.map((cell, i) => ({ ...cell, q: q[i] as number })),
  };
}
