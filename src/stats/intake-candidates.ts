import { countRegression } from "./count-regression.ts";
import type { CountFit, CountLine } from "./count-regression.ts";
import { bestSmoothing, holtWinters, holtWintersAhead } from "./exponential-smoothing.ts";
import type { SeasonState, SeasonWeights } from "./exponential-smoothing.ts";
import { yearWaves } from "./year-waves.ts";

/** What came in step by step (weeks, or months), oldest first. */
export interface Intake {
  /** Null where nothing can be said: closed, or not written. */
  readonly counts: readonly (number | null)[];
  /** Share of each step that was open, 0…1. */
  readonly open: readonly number[];
  /** Steps in a year. */
  readonly year: number;
}

export type CandidateName = "flat" | "same week last year" | "last year and curve" | "yearly curve" | "yearly curve with two humps" | "yearly curve in detail"
  | "recent weeks" | "recent weeks with season" | "curve and recent weeks";
/** The fit before, to begin from. */
export type Warm = Map<string, { readonly coefficients: readonly number[]; readonly size: number }>;

/** One way to look ahead. `means`: expected counts of whole open steps 1, 2, … after the last; null when the history is too short for it. */
export interface Candidate {
  readonly name: CandidateName;
  readonly means: (history: Intake, ahead: number, warm?: Warm) => readonly number[] | null;
}

/** Counts as if every step had been open throughout; null where little or nothing of it was. */
const rates = ({ counts, open }: Intake): (number | null)[] => counts.map((count, t) => (count === null || (open[t] ?? 0) < 0.3 ? null : count / (open[t] as number)));
const overall = (history: Intake): number | null => {
  let count = 0, share = 0;
  history.counts.forEach((one, t) => { if (one !== null) { count += one; share += history.open[t] ?? 0; } });
  return share > 0 ? count / share : null;
};
const steps = (ahead: number) => Array.from({ length: ahead }, (_, h) => h);

function flat(history: Intake, ahead: number): readonly number[] | null {
  const mean = overall(history);
  return mean === null ? null : steps(ahead).map(() => mean);
}

/** The value a year before; where that is not known the nearest one around it. */
function sameWeek(history: Intake, ahead: number): readonly number[] | null {
  const all = rates(history), year = Math.round(history.year), rest = overall(history);
  if (all.length < year || rest === null) return null;
  return steps(ahead).map((h) => {
    const at = all.length + (h % year) - year;
    return Math.max(0.2, all[at] ?? all[at - 1] ?? all[at + 1] ?? rest);
  });
}

/** A curve needs this many counts for each of its terms. */
const FEWEST_A_TERM = 5;
/** Steps from which more than two humps may be told. */
const FEWEST_OF_DETAIL = 80;

interface Curve { readonly pairs: number; readonly trend: boolean; readonly from: number; readonly key: string }

/** Log-linear regression on the time of year; `from` is the first step used. */
function curve(history: Intake, ahead: number, { pairs, trend, from, key }: Curve, warm?: Warm): readonly number[] | null {
  const { counts, open, year } = history;
  if (pairs > 2 && counts.length < FEWEST_OF_DETAIL) return curve(history, ahead, { pairs: 2, trend, from, key: `${key}, two` }, warm);
  const row = (t: number) => [1, ...(trend ? [t / year] : []), ...yearWaves(t, year, pairs)];
  const lines = counts.flatMap((count, t): CountLine[] => (count === null || t < from || (open[t] ?? 0) < 0.05 ? [] : [{ x: row(t), count: Math.round(count), share: open[t] as number }]));
  if (lines.length < year * 0.9 || lines.reduce((sum, { count }) => sum + count, 0) < FEWEST_A_TERM * row(0).length) return null;
  const fit = fitted(lines, { key, warm });
  if (fit.status !== "ok") return null;
  return steps(ahead).map((h) => Math.exp(row(counts.length + h).reduce((sum, one, j) => sum + one * (fit.coefficients[j] as number), 0)));
}

/** Poisson's variation of one, from the squared misses of a fit. */
function scatter(lines: readonly CountLine[], { means, coefficients }: CountFit): number {
  return lines.reduce((sum, { count }, i) => sum + (count - (means[i] as number)) ** 2 / (means[i] as number), 0) / Math.max(1, lines.length - coefficients.length);
}

/** Negative binomial where the counts vary more than Poisson ones; its size from how much more, which is as good here and much quicker than the likeliest. */
function fitted(lines: readonly CountLine[], { key, warm }: { key: string; warm: Warm | undefined }): CountFit {
  const before = warm?.get(key), first = countRegression(lines, before?.size ?? Infinity, before?.coefficients ?? null);
  if (first.status !== "ok") return first;
  const more = scatter(lines, first) - 1, mean = lines.reduce((sum, { count }) => sum + count, 0) / lines.length;
  const size = more < 0.05 ? Infinity : Math.max(0.3, mean / more);
  const fit = before ? first : countRegression(lines, size, first.coefficients);
  if (fit.status === "ok") warm?.set(key, { coefficients: fit.coefficients, size });
  return fit;
}

function recent(history: Intake, ahead: number): readonly number[] | null {
  const known = rates(history);
  if (known.filter((one) => one !== null).length < 4) return null;
  const { level } = bestSmoothing(known);
  return steps(ahead).map(() => level);
}

const WEIGHTS: readonly SeasonWeights[] = [0.05, 0.15, 0.3].flatMap((level) => [0.01, 0.05].flatMap((trend) =>
  [0.05, 0.2].flatMap((season) => [0.9, 0.98].map((damping) => ({ level, trend, season, damping })))));

/** Start of Holt–Winters from the first two years: mean, drift, and each step's factor evened out over its neighbours. */
function seasonStart(known: readonly (number | null)[], year: number): SeasonState | null {
  const mean = (list: readonly (number | null)[]) => { const some = list.filter((one) => one !== null); return some.length === 0 ? null : some.reduce((sum, one) => sum + one, 0) / some.length; };
  const first = mean(known.slice(0, year)), second = mean(known.slice(year, 2 * year));
  if (first === null || second === null || first <= 0) return null;
  const around = year > 20 ? 3 : 0;
  const factor = (t: number) => mean(Array.from({ length: 2 * around + 1 }, (_, k) => (t + k - around + year) % year).flatMap((at) =>
    [known[at], known[at + year]].map((one, back) => (one === null || one === undefined ? null : one / (back === 0 ? first : Math.max(second, 1e-6)))))) ?? 1;
  const raw = Array.from({ length: year }, (_, t) => Math.max(0.02, factor(t))), scale = year / raw.reduce((sum, one) => sum + one, 0);
  return { level: first, trend: (second - first) / year, seasons: raw.map((one) => one * scale) };
}

function recentWithSeason(history: Intake, ahead: number): readonly number[] | null {
  const known = rates(history), year = Math.round(history.year), start = known.length >= 2 * year ? seasonStart(known, year) : null;
  if (start === null) return null;
  const runs = WEIGHTS.map((weights) => ({ weights, ...holtWinters(known, start, weights, year) }));
  const best = runs.reduce((one, other) => (other.sse < one.sse ? other : one));
  return holtWintersAhead(best.state, known.length, ahead, best.weights.damping);
}

/** Plain mean of a one-hump curve and of recent steps, both on the last two years. */
function curveAndRecent(history: Intake, ahead: number, warm?: Warm): readonly number[] | null {
  const from = Math.max(0, history.counts.length - Math.round(2 * history.year));
  const last = { ...history, counts: history.counts.slice(from), open: history.open.slice(from) };
  const one = curve(history, ahead, { pairs: 1, trend: false, from, key: "two years" }, warm), other = recent(last, ahead);
  return one === null || other === null ? null : one.map((mean, h) => (mean + (other[h] as number)) / 2);
}

/** Plain mean of the same week last year and of a curve through all years: reels that come every year come near the same week. */
function lastYearAndCurve(history: Intake, ahead: number, warm?: Warm): readonly number[] | null {
  const one = sameWeek(history, ahead), other = curve(history, ahead, { pairs: 4, trend: true, from: 0, key: "four" }, warm);
  return one === null || other === null ? null : one.map((mean, h) => (mean + (other[h] as number)) / 2);
}

/**
 * Ways to look ahead, of which the shop's own past chooses one; the first is the fallback, the second the yardstick.
 *
 * The mean of two simple ones is a candidate of its own: means of forecasts are seldom the worst (Bates & Granger 1969,
 * Operational Research Quarterly 20:451-468).
 */
export const CANDIDATES: readonly Candidate[] = [
  { name: "flat", means: flat },
  { name: "same week last year", means: sameWeek },
  { name: "yearly curve", means: (history, ahead, warm) => curve(history, ahead, { pairs: 1, trend: true, from: 0, key: "one" }, warm) },
  { name: "yearly curve with two humps", means: (history, ahead, warm) => curve(history, ahead, { pairs: 2, trend: true, from: 0, key: "two" }, warm) },
  { name: "yearly curve in detail", means: (history, ahead, warm) => curve(history, ahead, { pairs: 4, trend: true, from: 0, key: "four" }, warm) },
  { name: "recent weeks", means: recent },
  { name: "recent weeks with season", means: recentWithSeason },
  { name: "curve and recent weeks", means: curveAndRecent },
  { name: "last year and curve", means: lastYearAndCurve },
];
