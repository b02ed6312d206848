import { requireInside, requirePositive } from "./requirement.ts";
import { profileLimits } from "./profile-limits.ts";
import type { HeldFigure } from "./profile-limits.ts";
import { weibullLikelihood } from "./weibull-likelihood.ts";
import type { WeibullLife } from "./weibull-life.ts";

/** A figure with its limits by profile likelihood; null for a side without a limit. */
export interface LifeFigure { readonly value: number; readonly low: number | null; readonly high: number | null }

const cloglog = (share: number) => Math.log(-Math.log1p(-share));
const unit = (size: number, at: number) => Float64Array.from({ length: size }, (_, k) => Number(k === at));
const covariates = ({ packed }: WeibullLife, x: readonly number[]) => Array.from({ length: packed.covariates }, (_, j) => x[j] ?? 0);

/** Standard error of a figure by its slopes (delta method). */
function errorOf({ covariance }: WeibullLife, slopes: ArrayLike<number>): number {
  let square = 0;
  for (let i = 0; i < slopes.length; i += 1) for (let j = 0; j < slopes.length; j += 1) square += (slopes[i] as number) * (slopes[j] as number) * covariance.get(i, j);
  return Math.sqrt(square);
}

function limits(fit: WeibullLife, family: HeldFigure, figure: number, slopes: ArrayLike<number>, level: number) {
  const { theta, penalised, packed, prior } = fit, top = { at: theta, value: penalised, figure, se: errorOf(fit, slopes) };
  return profileLimits((at) => weibullLikelihood(packed, at, prior), family, top, level);
}

const through = ({ low, high }: { low: number | null; high: number | null }, change: (x: number) => number) =>
  ({ low: low === null ? null : change(low), high: high === null ? null : change(high) });

/** θ with everything free but a, which makes a + b·c + xγ equal k. */
const tied = (size: number, k: number, c: number, x: readonly number[]) => ({
  base: Float64Array.from({ length: size }, (_, i) => (i === 0 ? k : 0)),
  columns: Array.from({ length: size - 1 }, (_, i) => Float64Array.from({ length: size }, (__, j) => (j === 0 ? -(i === 0 ? c : x[i - 1] ?? 0) : Number(j === i + 1)))),
});
const butFirst = (at: Float64Array) => [...at.subarray(1)];

/**
 * Exposure by which a share of parts has failed (0.1 gives B10), with profile-likelihood limits.
 *
 * @param x covariates; those left out are 0
 * @throws {RangeError} unless `share` lies between 0 and 1
 * @example
 * lifeAt(weibullLife([{ low: 0, high: 4, count: 3 }, { low: 4, high: Infinity, count: 9 }, { low: 0, high: 9, count: 8 }, { low: 9, high: Infinity, count: 8 }]), 0.5).value; // => 9.0000
 */
export function lifeAt(fit: WeibullLife, share: number, x: readonly number[] = [], level = 0.95): LifeFigure {
  requireInside("lifeAt", "share", share);
  const { theta, shape, packed } = fit, size = theta.length, k = cloglog(share), given = covariates(fit, x);
  const rest = given.reduce((sum, one, j) => sum + one * (theta[j + 2] as number), theta[0] as number), log = (k - rest) / shape;
  const family: HeldFigure = { held: (c) => tied(size, k, c, given), free: butFirst, slope: ({ gradient }, at) => -(at[1] as number) * (gradient[0] as number) };
  const slopes = [-1 / shape, -log / shape, ...given.map((one) => -one / shape)];
  return { value: packed.unit * Math.exp(log), ...through(limits(fit, family, log, slopes, level), (c) => packed.unit * Math.exp(c)) };
}

const shareAt = (eta: number) => -Math.expm1(-Math.exp(eta));

/** Where an exposure lies on the fitted line, and what that hangs on. */
function lineAt(fit: WeibullLife, exposure: number, x: readonly number[]) {
  requirePositive("failedBy", "exposure", exposure);
  const { theta, packed } = fit, log = Math.log(exposure / packed.unit), given = covariates(fit, x), slopes = [1, log, ...given];
  return { log, given, slopes, eta: slopes.reduce((sum, slope, j) => sum + slope * (theta[j] as number), 0) };
}

/**
 * Share of parts failed by an exposure; a hundredth of the work of `failedBy`, which has limits.
 *
 * @throws {RangeError} unless `exposure` is finite and above 0
 * @example
 * shareFailedBy(weibullLife([{ low: 0, high: 4, count: 3 }, { low: 4, high: Infinity, count: 9 }, { low: 0, high: 9, count: 8 }, { low: 9, high: Infinity, count: 8 }]), 9); // => 0.5000
 */
export const shareFailedBy = (fit: WeibullLife, exposure: number, x: readonly number[] = []): number => shareAt(lineAt(fit, exposure, x).eta);

/**
 * Share of parts failed by an exposure, with profile-likelihood limits.
 *
 * @throws {RangeError} unless `exposure` is finite and above 0
 * @example
 * failedBy(weibullLife([{ low: 0, high: 4, count: 3 }, { low: 4, high: Infinity, count: 9 }, { low: 0, high: 9, count: 8 }, { low: 9, high: Infinity, count: 8 }]), 9).value; // => 0.5000
 */
export function failedBy(fit: WeibullLife, exposure: number, x: readonly number[] = [], level = 0.95): LifeFigure {
  const { log, given, slopes, eta } = lineAt(fit, exposure, x);
  const family: HeldFigure = { held: (figure) => tied(fit.theta.length, figure, log, given), free: butFirst, slope: ({ gradient }) => gradient[0] as number };
  return { value: shareAt(eta), ...through(limits(fit, family, eta, slopes, level), shareAt) };
}

/**
 * Limits of the Weibull shape.
 *
 * @example
 * shapeOf(weibullLife([{ low: 0, high: 4, count: 3 }, { low: 4, high: Infinity, count: 9 }, { low: 0, high: 9, count: 8 }, { low: 9, high: Infinity, count: 8 }])).value; // => 1.0844
 */
export function shapeOf(fit: WeibullLife, level = 0.95): LifeFigure {
  const { theta, shape } = fit, size = theta.length, kept = [0, ...Array.from({ length: size - 2 }, (_, j) => j + 2)];
  const family: HeldFigure = {
    held: (b) => ({ base: unit(size, 1).map((one) => one * b), columns: kept.map((j) => unit(size, j)) }),
    free: (at) => kept.map((j) => at[j] as number), slope: ({ gradient }) => gradient[1] as number,
  };
  return { value: shape, ...limits(fit, family, shape, unit(size, 1), level) };
}

/**
 * How many units of exposure at covariate 0 wear as much as one at covariate 1 (a time ratio of accelerated life; 2: it lasts half as
 * long), its logarithm and the standard error of that.
 *
 * @param covariate its place in `x`
 * @example
 * timeRatio(weibullLife([0, 1].flatMap((x) => [{ low: 0, high: 8, count: 4 + 4 * x, x: [x] }, { low: 8, high: Infinity, count: 9, x: [x] }, { low: 0, high: 20, count: 9 + 4 * x, x: [x] }, { low: 20, high: Infinity, count: 9, x: [x] }])), 0).value; // => 2.0668
 */
export function timeRatio(fit: WeibullLife, covariate: number, level = 0.95): LifeFigure & { log: number; se: number } {
  const { theta, shape, packed } = fit, size = theta.length, j = covariate + 2;
  if (!(covariate >= 0 && covariate < packed.covariates)) throw new RangeError(`timeRatio: covariate must be one of ${packed.covariates}, got ${covariate}`);
  const log = (theta[j] as number) / shape, kept = Array.from({ length: size }, (_, i) => i).filter((i) => i !== j);
  const family: HeldFigure = {
    held: (ratio) => ({ base: new Float64Array(size), columns: kept.map((i) => unit(size, i).map((one, k) => (i === 1 && k === j ? ratio : one))) }),
    free: (at) => kept.map((i) => at[i] as number), slope: ({ gradient }, at) => (at[1] as number) * (gradient[j] as number),
  };
  const slopes = Array.from({ length: size }, (_, i) => (i === 1 ? -log / shape : i === j ? 1 / shape : 0));
  return { value: Math.exp(log), log, se: errorOf(fit, slopes), ...through(limits(fit, family, log, slopes, level), Math.exp) };
}
