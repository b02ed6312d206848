import { inverse, Matrix, QrDecomposition } from "ml-matrix";
import { requirePaired, requireShare, requireSome } from "./requirement.ts";

export type Link = "logit" | "cloglog";

/** Units alike: covariates (write the 1 of the intercept yourself), inspected and failed. */
export interface BinomialLine { readonly x: readonly number[]; readonly inspected: number; readonly failed: number }

export interface BinomialFit {
  readonly status: "ok" | "did not converge";
  readonly coefficients: readonly number[];
  readonly se: readonly number[];
  /** Inverse of the expected information. */
  readonly covariance: Matrix;
  /** Of the single units: without the binomial coefficients. */
  readonly logLikelihood: number;
  /** Against a share of its own for every line. */
  readonly deviance: number;
  /** Slopes of each line's log-likelihood. */
  readonly scores: readonly (readonly number[])[];
}

interface At { readonly share: number; readonly slope: number; /** second derivative over first */ readonly bend: number; readonly log_good: number; readonly log_failed: number }

const LINKS: Readonly<Record<Link, (eta: number) => At>> = {
  logit: (eta) => {
    const share = 1 / (1 + Math.exp(-eta)), good = 1 / (1 + Math.exp(eta));
    return { share, slope: share * good, bend: good - share, log_good: -Math.max(eta, 0) - Math.log1p(Math.exp(-Math.abs(eta))), log_failed: Math.min(eta, 0) - Math.log1p(Math.exp(-Math.abs(eta))) };
  },
  cloglog: (eta) => {
    const hazard = Math.exp(eta), share = -Math.expm1(-hazard);
    return { share, slope: hazard * Math.exp(-hazard), bend: 1 - hazard, log_good: -hazard, log_failed: hazard > Math.LN2 ? Math.log1p(-Math.exp(-hazard)) : Math.log(share) };
  },
};

const MOST_TURNS = 5000;
const times = (count: number, log: number) => (count === 0 ? 0 : count * log);

function locals(lines: readonly BinomialLine[], beta: readonly number[], link: Link) {
  return lines.map(({ x, inspected, failed }) => {
    const eta = x.reduce((sum, one, j) => sum + one * (beta[j] as number), 0), at = LINKS[link](eta);
    const good = Math.exp(at.log_good), weight = Math.max((inspected * at.slope ** 2) / (at.share * good), 1e-300);
    return { ...at, eta, weight, residual: (failed - inspected * at.share) / (inspected * at.slope) };
  });
}

/** Least squares of the working response on the weighted covariates. */
function turn(lines: readonly BinomialLine[], beta: readonly number[], link: Link, reduced: boolean): number[] {
  const here = locals(lines, beta, link), roots = here.map(({ weight }) => Math.sqrt(weight));
  const parts = new QrDecomposition(new Matrix(lines.map(({ x }, i) => x.map((one) => one * (roots[i] as number)))));
  const q = reduced ? parts.orthogonalMatrix : null;
  const response = here.map(({ eta, residual, bend, weight }, i) => {
    const leverage = q ? q.getRow(i).reduce((sum, one) => sum + one * one, 0) : 0;
    return [(eta + residual + (leverage * bend) / (2 * weight)) * (roots[i] as number)];
  });
  return parts.solve(new Matrix(response)).getColumn(0);
}

function shown(lines: readonly BinomialLine[], beta: readonly number[], link: Link, status: BinomialFit["status"]): BinomialFit {
  const here = locals(lines, beta, link), size = beta.length, information = Matrix.zeros(size, size);
  lines.forEach(({ x }, i) => {
    const { weight } = here[i] as (typeof here)[number];
    x.forEach((one, j) => { x.forEach((other, k) => { information.set(j, k, information.get(j, k) + weight * one * other); }); });
  });
  const covariance = inverse(information), logs = lines.map(({ inspected, failed }, i) => {
    const { log_good, log_failed } = here[i] as (typeof here)[number];
    return times(failed, log_failed) + times(inspected - failed, log_good);
  });
  const saturated = lines.map(({ inspected, failed }) => times(failed, Math.log(failed / inspected)) + times(inspected - failed, Math.log(1 - failed / inspected)));
  const logLikelihood = logs.reduce((sum, one) => sum + one, 0);
  return {
    status, coefficients: beta, se: covariance.diagonal().map(Math.sqrt), covariance, logLikelihood,
    deviance: 2 * (saturated.reduce((sum, one) => sum + one, 0) - logLikelihood),
    scores: lines.map(({ x }, i) => x.map((one) => one * (here[i]?.weight ?? 0) * (here[i]?.residual ?? 0))),
  };
}

/**
 * Shares failed by covariates: binomial regression by iterated weighted least squares (McCullagh & Nelder 1989, Generalized Linear
 * Models, ch. 4), each turn solved by QR. With `bias_reduced` the score is adjusted so that estimates stay finite under separation
 * (Firth 1993, Biometrika 80:27-38; for any link Kosmidis & Firth 2009, Biometrika 96:793-804).
 *
 * @throws {RangeError} if there is no line, covariates are unequally many, or counts cannot be
 * @example
 * binomialRegression([{ x: [1], inspected: 8, failed: 2 }], "logit").coefficients[0]; // => -1.0986
 */
export function binomialRegression(lines: readonly BinomialLine[], link: Link, { bias_reduced = false } = {}): BinomialFit {
  requireSome("binomialRegression", "lines", lines);
  lines.forEach(({ x, inspected, failed }) => {
    requireShare("binomialRegression", failed, inspected);
    requirePaired("binomialRegression", "x", x, "x of the first line", lines[0]?.x ?? []);
  });
  let beta = (lines[0]?.x ?? []).map(() => 0);
  for (let turns = 0; turns < MOST_TURNS; turns += 1) {
    const next = turn(lines, beta, link, bias_reduced), move = Math.max(...next.map((one, j) => Math.abs(one - (beta[j] as number))));
    const shorter = Math.min(1, 5 / move);
    beta = beta.map((one, j) => one + shorter * ((next[j] as number) - one));
    if (!beta.every((one) => Math.abs(one) < 1e3)) break;
    if (move < 1e-11 * (1 + Math.max(...beta.map(Math.abs)))) return shown(lines, beta, link, "ok");
  }
  return shown(lines, beta.map((one) => (Number.isFinite(one) ? one : 0)), link, "did not converge");
}

/**
 * Standard errors that allow for units of one cluster (visits of one reel, reels of one boat) being alike: the sandwich with scores
 * summed within clusters (Liang & Zeger 1986, Biometrika 73:13-22), without a small-sample factor.
 *
 * @param clusters one label a line
 * @throws {RangeError} unless there is one label for each line
 * @example
 * clusterErrors(binomialRegression([{ x: [1], inspected: 1, failed: 1 }, { x: [1], inspected: 1, failed: 0 }], "logit"), ["a", "b"])[0]; // => 1.4142
 */
export function clusterErrors({ scores, covariance }: BinomialFit, clusters: readonly string[]): number[] {
  requirePaired("clusterErrors", "clusters", clusters, "lines", scores);
  const sums = new Map<string, number[]>();
  scores.forEach((score, i) => {
    const before = sums.get(clusters[i] as string);
    sums.set(clusters[i] as string, score.map((one, j) => one + (before?.[j] ?? 0)));
  });
  const all = new Matrix([...sums.values()]), meat = all.transpose().mmul(all);
  return covariance.mmul(meat).mmul(covariance).diagonal().map(Math.sqrt);
}
