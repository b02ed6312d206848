import { requireSome } from "./requirement.ts";

/** A column is taken for a mixture of those before it when less than this part of it is its own. */
const OWN_PART = 1e-9;

/**
 * Least-squares coefficients by modified Gram–Schmidt on the columns with the response as the last one, which is as stable as
 * Householder's QR (Björck 1967, BIT 7:1-21). On plain arrays, because forecasts solve some thousands of these.
 *
 * @param columns each as long as `response`; they and it are used up
 * @returns null when a column is a mixture of others
 * @throws {RangeError} if there is no column or one is not as long as `response`
 * @example
 * leastSquares([Float64Array.of(1, 1, 1), Float64Array.of(0, 1, 2)], Float64Array.of(1, 3, 5)); // => [1, 2]
 */
export function leastSquares(columns: readonly Float64Array[], response: Float64Array): number[] | null {
  requireSome("leastSquares", "columns", columns);
  if (columns.some((column) => column.length !== response.length)) throw new RangeError(`leastSquares: columns must be as long as response, got ${columns.map((column) => column.length).join(", ")} and ${response.length}`);
  const size = columns.length, triangle = Array.from({ length: size }, () => new Float64Array(size)), right = new Float64Array(size);
  const lengths = columns.map((column) => dot(column, column));
  for (let j = 0; j < size; j += 1) {
    const column = columns[j] as Float64Array, square = dot(column, column), row = triangle[j] as Float64Array;
    if (!(square > OWN_PART * (lengths[j] as number))) return null;
    row[j] = 1;
    for (let k = j + 1; k < size; k += 1) row[k] = takeOut(columns[k] as Float64Array, column, square);
    right[j] = takeOut(response, column, square);
  }
  const beta = new Array<number>(size).fill(0);
  for (let j = size - 1; j >= 0; j -= 1) {
    let left = right[j] as number;
    for (let k = j + 1; k < size; k += 1) left -= (triangle[j]?.[k] as number) * (beta[k] as number);
    beta[j] = left;
  }
  return beta;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i += 1) sum += (one[i] as number) * (other[i] as number);
  return sum;
}

/** Takes out of `from` what lies along `direction`. @returns how many times it lay along it */
function takeOut(from: Float64Array, direction: Float64Array, square: number): number {
  const times = dot(from, direction) / square;
  for (let i = 0; i < from.length; i += 1) from[i] = (from[i] as number) - times * (direction[i] as number);
  return times;
}
