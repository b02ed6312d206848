import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { pooledTimes } from "../../stats/pooled-times.ts";
import { quantile } from "../../stats/quantile.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { grouped } from "../grouped.ts";
import { withSlips } from "../labour/slips.ts";

/** One row of `bench-tickets.sql`. */
export type BenchTicket = {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly finished_on: string | null;
  readonly finished: boolean;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly opening: string | null;
  readonly outcome: string | null;
  readonly labour_min: number | null;
  readonly parts_wait_days: number | null;
  readonly charged: number | null;
};

/** One job on one kind of reel: how long it takes, and how often it waits for parts. */
export interface JobTime {
  readonly job: string | null;
  readonly reel_kind: string | null;
  /** Jobs with minutes behind the times. */
  readonly n: number;
  /** Of the logarithm of minutes at the bench. */
  readonly log_mean: number;
  readonly log_sd: number;
  /** Share of such jobs that wait for a part, drawn toward all jobs where few are known. */
  readonly wait_chance: number;
}

export interface JobTimes {
  readonly jobs: readonly JobTime[];
  /** Place in `jobs` of a ticket's job and reel kind. */
  readonly placeOf: (ticket: Pick<BenchTicket, "job" | "reel_kind">) => number | null;
  /** Days waited for parts by the jobs that waited, in the order of their arrival. */
  readonly waits: readonly number[];
  /** Jobs whose wait is written, whether or not they waited. */
  readonly waits_known: number;
}

const YEARS_BACK = 2, FEW = 200, LEAN = 8, Z80 = normalQuantile(0.8, 0, 1);
const keyOf = ({ job, reel_kind }: Pick<BenchTicket, "job" | "reel_kind">) => JSON.stringify([job, reel_kind]);

/** The last two years, or all where they hold too little. */
export function recentTickets(tickets: readonly BenchTicket[], as_of: string): readonly BenchTicket[] {
  const since = dayAfter(as_of, -Math.round(365.25 * YEARS_BACK)), recent = tickets.filter(({ received_on }) => received_on > since && received_on <= as_of);
  return recent.length >= FEW ? recent : tickets.filter(({ received_on }) => received_on <= as_of);
}

/** Logarithmic mean and spread of each group's minutes, thin groups leaning on the others. */
function timesOf(groups: readonly (readonly number[])[]): { log_mean: number; log_sd: number }[] {
  const pooled = pooledTimes(groups);
  if ("times" in pooled) return pooled.times.map(({ median, p80 }) => ({ log_mean: Math.log(median), log_sd: Math.log(p80 / median) / Z80 }));
  const all = groups.flat().map(Math.log), log_mean = quantile(all, 0.5), log_sd = Math.max(0, quantile(all, 0.8) - log_mean) / Z80;
  return groups.map(() => ({ log_mean, log_sd }));
}

/** Times and waits by job and kind of reel; null when not a single job has its minutes written. */
export function jobTimes(tickets: readonly BenchTicket[], as_of: string): JobTimes | null {
  const recent = recentTickets(tickets, as_of), timed = withSlips(recent).flatMap(({ row, slip }) => (row.labour_min !== null && row.labour_min > 0 && slip === null && row.finished ? [row] : []));
  if (timed.length === 0) return null;
  const groups = [...grouped(timed, keyOf)], times = timesOf(groups.map(([, rows]) => rows.map(({ labour_min }) => labour_min as number)));
  const known = recent.filter(({ parts_wait_days }) => parts_wait_days !== null), waited = known.filter(({ parts_wait_days }) => (parts_wait_days as number) > 0);
  const share = known.length === 0 ? 0 : waited.length / known.length, known_by = grouped(known, keyOf), waited_by = grouped(waited, keyOf);
  const jobs = groups.map(([key, rows], at): JobTime => ({
    job: rows[0]?.job ?? null, reel_kind: rows[0]?.reel_kind ?? null, n: rows.length, ...(times[at] as { log_mean: number; log_sd: number }),
    wait_chance: ((waited_by.get(key)?.length ?? 0) + LEAN * share) / ((known_by.get(key)?.length ?? 0) + LEAN),
  }));
  const places = new Map(groups.map(([key], at) => [key, at])), by_job = new Map([...grouped(jobs.map((job, at) => ({ job: job.job, n: job.n, at })), ({ job }) => job)].map(([job, list]) =>
    [job, list.reduce((most, one) => (one.n > most.n ? one : most)).at]));
  return { jobs, placeOf: (ticket) => places.get(keyOf(ticket)) ?? by_job.get(ticket.job) ?? null, waits: waited.map(({ parts_wait_days }) => parts_wait_days as number), waits_known: known.length };
}

const SEASON_DAYS = 32, YEAR = 365.25, FEWEST_OF_SEASON = 30;

/** Days between two days of the year, whichever way round is shorter. */
function apart(one: string, other: string): number {
  const days = Math.abs(daysFrom(one, other)) % YEAR;
  return Math.min(days, YEAR - days);
}

/** Jobs that came in, by their day. */
export interface JobDays {
  readonly jobs: number;
  /** Of each day the place of each in `JobTimes.jobs`. */
  readonly days: ReadonlyMap<string, readonly number[]>;
}

export function jobDays({ jobs, placeOf }: JobTimes, tickets: readonly BenchTicket[]): JobDays {
  const days = new Map<string, number[]>();
  for (const ticket of tickets) {
    const place = placeOf(ticket), same = days.get(ticket.received_on);
    if (place === null) continue;
    if (same) same.push(place);
    else days.set(ticket.received_on, [place]);
  }
  return { jobs: jobs.length, days };
}

/**
 * Share of each job among the reels of a week to come: the jobs that came in around the same time of other years, rising to 1.
 *
 * @param monday of the week
 */
export function seasonMix({ jobs, days }: JobDays, monday: string): Float64Array {
  const all = [...days], near = all.filter(([day]) => apart(day, monday) <= SEASON_DAYS), counted = (some: typeof all) => some.reduce((sum, [, places]) => sum + places.length, 0);
  const some = counted(near) >= FEWEST_OF_SEASON ? near : all, total = counted(some), shares = new Float64Array(jobs);
  for (const [, places] of some) for (const place of places) shares[place] = (shares[place] as number) + 1 / total;
  for (let at = 1; at < shares.length; at += 1) shares[at] = (shares[at] as number) + (shares[at - 1] as number);
  return shares;
}
