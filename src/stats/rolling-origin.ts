import { countBand } from "./count-band.ts";
import { meanStep, pinballLoss } from "./forecast-scores.ts";
import { CANDIDATES } from "./intake-candidates.ts";
import type { Candidate, CandidateName, Intake, Warm } from "./intake-candidates.ts";
import { demandQuantile } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";

/** Steps ahead at which candidates are compared. */
export const HORIZONS = [1, 4, 13] as const;
const LEVEL = 0.8, TAUS = [0.1, 0.5, 0.9];
/** Misses weigh against this many assumed ones while few are known. */
const ASSUMED = 10;

/** A look ahead from step `from` (steps known then), `horizon` steps on, and what came. */
interface Miss { readonly from: number; readonly horizon: number; readonly mean: number; readonly actual: number }

/** How one candidate did at one horizon. */
export interface ForecastScore {
  readonly method: CandidateName;
  readonly horizon: number;
  /** Looks ahead behind the figures. */
  readonly n: number;
  /** Mean over the tenth, the middle and the ninth tenth. */
  readonly pinball: number;
  /** Null when the history is too short for its yardstick. */
  readonly mase: number | null;
  readonly covered: number;
}

/** One candidate looked back at from every origin. */
export interface Rolled { readonly method: CandidateName; readonly misses: readonly Miss[]; readonly scores: readonly ForecastScore[] }

/** Horizons that share their spread: misses of one alone are too few. */
const span = (horizon: number): number => (horizon <= 2 ? 0 : horizon <= 8 ? 1 : 2);

/**
 * A count of this mean that varies `spread` times as much as a Poisson one.
 *
 * @example
 * spreadCount(10, 3); // => { mean: 10, size: 5 }
 */
export const spreadCount = (mean: number, spread: number): CountDistribution => ({ mean, size: spread <= 1 + 1e-9 || mean === 0 ? Infinity : mean / (spread - 1) });

/** What spreads are taken for while few misses are known: `scatter` of single steps, and a level that wanders. */
export interface Assumed { readonly scatter: number; readonly mean: number; readonly year: number }
/** Relative standard deviation of the level today, and of what a year adds to it: assumptions, soon outweighed by the misses. */
const LEVEL_TODAY = 0.05, LEVEL_A_YEAR = 0.2;
/** Misses to come are larger than those by which a way was chosen. */
const UNSEEN = 1.1;
/** Years after which a miss counts half. */
const HALF_LIFE = 1;
/** A horizon of each span. */
const MIDDLES = [1, 5, 14];

/**
 * How many times more than Poisson counts the misses vary, by span of horizons, never less than once and never less than nearer ones.
 * A miss counts half as much for every year that has passed.
 *
 * @param now steps known; later misses are not looked at
 * @example
 * spreadsOf([], { scatter: 2, mean: 0, year: 52 }, 100); // => [2.2, 2.2, 2.2]
 */
export function spreadsOf(misses: readonly Miss[], { scatter, mean, year }: Assumed, now: number): readonly number[] {
  const sums = MIDDLES.map((horizon) => ({ n: ASSUMED, sum: ASSUMED * (scatter + (LEVEL_TODAY ** 2 + (LEVEL_A_YEAR ** 2 * horizon) / year) * mean) }));
  for (const miss of misses) {
    const at = sums[span(miss.horizon)];
    if (!at || miss.from + miss.horizon > now) continue;
    const weight = 0.5 ** ((now - miss.from) / year / HALF_LIFE);
    at.n += weight;
    at.sum += (weight * (miss.actual - miss.mean) ** 2) / Math.max(miss.mean, 0.2);
  }
  let least = 1;
  return sums.map(({ n, sum }) => (least = Math.max(least, (UNSEEN * sum) / n)));
}

/**
 * Spread at one horizon, from the spreads by span.
 *
 * @example
 * spreadAt([1, 2, 3], 4); // => 2
 */
export const spreadAt = (spreads: readonly number[], horizon: number): number => spreads[span(horizon)] ?? 1;

/** Steps ahead that are looked at: near ones closer together. */
const LOOKED: ReadonlySet<number> = new Set([1, 2, 3, 4, 6, 8, 10, 13, 16, 20, 26]);

function scored(method: CandidateName, misses: readonly Miss[], assumed: Assumed, yardstick: number | null): ForecastScore[] {
  const spreads = new Map<number, readonly number[]>();
  // Only what was known on that day sets the width.
  const spreadsThen = (from: number) => spreads.get(from) ?? spreads.set(from, spreadsOf(misses, assumed, from)).get(from) as readonly number[];
  return HORIZONS.flatMap((horizon) => {
    const some = misses.filter((miss) => miss.horizon === horizon);
    if (some.length === 0) return [];
    let pinball = 0, off = 0, covered = 0;
    for (const { from, mean, actual } of some) {
      const spread = spreadAt(spreadsThen(from), horizon);
      const count = spreadCount(mean, spread), quantiles = TAUS.map((tau) => demandQuantile(tau, count)), band = countBand(count, LEVEL);
      quantiles.forEach((quantile, i) => { pinball += pinballLoss(actual, quantile, TAUS[i] as number) / TAUS.length; });
      off += Math.abs(actual - (quantiles[1] as number));
      covered += Number(actual >= band.low && actual <= band.high);
    }
    return [{ method, horizon, n: some.length, pinball: pinball / some.length, mase: yardstick ? off / some.length / yardstick : null, covered }];
  });
}

/** Looks ahead of one candidate from every origin. */
function missesOf(candidate: Candidate, intake: Intake, origins: readonly number[], ahead: number): Miss[] {
  const warm: Warm = new Map();
  return origins.flatMap((from) => {
    const before = { ...intake, counts: intake.counts.slice(0, from), open: intake.open.slice(0, from) };
    const means = candidate.means(before, Math.min(ahead, intake.counts.length - from), warm) ?? [];
    return means.flatMap((mean, h): Miss[] => {
      const actual = intake.counts[from + h] ?? null, open = intake.open[from + h] ?? 0;
      return actual === null || open <= 0 || !LOOKED.has(h + 1) ? [] : [{ from, horizon: h + 1, mean: mean * open, actual }];
    });
  });
}

/**
 * Every candidate tried from points of the past, each time with only what was known then (rolling origin: Tashman 2000,
 * International Journal of Forecasting 16:437-450).
 *
 * @param origins numbers of steps known, rising
 * @example
 * rolledBack({ counts: [1, 1, 1, 1, 1, 1], open: [1, 1, 1, 1, 1, 1], year: 4 }, [4, 5], 1, { scatter: 1, mean: 1, year: 4 })[0].misses.length; // => 2
 */
export function rolledBack(intake: Intake, origins: readonly number[], ahead: number, assumed: Assumed, candidates: readonly Candidate[] = CANDIDATES): Rolled[] {
  const yardstick = meanStep(intake.counts.slice(0, origins[0] ?? 0), Math.round(intake.year));
  return candidates.map((candidate) => {
    const misses = missesOf(candidate, intake, origins, ahead);
    return { method: candidate.name, misses, scores: scored(candidate.name, misses, assumed, yardstick) };
  });
}
