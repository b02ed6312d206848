import tQuantile from "@stdlib/stats-base-dists-t-quantile";
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
/** What must be left of a column's square, beside those before it: less is what rounding leaves of a column that says nothing new. */
const HANGS = 1e-11;

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

/** Where a column is not nothing, and what it is there; most columns are levels that few values have. */
function somewhere(values: ArrayLike<number>): { at: Int32Array; value: Float64Array } {
  const at: number[] = [];
  for (let i = 0; i < values.length; i += 1) if (values[i] !== 0) at.push(i);
  return { at: Int32Array.from(at), value: Float64Array.from(at, (i) => values[i] as number) };
}

/** Sum of products with a column that is something at a few places. As one side has no mean within a group, the other need not be freed of its own. */
function product(left: Float64Array, { at, value }: { at: Int32Array; value: Float64Array }): number {
  let sum = 0;
  for (let i = 0; i < at.length; i += 1) sum += (left[at[i] as number] as number) * (value[i] as number);
  return sum;
}

/** Products of columns scaled to length one, side by side, and of each with the outcome. */
interface Products { readonly sides: readonly { readonly length: number; readonly before: number }[]; readonly columns: Float64Array; readonly outcome: Float64Array }

/** Many columns of many values: each pair costs as much as the emptier of both holds. */
function productsOf(columns: readonly ArrayLike<number>[], y: Float64Array, of: Int32Array, sizes: Int32Array): Products {
  const p = columns.length, sides = columns.map((column) => within(column, of, sizes)), products = new Float64Array(p * p), outcome = new Float64Array(p);
  columns.forEach((column, j) => {
    const some = somewhere(column), length = sides[j]?.length ?? NaN;
    outcome[j] = product(y, some) / length;
    for (let k = 0; k < j; k += 1) products[j * p + k] = product((sides[k] as (typeof sides)[number]).left, some) / (length * (sides[k]?.length ?? NaN));
    products[j * p + j] = 1;
  });
  return { sides: sides.map(({ length, before }) => ({ length, before })), columns: products, outcome };
}

interface Decomposed { readonly kept: readonly number[]; readonly lower: readonly (readonly number[])[]; readonly along: readonly number[] }

/**
 * Cholesky's triangle of the products, column by column (Golub & Van Loan 2013, Matrix Computations, 4.2), and the outcome along it. A column
 * that never differs within a group, or hangs on those before it, is given up.
 */
function decomposed({ sides, columns, outcome }: Products): Decomposed {
  const p = sides.length, kept: number[] = [], lower: number[][] = [], along: number[] = [];
  for (let j = 0; j < p; j += 1) {
    const { length, before } = sides[j] as (typeof sides)[number], row: number[] = [];
    if (!(length > NOTHING * before)) continue;
    kept.forEach((k, i) => { row.push(((columns[j * p + k] as number) - dot(row, lower[i] as number[], i)) / (lower[i]?.[i] as number)); });
    const rest = 1 - dot(row, row, row.length);
    if (rest < HANGS) continue;
    const own = Math.sqrt(rest);
    along.push(((outcome[j] as number) - dot(row, along, row.length)) / own);
    lower.push([...row, own]);
    kept.push(j);
  }
  return { kept, lower, along };
}

function dot(one: readonly number[], other: readonly number[], many: number): number {
  let sum = 0;
  for (let i = 0; i < many; i += 1) sum += (one[i] as number) * (other[i] as number);
  return sum;
}

/** Solves L'x = b from below. */
function backward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x = [...b];
  for (let i = x.length - 1; i >= 0; i -= 1) {
    let rest = b[i] as number;
    for (let k = i + 1; k < x.length; k += 1) rest -= (lower[k]?.[i] as number) * (x[k] as number);
    x[i] = rest / (lower[i]?.[i] as number);
  }
  return x;
}

/** Lengths of the rows of the inverse of L', which are the errors of the coefficients at a scatter of one. */
function errorsOf(lower: readonly (readonly number[])[]): number[] {
  const squares = lower.map(() => 0);
  lower.forEach((_, j) => { backward(lower, lower.map((__, i) => Number(i === j))).forEach((value, i) => { squares[i] = (squares[i] as number) + value ** 2; }); });
  return squares.map(Math.sqrt);
}

/** Each different group by a number from 0 up, and how many values each holds. */
function numbered(groups: ArrayLike<unknown>): { of: Int32Array; sizes: Int32Array } {
  const known = new Map<unknown, number>(), of = Int32Array.from(groups, (group) => known.get(group) ?? known.set(group, known.size).size - 1);
  const sizes = new Int32Array(known.size);
  for (const at of of) sizes[at] = (sizes[at] as number) + 1;
  return { of, sizes };
}

/**
 * Linear regression with a level of its own for every group: what differs between groups explains nothing, only what differs
 * inside them does.
 *
 * Least squares on values less their group's mean, which is least squares with one indicator for each group (Wooldridge 2010,
 * Econometric Analysis of Cross Section and Panel Data, ch. 10.5), from the products of columns freed of
 * their groups' means and scaled to length one, which one pass over the values gives; limits from the t distribution.
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
  groups: ArrayLike<unknown>, columns: readonly ArrayLike<number>[], outcome: ArrayLike<number>, level = 0.95,
): WithinRegression | NoWithin {
  requireNumbers(groups, columns, outcome);
  requireInside("withinRegression", "level", level);
  const { of, sizes } = numbered(groups), n = outcome.length, y = within(outcome, of, sizes), products = productsOf(columns, y.left, of, sizes);
  const { kept, lower, along } = decomposed(products), degrees = n - sizes.length - kept.length;
  if (degrees < 1) return { reason: "too few values within groups" };
  const squares = Math.max(0, y.length ** 2 - dot(along, along, along.length)), residualSd = Math.sqrt(squares / degrees);
  const effects: (WithinEffect | null)[] = columns.map(() => null), t = tQuantile((1 + level) / 2, degrees), answer = backward(lower, along), errors = errorsOf(lower);
  kept.forEach((at, i) => {
    const length = products.sides[at]?.length ?? NaN, coefficient = (answer[i] as number) / length, se = (residualSd * (errors[i] as number)) / length;
    effects[at] = { coefficient, se, low: coefficient - t * se, high: coefficient + t * se };
  });
  return { n, groups: sizes.length, degrees, residualSd, effects };
}

function requireNumbers(groups: ArrayLike<unknown>, columns: readonly ArrayLike<number>[], outcome: ArrayLike<number>): void {
  requireSome("withinRegression", "outcome", outcome);
  requireFinite("withinRegression", "outcome", outcome);
  requirePaired("withinRegression", "groups", groups, "outcome", outcome);
  for (const column of columns) {
    requirePaired("withinRegression", "column", column, "outcome", outcome);
    requireFinite("withinRegression", "column", column);
  }
}
