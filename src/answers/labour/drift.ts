import { quantile } from "../../stats/quantile.ts";
import { quantileLimits } from "../../stats/quantile-limits.ts";
import { withinRegression } from "../../stats/within-regression.ts";
import { grouped, groupNumbers, groupsOf } from "../grouped.ts";
import type { TimedWork } from "./work.ts";

/** The middle time of one job in one half of a year. */
export interface HalfYear {
  /** First day of the half year. */
  readonly from: string;
  readonly n: number;
  readonly median: number;
  /** Range in which the true middle plausibly lies; null where the jobs are too few for one. */
  readonly low: number | null;
  readonly high: number | null;
}

/** How one job on one kind of reel changed over the years. */
export interface Drift {
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly n: number;
  readonly halves: readonly HalfYear[];
  /** Times as long after a year, the same models by the same hands; null when it cannot be told. */
  readonly per_year: { readonly ratio: number; readonly low: number; readonly high: number } | null;
  readonly verdict: "longer" | "shorter" | "no change to be seen" | "too few jobs";
}

const FEWEST = 20, YEAR = 365.25 * 86_400_000;

const halfOf = ({ received_on }: TimedWork) => `${received_on.slice(0, 4)}-${received_on.slice(5, 7) <= "06" ? "01" : "07"}-01`;

function halves(rows: readonly TimedWork[]): HalfYear[] {
  return [...grouped(rows, halfOf)].map(([from, some]) => {
    const minutes = some.map(({ labour_min }) => labour_min), { low, high } = quantileLimits(minutes, 0.5);
    return { from, n: some.length, median: quantile(minutes, 0.5), low, high };
  }).sort((a, b) => (a.from < b.from ? -1 : 1));
}

function perYear(rows: readonly TimedWork[]): Drift["per_year"] {
  const hands = groupNumbers(rows, ({ maker }) => maker, ({ model }) => model, ({ technician }) => technician), days = new Map<string, number>();
  const yearOf = ({ received_on }: TimedWork) => days.get(received_on) ?? days.set(received_on, Date.parse(received_on) / YEAR).get(received_on) ?? NaN;
  const found = withinRegression(hands, [Float64Array.from(rows, yearOf)], Float64Array.from(rows, ({ labour_min }) => Math.log(labour_min)));
  const effect = "reason" in found ? null : found.effects[0];
  return effect ? { ratio: Math.exp(effect.coefficient), low: Math.exp(effect.low), high: Math.exp(effect.high) } : null;
}

/**
 * Whether jobs take longer or shorter than they did: the middle time of each half year (order-statistic limits), and the change a
 * year with a level for each model and technician, so that a new model or a new colleague is not taken for a change of pace.
 *
 * @param rows finished jobs with believable minutes
 * @returns most frequent job first
 */
export function drifts(rows: readonly TimedWork[]): readonly Drift[] {
  const jobs = groupsOf(rows, ({ job }) => job, ({ reel_kind }) => reel_kind);
  return jobs.sort((a, b) => b.length - a.length).flatMap((some) => {
    const [first] = some;
    if (!first) return [];
    const per_year = some.length < FEWEST ? null : perYear(some);
    const verdict = per_year === null ? "too few jobs" : per_year.low > 1 ? "longer" : per_year.high < 1 ? "shorter" : "no change to be seen";
    return [{ job: first.job, reel_kind: first.reel_kind, n: some.length, halves: halves(some), per_year, verdict }];
  });
}
