import gammaln from "@stdlib/math-base-special-gammaln";
import { maximumBetween } from "./maximum-between.ts";
import { requirePaired, requirePositive, requireSome, requireWhole } from "./requirement.ts";
import { rootBetween } from "./root-between.ts";

export interface GammaFit {
  logMean: number;
  logShape: number;
  seLogMean: number;
  seLogShape: number;
  logLikelihood: number;
  /** Of one common rate; twice the difference measures how much the lines differ. */
  logLikelihoodPooled: number;
}

export interface GammaPrior {
  /** `fitted` from the lines; the other three say which stand-in was used and why. */
  status: "fitted" | "no difference between lines" | "few lines, fixed prior" | "nothing used yet";
  /** Rates of lines are spread as a gamma distribution with mean shape / rate. */
  shape: number;
  rate: number;
  fit: GammaFit | null;
}

interface Line { events: number; exposure: number }

const FEWEST_LINES = 5;
/** Logarithm of the shape: from differences of a factor of a thousand to differences nobody could see. */
const LOOSEST = -7, TIGHTEST = 12;

/** Sums of a term over j = 0 … n − 1, for every n up to the most events of a line: each line would add the same again. */
function sums(lines: readonly Line[], term: (j: number) => number): Float64Array {
  const most = lines.reduce((high, { events }) => Math.max(high, events), 0), found = new Float64Array(most + 1);
  for (let j = 0; j < most; j += 1) found[j + 1] = (found[j] ?? 0) + term(j);
  return found;
}

/** Slope and curvature of the log-likelihood in (log mean, log shape); the digamma differences are finite sums. */
function slopes(lines: readonly Line[], logMean: number, logShape: number) {
  const shape = Math.exp(logShape);
  const total = { mean: 0, shape: 0, meanMean: 0, meanShape: 0, shapeShape: 0 };
  const firsts = sums(lines, (j) => 1 / (shape + j)), seconds = sums(lines, (j) => 1 / (shape + j) ** 2);
  for (const { events, exposure } of lines) {
    const expected = Math.exp(logMean) * exposure, both = shape + expected;
    const first = firsts[events] ?? NaN, second = seconds[events] ?? NaN;
    const slope = first - Math.log1p(expected / shape) + 1 - (shape + events) / both;
    const curve = -second + 1 / shape - 1 / both - (expected - events) / both ** 2;
    total.mean += (shape * (events - expected)) / both;
    total.shape += shape * slope;
    total.meanMean -= (shape * expected * (shape + events)) / both ** 2;
    total.meanShape += (shape * expected * (events - expected)) / both ** 2;
    total.shapeShape += shape ** 2 * curve + shape * slope;
  }
  return total;
}

function logLikelihood(lines: readonly Line[], logMean: number, logShape: number): number {
  // Summed term by term: the difference of two log-gammas loses all digits when the shape is large.
  const shape = Math.exp(logShape), rising = sums(lines, (j) => Math.log1p(j / shape));
  return lines.reduce((sum, { events, exposure }) => {
    const expected = Math.exp(logMean) * exposure, ways = (rising[events] ?? NaN) - gammaln(events + 1);
    return sum + ways + events * Math.log(expected) - (shape + events) * Math.log1p(expected / shape);
  }, 0);
}

function pooledLogLikelihood(lines: readonly Line[], rate: number): number {
  return lines.reduce((sum, { events, exposure }) =>
    sum + events * Math.log(rate * exposure) - rate * exposure - gammaln(events + 1), 0);
}

/** Slope over curvature in the log mean alone. */
function meanStep(lines: readonly Line[], logMean: number, shape: number): number {
  const rate = Math.exp(logMean);
  let slope = 0, curve = 0;
  for (const { events, exposure } of lines) {
    const expected = rate * exposure, both = shape + expected;
    slope += (shape * (events - expected)) / both;
    curve -= (shape * expected * (shape + events)) / both ** 2;
  }
  return slope / curve;
}

/** Best mean for a given shape: the slope falls all the way, so Newton's steps from the pooled rate arrive. */
function bestLogMean(lines: readonly Line[], logShape: number, start: number): number {
  const shape = Math.exp(logShape);
  let logMean = start;
  for (let turn = 0; turn < 60; turn += 1) {
    const step = meanStep(lines, logMean, shape);
    logMean -= Math.max(-1, Math.min(1, step));
    if (Math.abs(step) < 1e-12) break;
  }
  return logMean;
}

/** A few Newton steps in both parameters, from a point already good to some seven digits. */
function polished(lines: readonly Line[], start: [number, number], pooled: number): GammaFit {
  let [logMean, logShape] = start, curve = slopes(lines, logMean, logShape), determinant = NaN;
  for (let turn = 0; turn < 4; turn += 1) {
    curve = slopes(lines, logMean, logShape);
    determinant = curve.meanMean * curve.shapeShape - curve.meanShape ** 2;
    logMean -= (curve.shapeShape * curve.mean - curve.meanShape * curve.shape) / determinant;
    logShape -= (curve.meanMean * curve.shape - curve.meanShape * curve.mean) / determinant;
  }
  return {
    logMean, logShape,
    seLogMean: Math.sqrt(-curve.shapeShape / determinant), seLogShape: Math.sqrt(-curve.meanMean / determinant),
    logLikelihood: logLikelihood(lines, logMean, logShape), logLikelihoodPooled: pooled,
  };
}

/**
 * How rates of use differ between lines, learnt from all lines together, to be combined with each line's own record.
 *
 * Counts are Poisson, their rates gamma-distributed; shape and mean by maximum marginal (negative binomial) likelihood
 * (Greenwood & Yule 1920, JRSS 83:255-279; Gaver & O'Muircheartaigh 1987, Technometrics 29:1-15). Where the likelihood
 * says "one common rate", that is the status, and the prior is the widest spread the counts do not speak against (log
 * likelihood lower by ½). Under five lines the spread is not estimated: one event's worth of the common rate. With nothing
 * used at all, half an event over all exposure (Jeffreys).
 *
 * @param events whole counts, one a line
 * @param exposures time (or services) over which each line was watched, weeks without use included
 * @throws {RangeError} if the lists are empty or unequal, a count is not whole or an exposure not above 0
 * @example
 * fitGammaPrior([5, 1, 5, 14, 3, 19, 1, 1, 4, 22], [94.3, 15.7, 62.9, 126, 5.24, 31.4, 1.05, 1.05, 2.1, 10.5]).shape; // => 0.8230
 * fitGammaPrior([0, 2], [10, 10]); // => { status: "few lines, fixed prior", shape: 1, rate: 8, fit: null }
 */
export function fitGammaPrior(events: readonly number[], exposures: readonly number[]): GammaPrior {
  requirePaired("fitGammaPrior", "events", events, "exposures", exposures);
  requireSome("fitGammaPrior", "events", events);
  events.forEach((count) => { requireWhole("fitGammaPrior", "events", count); });
  exposures.forEach((exposure) => { requirePositive("fitGammaPrior", "exposures", exposure); });
  const lines = events.map((count, i) => ({ events: count, exposure: exposures[i] as number }));
  const used = events.reduce((sum, count) => sum + count, 0), watched = exposures.reduce((sum, time) => sum + time, 0);
  if (used === 0) return { status: "nothing used yet", shape: 0.5, rate: watched, fit: null };
  if (lines.length < FEWEST_LINES) return { status: "few lines, fixed prior", shape: 1, rate: watched / (used + 0.5), fit: null };
  const start = Math.log(used / watched), pooled = pooledLogLikelihood(lines, used / watched);
  const profile = (logShape: number) => logLikelihood(lines, bestLogMean(lines, logShape, start), logShape);
  const top = maximumBetween(profile, LOOSEST, TIGHTEST);
  if (top.at > TIGHTEST - 0.5 || top.value < pooled + 1e-6) {
    const logShape = rootBetween((x) => profile(x) - (pooled - 0.5), LOOSEST, TIGHTEST, 1e-6), shape = Math.exp(logShape);
    return { status: "no difference between lines", shape, rate: shape / Math.exp(bestLogMean(lines, logShape, start)), fit: null };
  }
  const fit = polished(lines, [bestLogMean(lines, top.at, start), top.at], pooled), shape = Math.exp(fit.logShape);
  return { status: "fitted", shape, rate: shape / Math.exp(fit.logMean), fit };
}
