import { MONTH_DAYS } from "../days.ts";
import type { Level, Rule, World } from "./world.ts";

/** How careful the advice is: chances of running out against those set. The first is the advice as it is set. */
export const CAUTIONS = [
  { times: 1, policy: "as advised" }, { times: 0.5, policy: "advised, running out half as often" },
  { times: 2, policy: "advised, running out twice as often" }, { times: 3, policy: "advised, running out three times as often" },
] as const;

/** What was known of a group on an order day. */
export interface KnownThen {
  /** Levels that the advice fills up to, by `CAUTIONS`; null where it gives none. */
  readonly levels: readonly (number | null)[];
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

/** Orders under the advised level, up to it; `caution` is a place in `CAUTIONS`. */
export const asAdvised = (book: KnownBook, caution = 0): Rule => (day, group) => {
  const level = knownOf(book, day, group).levels[caution] ?? null;
  return level === null ? null : { at: level - 1, to: level };
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
