import gammaln from "@stdlib/math-base-special-gammaln";
import { inverse, Matrix } from "ml-matrix";
import { leastSquares } from "./least-squares.ts";
import { maximumBetween } from "./maximum-between.ts";
import { requirePaired, requireSome, requireWhole } from "./requirement.ts";

/** One count with its covariates (write the 1 of the intercept yourself); `share` of the week that was open, above 0. */
export interface CountLine { readonly x: readonly number[]; readonly count: number; readonly share?: number }

export interface CountFit {
  readonly status: "ok" | "did not converge";
  readonly coefficients: readonly number[];
  /** From the expected information, for counts that vary as the model says. */
  readonly se: readonly number[];
  /** Variance is mean + mean² / size; Infinity is Poisson. */
  readonly size: number;
  readonly logLikelihood: number;
  readonly deviance: number;
  /** Pearson's chi-square over its degrees of freedom: how much more the counts vary than the model says. */
  readonly dispersion: number;
  readonly means: readonly number[];
}

const MOST_TURNS = 25;
const meanOf = ({ x, share = 1 }: CountLine, beta: readonly number[]) => share * Math.exp(x.reduce((sum, one, j) => sum + one * (beta[j] as number), 0));
const variance = (mean: number, size: number) => mean + mean ** 2 / size;

/** Least squares of the working response on the weighted covariates; null when they are mixtures of each other. */
function turn(lines: readonly CountLine[], beta: readonly number[], size: number): number[] | null {
  const columns = beta.map(() => new Float64Array(lines.length)), response = new Float64Array(lines.length);
  lines.forEach((line, i) => {
    const mean = Math.max(meanOf(line, beta), 1e-10), root = Math.sqrt(mean ** 2 / variance(mean, size));
    response[i] = root * (Math.log(mean / (line.share ?? 1)) + (line.count - mean) / mean);
    columns.forEach((column, j) => { column[i] = root * (line.x[j] as number); });
  });
  return leastSquares(columns, response);
}

/** Log-likelihood of counts given their means: negative binomial, or Poisson when `size` is Infinity. */
function likelihood(counts: readonly number[], means: readonly number[], size: number): number {
  return counts.reduce((sum, count, i) => {
    const mean = means[i] as number;
    if (size === Infinity) return sum + (count === 0 ? 0 : count * Math.log(mean)) - mean - gammaln(count + 1);
    const ways = gammaln(count + size) - gammaln(size) - gammaln(count + 1);
    return sum + ways - size * Math.log1p(mean / size) + (count === 0 ? 0 : count * Math.log(mean / (size + mean)));
  }, 0);
}

/** Twice the log-likelihood that a mean of its own for every count would add. */
function devianceOf(counts: readonly number[], means: readonly number[], size: number): number {
  return 2 * counts.reduce((sum, count, i) => {
    const mean = means[i] as number, own = count === 0 ? 0 : count * Math.log(count / mean);
    return sum + own - (size === Infinity ? count - mean : (count + size) * Math.log((count + size) / (mean + size)));
  }, 0);
}

function described(lines: readonly CountLine[], coefficients: readonly number[], size: number, status: CountFit["status"]): CountFit {
  const counts = lines.map(({ count }) => count), means = lines.map((line) => meanOf(line, coefficients)), width = coefficients.length;
  const weighted = new Matrix(lines.map(({ x }, i) => { const mean = means[i] as number; return x.map((one) => one * Math.sqrt(mean ** 2 / variance(mean, size))); }));
  const pearson = counts.reduce((sum, count, i) => sum + (count - (means[i] as number)) ** 2 / variance(means[i] as number, size), 0);
  const se = status === "ok" ? inverse(weighted.transpose().mmul(weighted)).diagonal().map(Math.sqrt) : coefficients.map(() => NaN);
  return {
    status, coefficients, se, size, means, dispersion: pearson / Math.max(1, lines.length - width),
    logLikelihood: likelihood(counts, means, size), deviance: devianceOf(counts, means, size),
  };
}

/** Coefficients by iterated weighted least squares, from `start`; null when they run away. */
function solved(lines: readonly CountLine[], size: number, start: readonly number[]): readonly number[] | null {
  let beta: readonly number[] = start;
  for (let turns = 0; turns < MOST_TURNS; turns += 1) {
    const next = turn(lines, beta, size);
    if (!next?.every((one) => Math.abs(one) < 50)) return null;
    const now = beta, move = Math.max(...next.map((one, j) => Math.abs(one - (now[j] as number))));
    beta = next;
    if (move < 1e-9) return beta;
  }
  return null;
}

const flat = (lines: readonly CountLine[]): number[] => {
  const counts = lines.reduce((sum, { count }) => sum + count, 0), shares = lines.reduce((sum, { share = 1 }) => sum + share, 0);
  return (lines[0]?.x ?? []).map((_, j) => (j === 0 ? Math.log(Math.max(counts, 0.5) / shares) : 0));
};

/**
 * Counts by covariates on the logarithmic scale: Poisson, or negative binomial of a known size, by iterated weighted least squares
 * (McCullagh & Nelder 1989, Generalized Linear Models, ch. 6), each turn solved by orthogonal columns.
 *
 * @param lines the first covariate is the 1 of the intercept
 * @param start coefficients to begin from, where some are known from a fit to nearly the same counts
 * @throws {RangeError} if there is no line, covariates are unequally many, or a count is not a whole number of at least 0
 * @example
 * countRegression([{ x: [1], count: 2 }, { x: [1], count: 4 }]).coefficients[0]; // => 1.0986
 */
export function countRegression(lines: readonly CountLine[], size = Infinity, start: readonly number[] | null = null): CountFit {
  requireSome("countRegression", "lines", lines);
  lines.forEach(({ x, count }) => {
    requireWhole("countRegression", "count", count);
    requirePaired("countRegression", "x", x, "x of the first line", lines[0]?.x ?? []);
  });
  const beta = solved(lines, size, start ?? flat(lines)) ?? (start === null ? null : solved(lines, size, flat(lines)));
  return beta === null ? described(lines, flat(lines), size, "did not converge") : described(lines, beta, size, "ok");
}

/**
 * Counts by covariates, negative binomial with the size that fits best: coefficients and size in turns until neither moves
 * (Venables & Ripley 2002, Modern Applied Statistics with S, sec. 7.4).
 *
 * @throws what `countRegression` throws
 * @example
 * negativeBinomialRegression([0, 9, 1, 8, 0, 12].map((count) => ({ x: [1], count }))).coefficients[0]; // => 1.6094
 */
export function negativeBinomialRegression(lines: readonly CountLine[], start: readonly number[] | null = null): CountFit {
  let fit = countRegression(lines, Infinity, start);
  const counts = lines.map(({ count }) => count);
  for (let turns = 0; turns < 30 && fit.status === "ok"; turns += 1) {
    const { means } = fit, log_size = maximumBetween((one) => likelihood(counts, means, Math.exp(one)), -3, 9, 12).at;
    const next = countRegression(lines, Math.exp(log_size), fit.coefficients), settled = Math.abs(Math.log(fit.size) - log_size) < 1e-7;
    fit = next;
    if (settled) break;
  }
  return fit;
}
