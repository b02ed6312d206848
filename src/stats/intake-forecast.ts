import { countRegression } from "./count-regression.ts";
import { CANDIDATES } from "./intake-candidates.ts";
import type { CandidateName, Intake } from "./intake-candidates.ts";
import { spreadAt, spreadCount, spreadsOf } from "./miss-spreads.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireWhole } from "./requirement.ts";
import { HORIZONS, rolledBack } from "./rolling-origin.ts";
import type { ForecastScore, Rolled } from "./rolling-origin.ts";
import { yearWaves } from "./year-waves.ts";

export type IntakeStatus = "ok" | "one to two years" | "under a year" | "too few steps";

export interface IntakeForecast {
  readonly status: IntakeStatus;
  readonly method: CandidateName | null;
  /** Of whole open steps 1, 2, … after the last; empty when there is none. */
  readonly ahead: readonly CountDistribution[];
  /** Relative standard deviation of the level that all steps of one future share. */
  readonly level_sd: number;
  /** How the candidates did in the shop's own past; empty when it is too short to try. */
  readonly scores: readonly ForecastScore[];
}

const FEWEST = 4;
/** Years looked back at, from at most so many points, and looks needed before they may choose. */
const YEARS_BACK = 4, MOST_ORIGINS = 52, ENOUGH = 8;
/** Weeks of one year differ by about this much around their mean (relative standard deviation): an assumption, a shop's rush is about twice its slack. */
const UNSEEN_SEASON = 0.35;
/** Another candidate must beat the mean of curve and recent weeks by this much. */
const MARGIN = 0.98;
const SAFE: CandidateName = "curve and recent weeks", YARDSTICK: CandidateName = "same week last year";

/** How many times more than Poisson the counts vary around a yearly curve with trend, or around their mean under a year. */
function dispersion({ counts, open, year }: Intake): number {
  const seasonal = counts.length >= year;
  const lines = counts.flatMap((count, t) => (count === null || (open[t] ?? 0) < 0.05 ? [] : [{
    x: seasonal ? [1, t / year, ...yearWaves(t, year, 2)] : [1], count: Math.round(count), share: open[t] as number }]));
  if (lines.length < 8) return 1.5;
  const fit = countRegression(lines);
  return fit.status === "ok" ? Math.max(1, fit.dispersion) : 1.5;
}

/** Flat, as wide as an unseen season, the doubt about the mean and the weeks' own scatter make it. */
function flatAhead(intake: Intake, ahead: number): IntakeForecast {
  const known = intake.counts.filter((count) => count !== null), mean = CANDIDATES[0]?.means(intake, ahead)?.[0] ?? null;
  if (known.length < FEWEST || mean === null) return { status: "too few steps", method: null, ahead: [], level_sd: 0, scores: [] };
  const total = known.reduce((sum, count) => sum + count, 0), level = Math.max(mean, 0.5 / known.length);
  const relative = UNSEEN_SEASON ** 2 + (dispersion(intake) - 1) / level + 1 / (total + 0.5);
  return { status: "under a year", method: "flat", ahead: Array.from({ length: ahead }, () => ({ mean: level, size: 1 / relative })), level_sd: UNSEEN_SEASON, scores: [] };
}

const scoreOf = (rolled: Rolled | undefined, horizon: number) => rolled?.scores.find((score) => score.horizon === horizon);

/**
 * The candidate with the least loss among those nowhere worse than the yardstick, the same week last year.
 *
 * @example
 * chosen([]); // => "curve and recent weeks"
 */
export function chosen(rolled: readonly Rolled[]): CandidateName {
  const yard = rolled.find(({ method }) => method === YARDSTICK), told = HORIZONS.filter((horizon) => (scoreOf(yard, horizon)?.n ?? 0) >= ENOUGH);
  if (told.length === 0) return SAFE;
  const loss = (one: Rolled) => told.reduce((sum, horizon) => sum + (scoreOf(one, horizon)?.pinball ?? Infinity) / Math.max(1e-9, scoreOf(yard, horizon)?.pinball ?? 1), 0);
  const never_worse = rolled.filter((one) => told.every((horizon) => scoreOf(one, horizon)?.n === scoreOf(yard, horizon)?.n && (scoreOf(one, horizon)?.pinball ?? Infinity) <= (scoreOf(yard, horizon)?.pinball ?? 0) + 1e-12));
  const best = never_worse.reduce<Rolled | null>((least, one) => (least === null || loss(one) < loss(least) ? one : least), null);
  const safe = never_worse.find(({ method }) => method === SAFE);
  return safe && best && loss(best) > MARGIN * loss(safe) ? SAFE : best?.method ?? YARDSTICK;
}

/** How far whole stretches of thirteen steps were off together, beyond what single steps explain. */
function levelSpread({ misses }: Rolled, spread: number): number {
  const stretches = new Map<number, { mean: number; actual: number; n: number }>();
  for (const { from, horizon, mean, actual } of misses) {
    if (horizon > 13) continue;
    const at = stretches.get(from) ?? { mean: 0, actual: 0, n: 0 };
    stretches.set(from, { mean: at.mean + mean, actual: at.actual + actual, n: at.n + 1 });
  }
  const whole = [...stretches.values()].filter(({ n, mean }) => n >= 6 && mean >= 5);
  const assumed = 0.1 ** 2 * 4, sum = whole.reduce((all, { mean, actual }) => all + (actual / mean - 1) ** 2 - spread / mean, 0);
  return Math.sqrt(Math.max(0.05 ** 2, (assumed + sum) / (4 + whole.length)));
}

/**
 * What comes in over the next `ahead` steps, by the way that would have done best in the shop's own past.
 *
 * Under a year of steps: flat, with a wide range, as there is no season to see. One to two years: one hump, not compared.
 * From two years on the candidates are tried from many points of the last two years (pinball loss at 1, 4 and 13 steps), and one
 * that was worse than the same week last year at any of them is not taken. Widths are those of the misses themselves.
 *
 * @throws {RangeError} if `ahead` is not a whole number of at least 1
 * @example
 * intakeForecast({ counts: [5, 7], open: [1, 1], year: 52.18 }, 13).status; // => "too few steps"
 */
export function intakeForecast(intake: Intake, ahead: number): IntakeForecast {
  requireWhole("intakeForecast", "ahead", ahead, 1);
  const { counts, year } = intake, n = counts.length, known = counts.filter((count) => count !== null).length;
  if (known < year * 0.95) return flatAhead(intake, ahead);
  const first = Math.max(Math.ceil(year) + 1, Math.min(Math.ceil(2 * year), n - 13), n - Math.round(YEARS_BACK * year));
  const every = Math.max(1, Math.ceil((n - first) / MOST_ORIGINS)), origins = Array.from({ length: Math.max(0, Math.ceil((n - first) / every)) }, (_, i) => first + i * every);
  const short = n < 2 * year + 13, longest = Math.min(ahead, 26);
  const assumed = { scatter: dispersion(intake) * (short ? 1.3 : 1), mean: counts.reduce<number>((sum, count) => sum + (count ?? 0), 0) / known, year };
  const rolled = rolledBack(intake, origins, longest, assumed), method = short ? SAFE : chosen(rolled);
  const means = CANDIDATES.find(({ name }) => name === method)?.means(intake, ahead), behind = rolled.find((one) => one.method === method);
  if (!means || !behind) return flatAhead(intake, ahead);
  const spreads = spreadsOf(behind.misses, assumed, n);
  return {
    status: short ? "one to two years" : "ok", method, level_sd: levelSpread(behind, spreads[0] ?? 1),
    ahead: means.map((mean, h) => spreadCount(mean, spreadAt(spreads, h + 1))), scores: rolled.flatMap(({ scores }) => scores),
  };
}
