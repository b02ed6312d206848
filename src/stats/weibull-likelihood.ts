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

/** Places of what is added up for each set of covariates: slopes along 1 and the log exposure, and the curvature along both. */
const SUMS = 5, SLOPE = 0, SLOPE_LOG = 1, BEND = 2, BEND_BOTH = 3, BEND_LOG = 4;

/** Adds slope · z to the slopes and curve · zz' to the curvature for z = (1, log exposure). */
function add(sums: Float64Array, into: number, log: number, slope: number, curve: number): void {
  sums[into + SLOPE] = (sums[into + SLOPE] as number) + slope;
  sums[into + SLOPE_LOG] = (sums[into + SLOPE_LOG] as number) + slope * log;
  sums[into + BEND] = (sums[into + BEND] as number) + curve;
  sums[into + BEND_BOTH] = (sums[into + BEND_BOTH] as number) + curve * log;
  sums[into + BEND_LOG] = (sums[into + BEND_LOG] as number) + curve * log * log;
}

/** Minus a cumulated hazard of u for parts good so far (`signed` below 0), plus it for what was cut off by a late entry. */
function goodLine(sums: Float64Array, into: number, log: number, signed: number, u: number): number {
  if (u > 0) add(sums, into, log, signed * u, signed * u);
  return signed * u;
}

/** Failed at a known exposure: the logarithm of hazard times survival. */
function exactLine(sums: Float64Array, into: number, log: number, { n, u, b, log_unit }: { n: number; u: number; b: number; log_unit: number }): number {
  add(sums, into, log, n - n * u, -n * u);
  sums[into + SLOPE_LOG] = (sums[into + SLOPE_LOG] as number) + n / b;
  sums[into + BEND_LOG] = (sums[into + BEND_LOG] as number) - n / (b * b);
  return n * (Math.log(u) + Math.log(b) - log - log_unit - u);
}

/** Good at the lower end (u there), failed by the upper one (v): ln(e^-u − e^-v). */
function failedBetween(sums: Float64Array, into: number, low: number, high: number, n: number, u: number, v: number): number {
  const d = v - u;
  if (!(d > 0)) return -Infinity;
  const early = d > 700 ? 0 : 1 / Math.expm1(d), bend = d > 350 ? 0 : -Math.exp(d) * early * early, vv = early === 0 ? 0 : v;
  if (u === 0) add(sums, into, high, n * early * vv, n * (early * vv + bend * vv * vv));
  else {
    // How the distance between both ends, v·z(high) − u·z(low), moves with θ.
    const apart = vv - u, apart_log = vv * high - u * low;
    add(sums, into, low, -n * u * (1 + early), -n * u * (1 + early));
    add(sums, into, high, n * early * vv, n * early * vv);
    sums[into + BEND] = (sums[into + BEND] as number) + n * bend * apart * apart;
    sums[into + BEND_BOTH] = (sums[into + BEND_BOTH] as number) + n * bend * apart * apart_log;
    sums[into + BEND_LOG] = (sums[into + BEND_LOG] as number) + n * bend * apart_log * apart_log;
  }
  return n * (log1mexp(d) - u);
}

/** a + xγ of each set of covariates. */
function restsOf({ sets, covariates, x }: PackedLines, theta: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: sets }, (_, set) => {
    let rest = theta[0] as number;
    for (let j = 0; j < covariates; j += 1) rest += (x[set * covariates + j] as number) * (theta[j + 2] as number);
    return rest;
  });
}

/** Spreads what was added up for each set of covariates over the slopes, and over the lower half of the curvature. */
function spread(sums: Float64Array, { sets, covariates, x }: PackedLines, { gradient, hessian }: { gradient: Float64Array; hessian: Float64Array }): void {
  const size = covariates + 2, plus = (into: Float64Array, at: number, by: number) => { into[at] = (into[at] as number) + by; };
  for (let set = 0; set < sets; set += 1) {
    const of = (what: number) => sums[set * SUMS + what] as number;
    plus(gradient, 0, of(SLOPE));
    plus(gradient, 1, of(SLOPE_LOG));
    plus(hessian, 0, of(BEND));
    plus(hessian, size, of(BEND_BOTH));
    plus(hessian, size + 1, of(BEND_LOG));
    for (let j = 0; j < covariates; j += 1) {
      const xj = x[set * covariates + j] as number, row = (j + 2) * size;
      // Most covariates are levels that most sets do not have.
      if (xj === 0) continue;
      plus(gradient, j + 2, xj * of(SLOPE));
      plus(hessian, row, xj * of(BEND));
      plus(hessian, row + 1, xj * of(BEND_BOTH));
      for (let k = 0; k <= j; k += 1) plus(hessian, row + k + 2, xj * (x[set * covariates + k] as number) * of(BEND));
    }
  }
}

/**
 * Log-likelihood of Weibull lives at θ = (a, b, γ…): the chance to be good after exposure t is exp(−exp(a + b ln(t / unit) + xγ)),
 * so b is the shape and exp(−(a + xγ)/b) · unit the scale.
 *
 * A line good at `low` and failed by `high` gives ln(S(low) − S(high)); with an entry it is divided by S(entry). A current-status
 * line (low 0, or high Infinity) is a binomial one with complementary log-log link. Gradient and curvature are exact; lines with the
 * same covariates are added up before these are multiplied out.
 *
 * @returns value −Infinity where θ cannot be (a failure between two inspections needs b above 0)
 * @example
 * weibullLikelihood(packLines([{ low: 3, high: Infinity }]), [0, 1]).value; // => -1.0000
 */
export function weibullLikelihood(packed: PackedLines, theta: ArrayLike<number>, prior: LifePrior = {}): Local {
  const size = theta.length, { lines, log_low, log_high, log_entry, count, set, unit } = packed, into = emptyLocal(size), b = theta[1] as number;
  if (prior.shape && !(b > 0)) return { value: -Infinity, ...into };
  const rests = restsOf(packed, theta), sums = new Float64Array(packed.sets * SUMS), log_unit = Math.log(unit);
  let value = 0;
  for (let i = 0; i < lines; i += 1) {
    const n = count[i] as number, low = log_low[i] as number, high = log_high[i] as number, entry = log_entry[i] as number;
    const of = set[i] as number, rest = rests[of] as number, at = of * SUMS, u = low === -Infinity ? 0 : Math.exp(rest + b * low);
    if (low === high) value += exactLine(sums, at, low, { n, u, b, log_unit });
    else if (high === Infinity) value += goodLine(sums, at, low, -n, u);
    else value += failedBetween(sums, at, low, high, n, u, Math.exp(rest + b * high));
    if (entry > -Infinity) value += goodLine(sums, at, entry, n, Math.exp(rest + b * entry));
  }
  spread(sums, packed, into);
  value += addPrior(theta, prior, into);
  const { gradient, hessian } = into;
  for (let j = 0; j < size; j += 1) for (let k = 0; k < j; k += 1) hessian[k * size + j] = hessian[j * size + k] as number;
  return { value: Number.isNaN(value) ? -Infinity : value, gradient, hessian };
}
