import { withinRegression } from "../../stats/within-regression.ts";
import type { WithinEffect } from "../../stats/within-regression.ts";
import { groupNumbers, groupsOf } from "../grouped.ts";
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

const timesAsLong = (effect: WithinEffect | null | undefined): Partial<TimesAsLong> =>
  effect ? { ratio: Math.exp(effect.coefficient), low: Math.exp(effect.low), high: Math.exp(effect.high) } : {};

/** A column of the regression, what it is about, and the jobs in which it is something. */
interface Term<About> { readonly about: About; readonly column: Float64Array; readonly jobs: number }

const DRIVERS: readonly { name: Driver["name"]; of: (row: TimedWork) => number }[] = [
  { name: "each part replaced", of: (row) => row.parts_replaced },
  { name: "a stuck screw", of: (row) => Number(row.stuck_screws) },
  { name: "under warranty", of: (row) => Number(row.warranty) },
  { name: "reels that came together", of: (row) => Number(row.in_batch) },
];

const driverTerms = (rows: readonly TimedWork[]): Term<Driver["name"]>[] => DRIVERS.map(({ name, of }) => {
  const column = Float64Array.from(rows, of);
  return { about: name, column, jobs: column.reduce((n, value) => (value > 0 ? n + 1 : n), 0) };
});

/** The technician with most jobs; of two with as many, the first by name. */
function mostJobs(rows: readonly TimedWork[]): string | null {
  const counts = new Map<string, number>();
  for (const { technician } of rows) if (technician !== null) counts.set(technician, (counts.get(technician) ?? 0) + 1);
  return [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))[0]?.[0] ?? null;
}

/** One person's jobs of one year, by their places; null stands for nobody written. */
interface PersonYear { readonly technician: string | null; readonly year: number; readonly places: readonly number[]; readonly log_sum: number }

/** Everybody's years, in one pass over the jobs. */
function personYears(rows: readonly TimedWork[], years: Int32Array, logs: Float64Array): PersonYear[] {
  const places = Array.from(rows, (_, at) => at);
  return groupsOf(places, (at) => rows[at]?.technician, (at) => years[at]).map((some) => ({
    technician: rows[some[0] as number]?.technician ?? null, year: years[some[0] as number] as number, places: some, log_sum: some.reduce((sum, at) => sum + (logs[at] as number), 0),
  }));
}

/** A column that is one at these places. */
function ones(places: readonly number[], length: number): Float64Array {
  const column = new Float64Array(length);
  for (const at of places) column[at] = 1;
  return column;
}

const byNameAndYear = (a: PersonYear, b: PersonYear) => ((a.technician ?? "") < (b.technician ?? "") ? -1 : (a.technician ?? "") > (b.technician ?? "") ? 1 : a.year - b.year);

/** One term for each year of each technician but the one beside; jobs without a technician have terms too, which are not told. */
const technicianTerms = (people: readonly PersonYear[], beside: string | null, length: number): Term<PersonYear>[] =>
  people.filter(({ technician }) => technician !== beside).sort(byNameAndYear).map((about) => ({ about, column: ones(about.places, length), jobs: about.places.length }));

function yearTerms(years: Int32Array): Term<number>[] {
  const [, ...later] = [...new Set(years)].sort((a, b) => a - b);
  return later.map((year) => {
    const column = Float64Array.from(years, (one) => Number(one === year));
    return { about: year, column, jobs: column.reduce((n, one) => n + one, 0) };
  });
}

/** Mean of the logarithms beside that of the colleague in the same year, as a time; null when one of them has no job in it. */
function unadjusted(own: PersonYear, people: readonly PersonYear[], beside: string | null): number | null {
  const other = people.find(({ technician, year }) => technician === beside && year === own.year);
  return other === undefined ? null : Math.exp(own.log_sum / own.places.length) / Math.exp(other.log_sum / other.places.length);
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
  const length = rows.length, logs = Float64Array.from(rows, ({ labour_min }) => Math.log(labour_min)), year_of = Int32Array.from(rows, ({ received_on }) => Number(received_on.slice(0, 4)));
  const everybody = personYears(rows, year_of, logs), drivers = driverTerms(rows), years = yearTerms(year_of), people = technicianTerms(everybody, beside, length);
  const same_work = groupNumbers(rows, ({ job }) => job, ({ reel_kind }) => reel_kind, ({ maker }) => maker, ({ model }) => model);
  const found = withinRegression(same_work, [...drivers, ...years, ...people].map(({ column }) => column), logs);
  if ("reason" in found) return { reason: "too few jobs of one kind on one model", ...nothing };
  const at = (index: number, jobs: number) => (jobs < FEWEST ? {} : timesAsLong(found.effects[index]));
  return {
    reason: null, jobs: length, beside,
    drivers: drivers.map(({ about, jobs }, i) => ({ name: about, jobs, ...at(i, jobs) })),
    years: years.map(({ about, jobs }, i) => ({ year: about, jobs, ...at(drivers.length + i, jobs) })),
    technicians: people.flatMap(({ about, jobs }, i) => (about.technician === null ? []
      : [{ technician: about.technician, year: about.year, jobs, unadjusted: unadjusted(about, everybody, beside), ...at(drivers.length + years.length + i, jobs) }])),
  };
}
