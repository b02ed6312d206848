import { isotonic } from "../../stats/isotonic.ts";
import { gammaAbove } from "../../stats/incomplete-gamma.ts";
import { failedBy, shareFailedBy } from "../../stats/life-figures.ts";
import { turnbull } from "../../stats/turnbull.ts";
import type { WeibullLife } from "../../stats/weibull-life.ts";
import { lifeLinesOf, longestOf, partsOf, telling } from "./life-lines-of.ts";
import type { WearLine } from "./wear-records.ts";
import type { CurvePoint, Misfit, RugMark, StepPoint } from "./wear.ts";

const POINTS = 40;
/** How far over the records the curve is drawn, shaded. */
const OVER = 1.25;
/** The steps' distance from the curve that is called bad where no test can be had, and the parts it must rest on. */
const FAR = 0.15, FEWEST_BEHIND = 20;

/** The fitted share at some exposures, with limits. */
export function fittedAt(fit: WeibullLife, exposures: readonly number[], longest: number): CurvePoint[] {
  return exposures.map((exposure) => {
    const { value, low, high } = failedBy(fit, exposure);
    return { exposure, fitted: value, low: low ?? 0, high: high ?? 1, beyond: exposure > longest };
  });
}

/** The fitted curve from nearly nothing to a little over the records. */
export function curveOf(fit: WeibullLife, lines: readonly WearLine[]): CurvePoint[] {
  const longest = longestOf(lines);
  return longest === null ? [] : fittedAt(fit, Array.from({ length: POINTS }, (_, i) => (longest * OVER * (i + 1)) / POINTS), longest);
}

const onceOnly = (lines: readonly WearLine[]) => lines.every(({ low, high }) => low === 0 || high === null);

/** Inspections at one exposure, rising. */
export function rugOf(lines: readonly WearLine[]): RugMark[] {
  const at = new Map<number, { good: number; failed: number }>();
  const add = (exposure: number, good: number, failed: number) => {
    const mark = at.get(exposure) ?? { good: 0, failed: 0 };
    at.set(exposure, { good: mark.good + good, failed: mark.failed + failed });
  };
  for (const { low, high, parts } of telling(lines)) {
    if (low > 0) add(low, parts, 0);
    if (high !== null) add(high, 0, parts);
  }
  return [...at].map(([exposure, mark]) => ({ exposure, ...mark })).sort((a, b) => a.exposure - b.exposure);
}

/** Steps that assume no shape, and the log-likelihood of the records under them. */
export interface FreeSteps { readonly steps: readonly StepPoint[]; readonly log_likelihood: number }

/** Pooled shares by exposure, where each part was looked at once. */
function pooledSteps(some: readonly WearLine[]): FreeSteps {
  const marks = rugOf(some), log = (count: number, of: number) => (count === 0 ? 0 : count * Math.log(count / of));
  const points = marks.map(({ exposure, good, failed }) => ({ x: exposure, y: failed / (good + failed), weight: good + failed }));
  return {
    steps: isotonic(points).map(({ x, y, weight }) => ({ exposure: x, observed: y, n: weight })),
    log_likelihood: marks.reduce((sum, { good, failed }) => sum + log(good, good + failed) + log(failed, good + failed), 0),
  };
}

/** The share failed without a shape: pooled shares where each part was looked at once, else Turnbull's steps with the parts still followed. */
export function freeSteps(lines: readonly WearLine[]): FreeSteps {
  const some = telling(lines);
  if (some.length === 0) return { steps: [], log_likelihood: 0 };
  if (onceOnly(some)) return pooledSteps(some);
  const { masses, logLikelihood } = turnbull(lifeLinesOf(some));
  let observed = 0;
  const steps = masses.filter(({ right }) => right < Infinity).map(({ right, mass }) => {
    observed += mass;
    return { exposure: right, observed: Math.min(1, observed), n: partsOf(some.filter(({ low, high }) => (high ?? low) >= right)) };
  });
  return { steps, log_likelihood: logLikelihood };
}

/** The steps alone. */
export const stepsOf = (lines: readonly WearLine[]): readonly StepPoint[] => freeSteps(lines).steps;

/** How far the curve lies from the records. */
export function misfitOf(fit: WeibullLife, lines: readonly WearLine[], { steps, log_likelihood }: FreeSteps): Misfit | null {
  const some = telling(lines), marks = rugOf(some), once = onceOnly(some);
  if (steps.length < 3) return null;
  const degrees = Math.max(1, (once ? marks.length : steps.length) - 2), deviance = 2 * (log_likelihood - fit.logLikelihood);
  const tested = once && partsOf(some) >= 5 * marks.length, off = steps.filter(({ n }) => n >= FEWEST_BEHIND).map(({ exposure, observed }) => Math.abs(observed - shareFailedBy(fit, exposure)));
  const bad = tested ? gammaAbove(Math.max(0, deviance) / 2, degrees / 2) < 0.05 : Math.max(0, ...off) > FAR;
  if (!tested && off.length === 0) return { deviance, degrees, bad: false, text: "Too few parts stand behind the steps to tell whether the curve follows the records." };
  return { deviance, degrees, bad, text: bad ? "The curve does not follow the records well: trust the steps, not the curve." : "The curve follows the records." };
}
