import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { Matrix, QrDecomposition, solve } from "ml-matrix";
import { requireFinite, requireInside, requirePaired, requireSome } from "./requirement.ts";

/** What one more of a column does to the outcome, all other columns and the group held fast. */
export interface WithinEffect {
  readonly coefficient: number;
  readonly se: number;
  readonly low: number;
  readonly high: number;
}

export interface WithinRegression {
  readonly n: number;
  readonly groups: number;
  /** What is left to judge the scatter by: values less groups less columns kept. */
  readonly degrees: number;
  readonly residualSd: number;
  /** In the order of the columns; null for a column that never differs within a group, or says only what columns before it say. */
  readonly effects: readonly (WithinEffect | null)[];
}

/** Why there is no regression. */
export interface NoWithin { readonly reason: "too few values within groups" }

/** A part of a column's own length that counts as nothing. */
const NOTHING = 1e-9;

/** Values less the mean of their group, with the length left and the length before. */
function within(values: ArrayLike<number>, of: Int32Array, sizes: Int32Array): { left: Float64Array; length: number; before: number } {
  const means = new Float64Array(sizes.length), left = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) means[of[i] as number] = (means[of[i] as number] as number) + (values[i] as number) / (sizes[of[i] as number] as number);
  let length = 0, before = 0;
  for (let i = 0; i < values.length; i += 1) {
    const rest = (values[i] as number) - (means[of[i] as number] as number);
    left[i] = rest;
    length += rest ** 2;
    before += (values[i] as number) ** 2;
  }
  return { left, length: Math.sqrt(length), before: Math.sqrt(before) };
}

/** Rows decomposed at a time: a few thousand stay in the processor's cache, all of them do not. */
const BLOCK = 2_048;

/**
 * The triangle R of the QR decomposition of columns side by side, block by block of rows: the triangle of what came before is put on
 * top of the next block (Golub & Van Loan 2013, Matrix Computations, 5.2).
 */
function triangle(columns: readonly Float64Array[], n: number): Matrix {
  let above = new Matrix(0, columns.length);
  for (let from = 0; from < n; from += BLOCK) {
    // Rows of nothing below too few: a column more than there are rows shows as one that hangs on the others.
    const until = Math.min(n, from + BLOCK), stacked = new Matrix(Math.max(above.rows + until - from, columns.length), columns.length);
    stacked.setSubMatrix(above, 0, 0);
    columns.forEach((column, at) => { for (let i = from; i < until; i += 1) stacked.set(above.rows + i - from, at, column[i] as number); });
    above = new QrDecomposition(stacked).upperTriangularMatrix;
  }
  return above;
}

interface Decomposed { readonly kept: readonly number[]; readonly upper: Matrix; readonly along: Matrix; readonly left: number }

/** Columns that can be told apart, scaled to length one, decomposed with the outcome behind them; a column that hangs on those before it is given up. */
function decomposed(columns: readonly { left: Float64Array; length: number; before: number }[], y: Float64Array): Decomposed | null {
  let kept = columns.flatMap(({ length, before }, at) => (length > NOTHING * before ? [at] : []));
  while (kept.length > 0) {
    const scaled = kept.map((at) => { const { left, length } = columns[at] as (typeof columns)[number]; return left.map((value) => value / length); });
    const whole = triangle([...scaled, y], y.length), p = kept.length;
    const bound = kept.findIndex((_, i) => Math.abs(whole.get(i, i)) < NOTHING);
    if (bound < 0) return { kept, upper: whole.subMatrix(0, p - 1, 0, p - 1), along: whole.subMatrix(0, p - 1, p, p), left: whole.get(p, p) ** 2 };
    kept = kept.filter((_, i) => i !== bound);
  }
  return null;
}

/** Each different group by a number from 0 up, and how many values each holds. */
function numbered(groups: readonly unknown[]): { of: Int32Array; sizes: Int32Array } {
  const known = new Map<unknown, number>(), of = new Int32Array(groups.length);
  groups.forEach((group, i) => { of[i] = known.get(group) ?? known.set(group, known.size).size - 1; });
  const sizes = new Int32Array(known.size);
  for (const at of of) sizes[at] = (sizes[at] as number) + 1;
  return { of, sizes };
}

/**
 * Linear regression with a level of its own for every group: what differs between groups explains nothing, only what differs
 * inside them does.
 *
 * Least squares on values less their group's mean, which is least squares with one indicator for each group (Wooldridge 2010,
 * Econometric Analysis of Cross Section and Panel Data, ch. 10.5), by Householder QR of columns scaled to length one; limits from
 * the t distribution.
 *
 * @param groups the group of each value
 * @param columns what may explain, each as long as `outcome`
 * @param level of the limits
 * @throws {RangeError} if nothing is given, lengths differ, a value is not finite, or `level` is not inside 0…1
 * @example
 * withinRegression(["a", "a", "b", "b", "b"], [[0, 1, 0, 1, 2]], [1, 3.5, 7, 8.5, 11]).effects[0].coefficient; // => 2.1
 * withinRegression(["a", "b"], [[0, 1]], [1, 2]); // => { reason: "too few values within groups" }
 */
export function withinRegression(
  groups: readonly unknown[], columns: readonly (readonly number[])[], outcome: readonly number[], level = 0.95,
): WithinRegression | NoWithin {
  requireSome("withinRegression", "outcome", outcome);
  requireFinite("withinRegression", "outcome", outcome);
  requirePaired("withinRegression", "groups", groups, "outcome", outcome);
  requireInside("withinRegression", "level", level);
  for (const column of columns) {
    requirePaired("withinRegression", "column", column, "outcome", outcome);
    requireFinite("withinRegression", "column", column);
  }
  const { of, sizes } = numbered(groups), n = outcome.length, y = within(outcome, of, sizes).left;
  const sides = columns.map((column) => within(column, of, sizes)), parts = decomposed(sides, y);
  const degrees = n - sizes.length - (parts?.kept.length ?? 0);
  if (degrees < 1) return { reason: "too few values within groups" };
  const squares = parts ? parts.left : y.reduce((sum, value) => sum + value ** 2, 0), residualSd = Math.sqrt(squares / degrees);
  const effects: (WithinEffect | null)[] = columns.map(() => null), t = tQuantile((1 + level) / 2, degrees);
  if (parts) {
    const answer = solve(parts.upper, parts.along), inverse = solve(parts.upper, Matrix.eye(parts.kept.length));
    parts.kept.forEach((at, i) => {
      const length = sides[at]?.length ?? NaN, coefficient = answer.get(i, 0) / length, se = (residualSd * Math.hypot(...inverse.getRow(i))) / length;
      effects[at] = { coefficient, se, low: coefficient - t * se, high: coefficient + t * se };
    });
  }
  return { n, groups: sizes.length, degrees, residualSd, effects };
}
