import { inverse, Matrix } from "ml-matrix";
import { newtonMaximum } from "./newton-maximum.ts";
import type { LocalShape } from "./newton-maximum.ts";
import { requireSome, requireWhole } from "./requirement.ts";

/** Units alike: category 0, 1, … and covariates (no intercept: the thresholds are it). */
export interface GradedLine { readonly grade: number; readonly x: readonly number[]; readonly count?: number }

export interface ProportionalOdds {
  readonly status: "ok" | "did not converge";
  /** ln odds of grade ≤ k where all covariates are 0. */
  readonly thresholds: readonly number[];
  /** Above 0: the larger the covariate, the higher the grade. */
  readonly coefficients: readonly number[];
  /** Errors of thresholds, then coefficients. */
  readonly se: readonly number[];
  readonly logLikelihood: number;
}

/** Why nothing can be fitted. */
export interface NoGrades { readonly status: "one grade" }

const logistic = (eta: number) => (eta === Infinity ? 1 : eta === -Infinity ? 0 : 1 / (1 + Math.exp(-eta)));

/** A category's upper or lower edge: how much lies below it, with first and second slope. */
function edge(at: number) {
  const below = logistic(at), slope = below * (1 - below);
  return { below, slope, bend: slope * (1 - 2 * below) };
}

function likelihood(lines: readonly GradedLine[], cuts: number, phi: Float64Array): LocalShape {
  const size = phi.length, gradient = new Float64Array(size), hessian = new Float64Array(size * size);
  let value = 0;
  for (const { grade, x, count = 1 } of lines) {
    const eta = x.reduce((sum, one, j) => sum + one * (phi[cuts + j] as number), 0);
    const upper = edge(grade < cuts ? (phi[grade] as number) - eta : Infinity), lower = edge(grade > 0 ? (phi[grade - 1] as number) - eta : -Infinity);
    const share = upper.below - lower.below;
    if (!(share > 0)) return { value: -Infinity, gradient, hessian };
    const ways: [number, number, number][] = [];
    if (grade < cuts) ways.push([grade, 1, 0]);
    if (grade > 0) ways.push([grade - 1, 0, 1]);
    x.forEach((one, j) => ways.push([cuts + j, -one, -one]));
    const slopes = ways.map(([, up, down]) => (upper.slope * up - lower.slope * down) / share);
    value += count * Math.log(share);
    ways.forEach(([i, up, down], a) => {
      gradient[i] = (gradient[i] as number) + count * (slopes[a] as number);
      ways.forEach(([j, up2, down2], b) => {
        const curve = (upper.bend * up * up2 - lower.bend * down * down2) / share - (slopes[a] as number) * (slopes[b] as number);
        hessian[i * size + j] = (hessian[i * size + j] as number) + count * curve;
      });
    });
  }
  return { value, gradient, hessian };
}

/** Thresholds of the plain shares, coefficients 0. */
function begin(lines: readonly GradedLine[], cuts: number, covariates: number): Float64Array | null {
  const counts = Array.from({ length: cuts + 1 }, (_, grade) => lines.reduce((sum, line) => sum + (line.grade === grade ? line.count ?? 1 : 0), 0));
  if (cuts === 0 || counts.some((one) => one === 0)) return null;
  const total = counts.reduce((sum, one) => sum + one, 0);
  let below = 0;
  const logits = counts.slice(0, cuts).map((one) => Math.log((below += one) / (total - below)));
  return Float64Array.from([...logits, ...Array.from({ length: covariates }, () => 0)]);
}

/**
 * Grades by covariates: logit of the share graded k or lower = threshold k − x·coefficients (McCullagh 1980, Journal of the Royal
 * Statistical Society B 42:109-142), by Newton's method.
 *
 * @param lines grades must be numbered without gaps, each seen at least once
 * @throws {RangeError} if there is no line or a grade is not a whole number of at least 0
 * @example
 * proportionalOdds([{ grade: 0, x: [] , count: 3 }, { grade: 1, x: [] }]).thresholds[0]; // => 1.0986
 */
export function proportionalOdds(lines: readonly GradedLine[]): ProportionalOdds | NoGrades {
  requireSome("proportionalOdds", "lines", lines);
  lines.forEach(({ grade }) => { requireWhole("proportionalOdds", "grade", grade); });
  const cuts = Math.max(...lines.map(({ grade }) => grade)), start = begin(lines, cuts, lines[0]?.x.length ?? 0);
  if (!start) return { status: "one grade" };
  const { at, local, converged } = newtonMaximum((phi) => likelihood(lines, cuts, phi), start), size = at.length;
  const information = new Matrix(Array.from({ length: size }, (_, i) => Array.from({ length: size }, (__, j) => -(local.hessian[i * size + j] as number))));
  return {
    status: converged ? "ok" : "did not converge", thresholds: [...at.subarray(0, cuts)], coefficients: [...at.subarray(cuts)],
    se: inverse(information).diagonal().map((one) => Math.sqrt(Math.max(0, one))), logLikelihood: local.value,
  };
}

/**
 * Share of every grade at given covariates.
 *
 * @example
 * gradeShares({ thresholds: [0], coefficients: [1] }, [0]); // => [0.5, 0.5]
 */
export function gradeShares({ thresholds, coefficients }: Pick<ProportionalOdds, "thresholds" | "coefficients">, x: readonly number[]): number[] {
  const eta = x.reduce((sum, one, j) => sum + one * (coefficients[j] as number), 0);
  const below = [...thresholds.map((one) => logistic(one - eta)), 1];
  return below.map((one, k) => one - (below[k - 1] ?? 0));
}
