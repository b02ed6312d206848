import { MONTH_DAYS } from "../days.ts";
import type { Level, Rule, World } from "./world.ts";

/** Shares of jobs that the levels for the jobs are worked out for. */
export const JOB_SHARES = [0.9, 0.95, 0.98] as const;

/** What was known of a group on an order day. */
export interface KnownThen {
  /** The level that the advice fills up to. */
  readonly level: number | null;
  /** Levels at which so many jobs in 100 go straight through, by `JOB_SHARES`. */
  readonly job_levels: readonly number[];
  /** Pieces a day in the twelve months before. */
  readonly daily_use: number;
  /** Days from one order day until what is ordered on the next has come. */
  readonly protection_days: number;
}
/** By order day, then by group. */
export type KnownBook = ReadonlyMap<number, readonly KnownThen[]>;

const knownOf = (book: KnownBook, day: number, group: number): KnownThen => {
  const known = book.get(day)?.[group];
  if (!known) throw new RangeError(`replay: nothing is written for day ${day} and group ${group}`);
  return known;
};

/** Pieces a day in the year before. */
export const usedDaily = (book: KnownBook) => (day: number, group: number): number => knownOf(book, day, group).daily_use;

/** Orders under the advised level, up to it. */
export const asAdvised = (book: KnownBook): Rule => (day, group) => {
  const { level } = knownOf(book, day, group);
  return level === null ? null : { at: level - 1, to: level };
};

/** Orders under the level at which the share of jobs at this place of `JOB_SHARES` goes straight through, up to it. */
export const forTheJobs = (book: KnownBook, share: number): Rule => (day, group) => {
  const level = knownOf(book, day, group).job_levels[share];
  return level === undefined ? null : { at: level - 1, to: level };
};

/** Orders what went since the shelf was as it is at the beginning. */
export const oneWhenOneGoes = ({ groups }: World): Rule => (_day, group) => {
  const opening = groups[group]?.opening ?? 0;
  return { at: opening - 1, to: opening };
};

/**
 * Minimum: what the mean use of the last twelve months takes until the next order is there; maximum: a month's use more.
 * Common practice, no source.
 */
export const minMax = (book: KnownBook): Rule => (day, group): Level => {
  const { daily_use, protection_days } = knownOf(book, day, group);
  return { at: Math.ceil(daily_use * protection_days), to: Math.ceil(daily_use * (protection_days + MONTH_DAYS)) };
};
