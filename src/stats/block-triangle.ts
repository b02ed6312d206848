import { Matrix, QrDecomposition } from "ml-matrix";

/** Rows decomposed at a time: a few thousand stay in the processor's cache, all of them do not. */
const BLOCK = 2_048;

/**
 * The triangle R of the QR decomposition of columns side by side, block by block of rows: the triangle of what came before is put on
 * top of the next block (Golub & Van Loan 2013, Matrix Computations, 5.2).
 *
 * @param columns each of `n` values
 * @returns as many rows and columns as there are columns given; a row may come with either sign
 * @example
 * Math.abs(blockTriangle([Float64Array.of(3, 4)], 2).get(0, 0)); // => 5
 */
export function blockTriangle(columns: readonly Float64Array[], n: number): Matrix {
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
