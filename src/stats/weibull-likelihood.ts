import type { PackedLines } from "./life-lines.ts";

/** Log-likelihood with its slopes and curvature (row by row) at one place. */
export interface Local { readonly value: number; readonly gradient: Float64Array; readonly hessian: Float64Array }

/** Weak knowledge that keeps a fit finite where the data alone would not; it is always reported. */
export interface LifePrior {
  /** Log-normal on the shape. */
  readonly shape?: { readonly median: number; readonly log_sd: number } | undefined;
  /** log-F(m, m) on every covariate (Greenland & Mansournia 2015, Statistics in Medicine 34:3133-3143). */
  readonly effects?: number | undefined;
}

/** Number of values of a `Local` for so many parameters. */
const emptyLocal = (size: number) => ({ gradient: new Float64Array(size), hessian: new Float64Array(size * size) });

/** log(1 - e^-d) without loss at either end. */
const log1mexp = (d: number) => (d > Math.LN2 ? Math.log1p(-Math.exp(-d)) : Math.log(-Math.expm1(-d)));

/** Adds the priors to `into` and gives their logarithm. */
function addPrior(theta: ArrayLike<number>, { shape, effects }: LifePrior, into: { gradient: Float64Array; hessian: Float64Array }): number {
  const size = theta.length, b = theta[1] as number, { gradient, hessian } = into;
  let value = 0;
  if (shape) {
    const away = Math.log(b / shape.median), square = shape.log_sd ** 2;
    value -= away ** 2 / (2 * square);
    gradient[1] = (gradient[1] as number) - away / (square * b);
    hessian[size + 1] = (hessian[size + 1] as number) + (away - 1) / (square * b * b);
  }
  for (let j = 2; effects && j < size; j += 1) {
    const one = theta[j] as number, chance = 1 / (1 + Math.exp(-one));
    value += effects * (one / 2 - Math.max(one, 0) - Math.log1p(Math.exp(-Math.abs(one))));
    gradient[j] = (gradient[j] as number) + effects * (0.5 - chance);
    hessian[j * size + j] = (hessian[j * size + j] as number) - effects * chance * (1 - chance);
  }
  return value;
}

/**
 * Log-likelihood of Weibull lives at θ = (a, b, γ…): the chance to be good after exposure t is exp(−exp(a + b ln(t / unit) + xγ)),
 * so b is the shape and exp(−(a + xγ)/b) · unit the scale.
 *
 * A line good at `low` and failed by `high` gives ln(S(low) − S(high)); with an entry it is divided by S(entry). A current-status
 * line (low 0, or high Infinity) is a binomial one with complementary log-log link. Gradient and curvature are exact.
 *
 * @returns value −Infinity where θ cannot be (a failure between two inspections needs b above 0)
 * @example
 * weibullLikelihood(packLines([{ low: 3, high: Infinity }]), [0, 1]).value; // => -1.0000
 */
export function weibullLikelihood(packed: PackedLines, theta: ArrayLike<number>, prior: LifePrior = {}): Local {
  const size = theta.length, { lines, covariates, log_low, log_high, log_entry, count, x, unit } = packed;
  const into = emptyLocal(size), { gradient, hessian } = into, a = theta[0] as number, b = theta[1] as number;
  const at_low = new Float64Array(size), at_high = new Float64Array(size), log_unit = Math.log(unit);
  if (prior.shape && !(b > 0)) return { value: -Infinity, ...into };
  let value = 0;
  const add = adder(gradient, hessian);
  at_low[0] = at_high[0] = 1;
  for (let i = 0; i < lines; i += 1) {
    const n = count[i] as number, low = log_low[i] as number, high = log_high[i] as number, entry = log_entry[i] as number;
    let rest = a;
    for (let j = 0; j < covariates; j += 1) {
      const xj = x[i * covariates + j] as number;
      at_low[j + 2] = at_high[j + 2] = xj;
      rest += xj * (theta[j + 2] as number);
    }
    at_low[1] = low;
    at_high[1] = high;
    const u = low === -Infinity ? 0 : Math.exp(rest + b * low);
    if (low === high) value += exactLine(n, { u, b, log_time: low + log_unit }, at_low, into, add);
    else if (high === Infinity) value += goodLine(-n, u, at_low, add);
    else value += failedBetween({ n, u, v: Math.exp(rest + b * high) }, at_low, at_high, add);
    if (entry > -Infinity) {
      at_low[1] = entry;
      value += goodLine(n, Math.exp(rest + b * entry), at_low, add);
    }
  }
  value += addPrior(theta, prior, into);
  for (let j = 0; j < size; j += 1) for (let k = 0; k < j; k += 1) hessian[k * size + j] = hessian[j * size + k] as number;
  return { value: Number.isNaN(value) ? -Infinity : value, gradient, hessian };
}

type Add = (z: Float64Array, slope: number, curve: number) => void;

/** Adds slope · z to the slopes and curve · zz' to the lower half of the curvature. */
function adder(gradient: Float64Array, hessian: Float64Array): Add {
  const size = gradient.length;
  return (z, slope, curve) => {
    for (let j = 0; j < size; j += 1) {
      const zj = z[j] as number, bend = curve * zj;
      // Most covariates are levels that most lines do not have.
      if (zj === 0) continue;
      if (slope !== 0) gradient[j] = (gradient[j] as number) + slope * zj;
      if (bend !== 0) for (let k = 0; k <= j; k += 1) hessian[j * size + k] = (hessian[j * size + k] as number) + bend * (z[k] as number);
    }
  };
}

/** Minus a cumulated hazard of u for parts good so far (`signed` below 0), plus it for what was cut off by a late entry. */
function goodLine(signed: number, u: number, z: Float64Array, add: Add): number {
  if (u > 0) add(z, signed * u, signed * u);
  return signed * u;
}

/** Failed at a known exposure: the logarithm of hazard times survival. */
function exactLine(n: number, { u, b, log_time }: { u: number; b: number; log_time: number }, z: Float64Array, into: ReturnType<typeof emptyLocal>, add: Add): number {
  const size = z.length;
  add(z, n - n * u, -n * u);
  into.gradient[1] = (into.gradient[1] as number) + n / b;
  into.hessian[size + 1] = (into.hessian[size + 1] as number) - n / (b * b);
  return n * (Math.log(u) + Math.log(b) - log_time - u);
}

/** Good at the lower end (u there), failed by the upper one (v): ln(e^-u − e^-v). */
function failedBetween({ n, u, v }: { n: number; u: number; v: number }, at_low: Float64Array, at_high: Float64Array, add: Add): number {
  const d = v - u;
  if (!(d > 0)) return -Infinity;
  const early = d > 700 ? 0 : 1 / Math.expm1(d), bend = d > 350 ? 0 : -Math.exp(d) * early * early, vv = early === 0 ? 0 : v;
  if (u === 0) add(at_high, n * early * vv, n * (early * vv + bend * vv * vv));
  else {
    const both = apart(at_low, at_high, u, vv);
    add(at_low, -n * u * (1 + early), -n * u * (1 + early));
    add(at_high, n * early * vv, n * early * vv);
    add(both, 0, n * bend);
  }
  return n * (log1mexp(d) - u);
}

/** v·z(high) − u·z(low): how the distance between both ends moves with θ. */
function apart(at_low: Float64Array, at_high: Float64Array, u: number, v: number): Float64Array {
  return at_low.map((z, j) => v * (at_high[j] as number) - u * z);
}
