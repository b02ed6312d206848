import { countBand } from "./count-band.ts";
import { meanStep, pinballLoss } from "./forecast-scores.ts";
import { CANDIDATES } from "./intake-candidates.ts";
import type { Candidate, CandidateName, Intake, Warm } from "./intake-candidates.ts";
import { fitsOf, spreadAt, spreadCount, spreadsOf } from "./miss-spreads.ts";
import type { Assumed, Miss } from "./miss-spreads.ts";
import { demandQuantile } from "./negative-binomial.ts";

/** Steps ahead at which candidates are compared. */
export const HORIZONS = [1, 4, 13] as const;
const LEVEL = 0.8, TAUS = [0.1, 0.5, 0.9];

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
      return actual === null || open <= 0 || !LOOKED.has(h + 1) ? [] : [{ from, horizon: h + 1, mean: mean * open, actual, fits: fitsOf(mean * open, actual) }];
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
