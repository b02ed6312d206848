import gammaln from "@stdlib/math-base-special-gammaln";
import { betaMixtureInterval } from "./beta-mixture.ts";
import type { BetaPart } from "./beta-mixture.ts";
import { logCount } from "./beta-prior.ts";
import type { Seen } from "./beta-prior.ts";
import { requireInside, requireShare, requireSome } from "./requirement.ts";

export interface PooledShare { share: number; low: number; high: number }

export interface PooledShares {
  /** What the words beside the figures must say: how far the models could be told apart. */
  status: "pooled" | "no difference between models" | "few models, fixed prior";
  /** Failures of all models over inspections of all models. */
  common: number;
  models: PooledShare[];
}

/** One point of the grid: a beta distribution of shares, with each model's log-likelihood under it. */
interface GridPoint { a: number; b: number; logWeight: number; counts: number[] }
/** Where the log-weights over the mean's log-odds have their hill, and how wide it is. */
interface Hill { at: number; width: number }

const FEWEST_MODELS = 5;
/**
 * The spread between models is a standard deviation of log-odds. Beyond 2 (odds a factor of seven up or down) models of
 * one position are not expected to lie; with few models it cannot be learnt and is taken to be 1, so that the common share
 * counts like one failure.
 */
const WIDEST_SPREAD = 2, FIXED_SPREAD = 1;
/** Points over the spread, and, for each, over the mean in widths of its hill: the sum over them is exact for a bell. */
const SPREADS = 16;
const MEANS = [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5];
/** A point this much less likely than the best (in logarithms) changes no figure. */
const NEGLIGIBLE = 9;

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/**
 * Logarithm of prior × likelihood at one point. The mean's prior is Jeffreys' (half a failure in one inspection), on the
 * log-odds scale the grid uses; the spread's is flat. To first order Beta(a, b) has log-odds with variance 1/a + 1/b.
 */
function weigh(seen: readonly Seen[], logOdds: number, spread: number): GridPoint {
  const share = logistic(logOdds), rest = logistic(-logOdds), a = 1 / (spread ** 2 * rest), b = 1 / (spread ** 2 * share);
  const counts = seen.map((one) => logCount(one, a, b));
  return { a, b, counts, logWeight: counts.reduce((sum, count) => sum + count, 0.5 * Math.log(share * rest)) };
}

/** Better place and width of a hill, by parabolas; the grid needs it to half a width only. */
function climbed(height: (x: number) => number, near: Hill): Hill {
  let { at, width } = near;
  for (let turn = 0; turn < 12; turn += 1) {
    const below = height(at - width), top = height(at), above = height(at + width);
    const curve = (below - 2 * top + above) / width ** 2, slope = (above - below) / (2 * width);
    const seenWidth = curve < 0 ? 1 / Math.sqrt(-curve) : 2 * width;
    const move = curve < 0 ? Math.max(-2 * seenWidth, Math.min(2 * seenWidth, -slope / curve)) : Math.sign(slope) * width;
    const settled = Math.abs(move) < 0.5 * seenWidth && seenWidth > 0.6 * width && seenWidth < 1.7 * width;
    at += move;
    width = seenWidth;
    if (settled) break;
  }
  return { at, width };
}

/** Grid points over the mean for one spread, and the hill they sit on; weights include the distance between points. */
function column(seen: readonly Seen[], spread: number, step: number, near: Hill): { hill: Hill; points: GridPoint[] } {
  const hill = climbed((x) => weigh(seen, x, spread).logWeight, near), area = Math.log(hill.width * step);
  const points = MEANS.map((widths) => weigh(seen, hill.at + widths * hill.width, spread));
  return { hill, points: points.map((point) => ({ ...point, logWeight: point.logWeight + area })) };
}

/** Columns for evenly divided spreads, each starting from its neighbour's hill. */
function columns(seen: readonly Seen[], low: number, high: number, start: Hill) {
  const step = (high - low) / SPREADS;
  let near = start;
  return Array.from({ length: SPREADS }, (_, i) => {
    const { hill, points } = column(seen, low + (i + 0.5) * step, step, near);
    near = hill;
    return { low: low + i * step, high: low + (i + 1) * step, points, best: Math.max(...points.map((point) => point.logWeight)) };
  });
}

/** Points over all spreads that matter: a coarse look at the whole range, then the same number of columns where they are. */
function grid(seen: readonly Seen[], start: Hill): GridPoint[] {
  const coarse = columns(seen, 0, WIDEST_SPREAD, start), best = Math.max(...coarse.map((one) => one.best));
  const kept = coarse.filter((one) => one.best > best - NEGLIGIBLE);
  const low = kept[0]?.low ?? 0, high = kept.at(-1)?.high ?? WIDEST_SPREAD;
  return (kept.length > SPREADS / 2 ? coarse : columns(seen, low, high, start)).flatMap((one) => one.points);
}

/** The points that matter, each with its weight and the logarithm of its beta function. */
function weighted(all: readonly GridPoint[]) {
  const best = Math.max(...all.map((point) => point.logWeight));
  return all.filter((point) => point.logWeight > best - NEGLIGIBLE).map(({ a, b, counts, logWeight }) =>
    ({ a, b, counts, weight: Math.exp(logWeight - best), logBeta: gammaln(a) + gammaln(b) - gammaln(a + b) }));
}

/**
 * How much more the models' counts vary than one common share makes them vary by chance; 0 or less when they do not.
 *
 * Slope of the beta-binomial likelihood in the correlation within models, taken where there is none (Tarone 1979,
 * Biometrika 66:585-590), as a share of its largest possible value.
 *
 * @throws {RangeError} if there is no model or a count is impossible
 * @example
 * excessSpread([{ failed: 0, inspected: 10 }, { failed: 10, inspected: 10 }]); // => 1
 * excessSpread([{ failed: 2, inspected: 10 }, { failed: 2, inspected: 10 }]); // => -0.1111
 */
export function excessSpread(seen: readonly Seen[]): number {
  requireSome("excessSpread", "seen", seen);
  seen.forEach(({ failed, inspected }) => { requireShare("excessSpread", failed, inspected); });
  const failed = seen.reduce((sum, one) => sum + one.failed, 0), inspected = seen.reduce((sum, one) => sum + one.inspected, 0);
  const pairs = (count: number) => count * (count - 1), share = failed / inspected;
  const possible = seen.reduce((sum, one) => sum + pairs(one.inspected), 0);
  if (failed === 0 || failed === inspected || possible === 0) return 0;
  const alike = seen.reduce((sum, one) => sum + pairs(one.failed) / share + pairs(one.inspected - one.failed) / (1 - share), 0);
  return alike / possible - 1;
}

/**
 * Each model's share of failures, pulled toward the other models by as much as its thin record deserves.
 *
 * Counts are binomial, shares beta-distributed; mean and spread of the shares are integrated over a grid with a weak prior
 * (Jeffreys' for the mean, flat for the standard deviation of log-odds between models: Gelman 2006, Bayesian Analysis
 * 1:515-534; Gelman et al., Bayesian Data Analysis, ch. 5). One estimate put in for both would give limits that are too
 * short with few models (Morris 1983, JASA 78:47-55).
 *
 * Where the models vary no more than chance makes them (status `no difference between models`) every model's share is the
 * common one; its limits still allow for the differences its own record cannot rule out. Under five models the spread is
 * not learnt: the common share counts like one failure.
 *
 * @param seen one entry a model
 * @param level probability that a model's limits hold its share
 * @throws {RangeError} if there is no model, a count is impossible or `level` not inside 0…1
 * @example
 * pooledShares([{ failed: 3, inspected: 20 }]).status; // => "few models, fixed prior"
 */
export function pooledShares(seen: readonly Seen[], level = 0.95): PooledShares {
  requireSome("pooledShares", "seen", seen);
  seen.forEach(({ failed, inspected }) => { requireShare("pooledShares", failed, inspected); });
  requireInside("pooledShares", "level", level);
  const failed = seen.reduce((sum, one) => sum + one.failed, 0), inspected = seen.reduce((sum, one) => sum + one.inspected, 0);
  const few = seen.length < FEWEST_MODELS, common = failed / inspected, alike = !few && excessSpread(seen) <= 0;
  const middle = (failed + 0.5) / (inspected + 1);
  const start = { at: Math.log(middle / (1 - middle)), width: 1 / Math.sqrt((inspected + 1) * middle * (1 - middle)) };
  const points = weighted(few ? column(seen, FIXED_SPREAD, 1, start).points : grid(seen, start));
  const models = seen.map((one, i) => {
    const parts: BetaPart[] = points.map(({ a, b, weight, logBeta, counts }) =>
      ({ a: a + one.failed, b: b + one.inspected - one.failed, weight, logBeta: logBeta + (counts[i] as number) }));
    const { mean, low, high } = betaMixtureInterval(parts, level);
    return alike ? { share: common, low: Math.min(low, common), high: Math.max(high, common) } : { share: mean, low, high };
  });
  const status = few ? "few models, fixed prior" : alike ? "no difference between models" : "pooled";
  return { status, common, models };
}
