import { withinRegression } from "../../stats/within-regression.ts";
import type { WithinEffect } from "../../stats/within-regression.ts";
import type { TimedWork } from "./work.ts";

/** How many times as long: the best figure and the range in which it plausibly lies. */
export interface TimesAsLong { readonly ratio: number; readonly low: number; readonly high: number }

/** Something about a job that goes with more or less time, everything else the same. */
export interface Driver extends Partial<TimesAsLong> {
  readonly name: "each part replaced" | "a stuck screw" | "under warranty" | "reels that came together";
  /** Jobs that have it. */
  readonly jobs: number;
}

/** One technician in one year, on the same jobs and reels as the colleague who did most. */
export interface TechnicianYear extends Partial<TimesAsLong> {
  readonly technician: string;
  readonly year: number;
  readonly jobs: number;
  /** The same without allowing for which jobs and reels each of them had; null when one of them has none. */
  readonly unadjusted: number | null;
}

/** The whole shop in a later year against the first, the same jobs on the same reels by the same hands. */
export interface ShopYear extends Partial<TimesAsLong> { readonly year: number; readonly jobs: number }

export interface TakesLonger {
  /** Null, or why nothing can be said. */
  readonly reason: string | null;
  readonly jobs: number;
  readonly drivers: readonly Driver[];
  /** The technician the others are held beside: the one with most jobs; null when none is written. */
  readonly beside: string | null;
  /** By name and year, never by speed. */
  readonly technicians: readonly TechnicianYear[];
  readonly years: readonly ShopYear[];
}

/** A technician's year, or a driver, is judged from this many jobs on. */
const FEWEST = 10;

const yearOf = ({ received_on }: TimedWork) => Number(received_on.slice(0, 4));
const sameWork = ({ job, reel_kind, maker, model }: TimedWork) => JSON.stringify([job, reel_kind, maker, model]);
const timesAsLong = (effect: WithinEffect | null | undefined): Partial<TimesAsLong> =>
  effect ? { ratio: Math.exp(effect.coefficient), low: Math.exp(effect.low), high: Math.exp(effect.high) } : {};

/** The mean of the logarithms, as a time. */
function typical(rows: readonly TimedWork[]): number | null {
  return rows.length === 0 ? null : Math.exp(rows.reduce((sum, { labour_min }) => sum + Math.log(labour_min), 0) / rows.length);
}

interface Term<About> { readonly about: About; readonly of: (row: TimedWork, at: number) => number; readonly jobs: number }

const DRIVERS: readonly { name: Driver["name"]; of: (row: TimedWork) => number }[] = [
  { name: "each part replaced", of: (row) => row.parts_replaced },
  { name: "a stuck screw", of: (row) => Number(row.stuck_screws) },
  { name: "under warranty", of: (row) => Number(row.warranty) },
  { name: "reels that came together", of: (row) => Number(row.in_batch) },
];

const counted = (rows: readonly TimedWork[], of: (row: TimedWork, at: number) => number) => rows.reduce((n, row, at) => (of(row, at) > 0 ? n + 1 : n), 0);

/** The technician with most jobs; of two with as many, the first by name. */
function mostJobs(rows: readonly TimedWork[]): string | null {
  const counts = new Map<string, number>();
  for (const { technician } of rows) if (technician !== null) counts.set(technician, (counts.get(technician) ?? 0) + 1);
  return [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))[0]?.[0] ?? null;
}

/** One term for each year of each technician but the one beside; jobs without a technician have terms too, which are not told. */
function technicianTerms(rows: readonly TimedWork[], years: readonly number[], beside: string | null): Term<{ technician: string | null; year: number }>[] {
  const keys = new Map<string, { technician: string | null; year: number }>();
  rows.forEach(({ technician }, at) => { if (technician !== beside) keys.set(`${technician ?? ""} ${years[at]}`, { technician, year: years[at] as number }); });
  return [...keys.values()].map((about) => {
    const of = (row: TimedWork, at: number) => Number(years[at] === about.year && row.technician === about.technician);
    return { about, of, jobs: counted(rows, of) };
  }).sort((a, b) => ((a.about.technician ?? "") < (b.about.technician ?? "") ? -1 : (a.about.technician ?? "") > (b.about.technician ?? "") ? 1 : a.about.year - b.about.year));
}

function yearTerms(rows: readonly TimedWork[], years: readonly number[]): Term<number>[] {
  const [, ...later] = [...new Set(years)].sort((a, b) => a - b);
  return later.map((year) => {
    const of = (_: TimedWork, at: number) => Number(years[at] === year);
    return { about: year, of, jobs: counted(rows, of) };
  });
}

/**
 * What goes with longer jobs, each thing beside the same job on the same model without it.
 *
 * Least squares on the logarithm of the minutes with a level for every job × kind of reel × model (`withinRegression`): parts
 * replaced, stuck screws, warranty, reels that came together, the year, and each technician's years beside the colleague who did
 * most. It says what goes together, not what causes it: who gets the awkward reels is not in the records.
 *
 * @param rows finished jobs with believable minutes
 */
export function whatTakesLonger(rows: readonly TimedWork[]): TakesLonger {
  const beside = mostJobs(rows), nothing = { jobs: rows.length, drivers: [], beside, technicians: [], years: [] };
  if (rows.length === 0) return { reason: "no finished job has minutes written", ...nothing };
  const drivers = DRIVERS.map((driver) => ({ ...driver, jobs: counted(rows, driver.of) }));
  const year_of = rows.map(yearOf), people = technicianTerms(rows, year_of, beside), years = yearTerms(rows, year_of);
  const columns = [...drivers, ...years, ...people].map(({ of }) => rows.map(of));
  const found = withinRegression(rows.map(sameWork), columns, rows.map(({ labour_min }) => Math.log(labour_min)));
  if ("reason" in found) return { reason: "too few jobs of one kind on one model", ...nothing };
  const at = (index: number, jobs: number) => (jobs < FEWEST ? {} : timesAsLong(found.effects[index]));
  const unadjusted = (technician: string, year: number) => {
    const of = (name: string | null) => typical(rows.filter((row, at) => year_of[at] === year && row.technician === name)), own = of(technician), other = of(beside);
    return own === null || other === null ? null : own / other;
  };
  return {
    reason: null, jobs: rows.length, beside,
    drivers: drivers.map(({ name, jobs }, i) => ({ name, jobs, ...at(i, jobs) })),
    years: years.map(({ about, jobs }, i) => ({ year: about, jobs, ...at(drivers.length + i, jobs) })),
    technicians: people.flatMap(({ about: { technician, year }, jobs }, i) =>
      (technician === null ? [] : [{ technician, year, jobs, unadjusted: unadjusted(technician, year), ...at(drivers.length + years.length + i, jobs) }])),
  };
}
