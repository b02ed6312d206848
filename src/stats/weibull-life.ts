import { EigenvalueDecomposition, inverse, Matrix } from "ml-matrix";
import { packLines } from "./life-lines.ts";
import type { LifeLine, PackedLines } from "./life-lines.ts";
import { newtonMaximum } from "./newton-maximum.ts";
import type { Maximum } from "./newton-maximum.ts";
import { weibullLikelihood } from "./weibull-likelihood.ts";
import type { LifePrior } from "./weibull-likelihood.ts";

/** Why there is no curve. `confounded`: a covariate cannot be told from others. */
export interface NoLife { readonly status: "none failed" | "all failed" | "one exposure" | "confounded" | "did not converge" }

/** A fitted Weibull life; see `weibullLikelihood` for a, b and γ. */
export interface WeibullLife {
  /** `separated`: no maximum without a prior, so the one named in `prior` was used. `not wear-out`: the share failed does not grow. */
  readonly status: "ok" | "separated" | "not wear-out";
  readonly theta: Float64Array;
  /** Inverse of the observed information of `theta`, row by row. */
  readonly covariance: Matrix;
  readonly shape: number;
  readonly shape_se: number;
  /** Exposure by which 63.2 % have failed where all covariates are 0. */
  readonly scale: number;
  /** Without the prior. */
  readonly logLikelihood: number;
  /** With it; what the limits are measured by. */
  readonly penalised: number;
  readonly prior: LifePrior;
  readonly packed: PackedLines;
  readonly n: number;
  readonly failed: number;
}

export interface LifeOptions {
  readonly prior?: LifePrior;
  /** A place to begin at: θ of a like fit with the same number of covariates. */
  readonly start?: Float64Array | undefined;
}

/** What tames separation: the shape of bearings, seals and clutches lies around 1.5 (METHODS 4); effects are not endless. */
export const WEAK_PRIOR: LifePrior = { shape: { median: 1.5, log_sd: 0.5 }, effects: 1 };

const sum = (lines: readonly LifeLine[], is: (line: LifeLine) => boolean) => lines.reduce((total, line) => total + (is(line) ? line.count ?? 1 : 0), 0);
const hasFailed = ({ high }: LifeLine) => high < Infinity;
/** Seen good at some exposure, failed later or not. */
const wasGood = ({ low }: LifeLine) => low > 0;

function without(lines: readonly LifeLine[]): NoLife | null {
  if (!lines.some(hasFailed)) return { status: "none failed" };
  if (!lines.some(wasGood)) return { status: "all failed" };
  const ends = new Set(lines.flatMap(({ low, high }) => [low, high].filter((end) => end > 0 && end < Infinity)));
  return ends.size === 1 ? { status: "one exposure" } : null;
}

/** One exposure lies inside every line, so the steeper the better without end; or one level never, or always, failed. */
function isSeparated(lines: readonly LifeLine[]): boolean {
  if (lines.every(({ low, high }) => low !== high) && Math.max(...lines.map(({ low }) => low)) <= Math.min(...lines.map(({ high }) => high))) return true;
  return (lines[0]?.x ?? []).some((_, j) => [0, 1].some((level) => {
    const some = lines.filter(({ x }) => x?.[j] === level);
    return some.length > 0 && some.length < lines.length && lines.every(({ x }) => x?.[j] === 0 || x?.[j] === 1) && (!some.some(hasFailed) || !some.some(wasGood));
  }));
}

/** Smallest eigenvalue of the scaled information under which two covariates, or the shape, cannot be told apart. */
const NO_INFORMATION = 1e-9;

/** Start from moments: shape 1.2 and the scale at which it would bring about as many failures as were seen. */
function begin(packed: PackedLines, n: number, failed: number): Float64Array {
  const theta = new Float64Array(packed.covariates + 2), share = Math.min(0.9, Math.max(0.02, failed / n));
  theta[0] = Math.log(-Math.log1p(-share));
  theta[1] = 1.2;
  return theta;
}

function found(lines: readonly LifeLine[], { local, at }: Maximum, packed: PackedLines, status: "ok" | "separated", prior: LifePrior): WeibullLife | NoLife {
  const size = at.length, information = new Matrix(size, size);
  for (let i = 0; i < size; i += 1) for (let j = 0; j < size; j += 1) information.set(i, j, -(local.hessian[i * size + j] as number));
  const errors = information.diagonal().map((one) => 1 / Math.sqrt(one)), scale = Matrix.diag(errors);
  const scaled = scale.mmul(information).mmul(scale);
  if (!errors.every(Number.isFinite) || !new EigenvalueDecomposition(scaled, { assumeSymmetric: true }).realEigenvalues.every((one) => one > NO_INFORMATION)) return { status: "confounded" };
  const covariance = inverse(information), shape = at[1] as number;
  return {
    status: shape > 0 ? status : "not wear-out", theta: at, covariance, shape, shape_se: Math.sqrt(covariance.get(1, 1)),
    scale: packed.unit * Math.exp(-(at[0] as number) / shape), logLikelihood: weibullLikelihood(packed, at).value, penalised: local.value,
    prior, packed, n: sum(lines, () => true), failed: sum(lines, hasFailed),
  };
}

const wild = ({ at, converged }: Maximum) => !converged || !at.every((value) => Math.abs(value) < 40);

/**
 * Weibull life with covariates from parts seen good and failed at inspections, by maximum likelihood.
 *
 * Interval-censored, right-censored, left-truncated, exact and current-status lines may be mixed (Meeker & Escobar 1998, Statistical
 * Methods for Reliability Data, ch. 7, 8, 11). Where the likelihood has no maximum (Albert & Anderson 1984, Biometrika 71:1-10) a weak
 * prior is put on the shape and the effects, and `status` says so.
 *
 * @throws {RangeError} on a line that cannot be, see `packLines`
 * @example
 * weibullLife([{ low: 0, high: 5 }]); // => { status: "all failed" }
 */
export function weibullLife(lines: readonly LifeLine[], { prior = {}, start }: LifeOptions = {}): WeibullLife | NoLife {
  const packed = packLines(lines), reason = without(lines);
  if (reason) return reason;
  const fit = (used: LifePrior) => newtonMaximum((at) => weibullLikelihood(packed, at, used), start ?? begin(packed, sum(lines, () => true), sum(lines, hasFailed)));
  if (!isSeparated(lines)) {
    const plain = fit(prior);
    if (!wild(plain)) return found(lines, plain, packed, "ok", prior);
  }
  const tamed = { ...WEAK_PRIOR, ...prior }, penalised = fit(tamed);
  return wild(penalised) ? { status: "did not converge" } : found(lines, penalised, packed, "separated", tamed);
}

/**
 * Whether there is a curve at all.
 *
 * @example
 * hasCurve({ status: "all failed" }); // => false
 */
export const hasCurve = (fit: WeibullLife | NoLife): fit is WeibullLife & { status: "ok" | "separated" } => fit.status === "ok" || fit.status === "separated";
