import { CholeskyDecomposition, Matrix } from "ml-matrix";

/** Value, slopes and curvature (row by row) of a function at one place. */
export interface LocalShape { readonly value: number; readonly gradient: ArrayLike<number>; readonly hessian: ArrayLike<number> }

export interface Maximum {
  readonly at: Float64Array;
  readonly local: LocalShape;
  readonly converged: boolean;
  readonly steps: number;
}


/** Slopes and minus the curvature along the free directions. */
function along({ gradient, hessian }: LocalShape, columns: readonly Float64Array[]): { slope: Matrix; curve: Matrix } {
  const size = gradient.length, free = columns.length, slope = Matrix.zeros(free, 1), curve = Matrix.zeros(free, free);
  columns.forEach((one, i) => {
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += (one[k] as number) * (gradient[k] as number);
    slope.set(i, 0, sum);
    for (let j = 0; j <= i; j += 1) {
      const other = columns[j] as Float64Array;
      let bend = 0;
      for (let k = 0; k < size; k += 1) {
        if (one[k] === 0) continue;
        for (let l = 0; l < size; l += 1) bend -= (one[k] as number) * (other[l] as number) * (hessian[k * size + l] as number);
      }
      curve.set(i, j, bend);
      curve.set(j, i, bend);
    }
  });
  return { slope, curve };
}

/** Newton's step; where the hill is not curved downward everywhere, as much of a plain climb is mixed in as makes it so. */
function stepOf(slope: Matrix, curve: Matrix): { step: Matrix; gain: number } | null {
  const largest = Math.max(1e-12, ...curve.diagonal().map(Math.abs));
  for (let ridge = 0; ridge <= largest * 1e9; ridge = ridge === 0 ? largest * 1e-6 : ridge * 10) {
    const lifted = ridge === 0 ? curve : Matrix.add(curve, Matrix.eye(curve.rows).mul(ridge)), parts = new CholeskyDecomposition(lifted);
    if (!parts.isPositiveDefinite()) continue;
    const step = parts.solve(slope), gain = slope.dot(step);
    if (Number.isFinite(gain)) return { step, gain };
  }
  return null;
}

const moved = (at: Float64Array, columns: readonly Float64Array[], step: Matrix, by: number) =>
  at.map((value, k) => columns.reduce((sum, column, i) => sum + by * (column[k] as number) * step.get(i, 0), value));

/** The first point along the step, halved again and again, that is higher; null when there is none. */
function higher(f: (at: Float64Array) => LocalShape, from: { at: Float64Array; local: LocalShape }, columns: readonly Float64Array[], step: Matrix) {
  for (let by = 1; by > 1e-10; by /= 2) {
    const at = moved(from.at, columns, step, by), local = f(at);
    if (local.value > from.local.value || (by === 1 && local.value >= from.local.value)) return { at, local };
  }
  return null;
}

/**
 * Highest point of a smooth function by Newton's method with halved steps (Nocedal & Wright 2006, Numerical Optimization, ch. 3).
 *
 * @param f value, slopes and curvature at a place; −Infinity where it may not go
 * @param start a place with a finite value; with `affine` it must lie on it
 * @returns the last place, and whether nothing was left to gain there
 * @example
 * newtonMaximum(([x = 0]) => ({ value: -((x - 3) ** 2), gradient: [-2 * (x - 3)], hessian: [-2] }), new Float64Array([0])).at[0]; // => 3.0000
 */
export function newtonMaximum(f: (at: Float64Array) => LocalShape, start: Float64Array, columns: readonly Float64Array[] | null = null, most = 80): Maximum {
  const ways = columns ?? Array.from(start, (_, j) => Float64Array.from(start, (__, k) => Number(j === k)));
  let here = { at: start, local: f(start) };
  for (let steps = 0; steps < most; steps += 1) {
    if (ways.length === 0) return { ...here, converged: true, steps };
    const { slope, curve } = along(here.local, ways), next = stepOf(slope, curve);
    if (!next || !Number.isFinite(here.local.value)) return { ...here, converged: false, steps };
    const better = higher(f, here, ways, next.step), done = next.gain < 1e-9 * (1 + Math.abs(here.local.value) * 1e-3);
    if (!better) return { ...here, converged: next.gain < 1e-6, steps };
    here = better;
    if (done) return { ...here, converged: true, steps };
  }
  return { ...here, converged: false, steps: most };
}
