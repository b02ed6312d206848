import { dayAfter, daysFrom } from "../days.ts";
import { shopClosed } from "./bench-calendar.ts";
import type { Closure } from "./bench-calendar.ts";

/** Reels that came in on one day. */
export type DayCount = { readonly day: string; readonly tickets: number };

/** Days without a ticket that are no chance: `gap` is long and came once, so that nobody can tell closed from not written. */
export interface QuietTime { readonly from: string; readonly to: string; readonly kind: "closed" | "gap" }

/** Every day from the first ticket to the last known day. */
export interface DayLine {
  readonly first: string;
  readonly tickets: readonly number[];
  /** Whether reels could have come in: a usual day of the week, not closed and not in a gap. */
  readonly open: readonly boolean[];
  /** Share of the week's reels that come on Monday … Sunday. */
  readonly weekdays: readonly number[];
  readonly quiet: readonly QuietTime[];
}

/** A weekday counts as open from this share of the reels on; days around a quiet time that tell how usual a quiet day is. */
const FEWEST_OF_WEEK = 0.02, AROUND = 42;
/** A run of days without a ticket is no chance when it is as unlikely as this; from so many days on it is a gap, or the season when it comes again. */
const UNLIKELY = 1e-4, LONG = 21;
/** 364 days later is the same day of the week. */
const YEAR = 364;

/** Monday is 0. */
export const weekdayOf = (day: string): number => (daysFrom("2001-01-01", day) % 7 + 7) % 7;
/** The Monday of a day's week. */
export const mondayOf = (day: string): string => dayAfter(day, -weekdayOf(day));

function weekdayShares(days: readonly DayCount[]): number[] {
  const sums = [0, 0, 0, 0, 0, 0, 0];
  for (const { day, tickets } of days) sums[weekdayOf(day)] = (sums[weekdayOf(day)] ?? 0) + tickets;
  const total = sums.reduce((sum, one) => sum + one, 0), kept = sums.map((one) => (total > 0 && one / total >= FEWEST_OF_WEEK ? one : 0));
  const left = kept.reduce((sum, one) => sum + one, 0);
  return left > 0 ? kept.map((one) => one / left) : [1, 1, 1, 1, 1, 1, 1].map((one) => one / 7);
}

/** Runs of usual days without a ticket, as places of the first and last usual day. */
function runsOf(usual: readonly number[], tickets: readonly number[]): { from: number; to: number; length: number }[] {
  const runs: { from: number; to: number; length: number }[] = [];
  let length = 0;
  usual.forEach((at, i) => {
    length = tickets[at] === 0 ? length + 1 : 0;
    if (length === 1) runs.push({ from: at, to: at, length });
    else if (length > 1) runs[runs.length - 1] = { from: runs[runs.length - 1]?.from ?? at, to: usual[i] as number, length };
  });
  return runs;
}

/** Chance that a usual day near the run sees at least one reel; never certain. */
function busyNear(run: { from: number; to: number }, usual: readonly number[], tickets: readonly number[]): number {
  const near = usual.filter((at) => at >= run.from - AROUND && at <= run.to + AROUND && (at < run.from || at > run.to));
  return near.length === 0 ? 0 : near.filter((at) => (tickets[at] ?? 0) > 0).length / (near.length + 1);
}

/** Whether the same time of another year is without a ticket too. */
function comesAgain(run: { from: number; to: number }, usual: readonly number[], tickets: readonly number[]): boolean {
  return [-YEAR, YEAR].some((shift) => {
    const same = usual.filter((at) => at >= run.from + shift && at <= run.to + shift);
    return same.length >= (run.to - run.from) / 3 && same.filter((at) => tickets[at] === 0).length >= 0.8 * same.length;
  });
}

/**
 * Days in a line, and which of them the shop was open: the owner's closures, and times without a single reel that chance cannot explain.
 *
 * A day of the owner's closures with a ticket counts as open. A long quiet time that comes again a year later is the season, not a gap.
 *
 * @param days with at least one ticket, oldest first, none after `to`
 * @param to last day known
 */
export function openDays(days: readonly DayCount[], to: string, closures: readonly Closure[]): DayLine | null {
  const first = days[0]?.day;
  if (first === undefined) return null;
  const length = Math.max(0, daysFrom(first, to)) + 1, tickets = new Array<number>(length).fill(0), weekdays = weekdayShares(days), start = weekdayOf(first);
  for (const { day, tickets: count } of days) tickets[daysFrom(first, day)] = count;
  const open = tickets.map((count, at) => count > 0 || ((weekdays[(start + at) % 7] ?? 0) > 0 && !shopClosed(closures, dayAfter(first, at))));
  const usual = open.flatMap((one, at) => (one ? [at] : []));
  const quiet = runsOf(usual, tickets).flatMap((run): QuietTime[] => {
    const busy = busyNear(run, usual, tickets), long = run.to - run.from + 1 >= LONG;
    if (busy === 0 || (1 - busy) ** run.length > UNLIKELY || (long && comesAgain(run, usual, tickets))) return [];
    for (let at = run.from; at <= run.to; at += 1) open[at] = false;
    return [{ from: dayAfter(first, run.from), to: dayAfter(first, run.to), kind: long ? "gap" : "closed" }];
  });
  return { first, tickets, open, weekdays, quiet };
}

/**
 * Whether the shop will be open on a day to come: the owner's closures, and days on which it was closed every year so far, at least twice.
 */
export function opensOn(day: string, line: DayLine, closures: readonly Closure[]): boolean {
  if ((line.weekdays[weekdayOf(day)] ?? 0) === 0 || shopClosed(closures, day)) return false;
  const years: boolean[] = [];
  for (let at = daysFrom(line.first, day) - YEAR; at >= 0; at -= YEAR) if (at < line.open.length) years.push(line.quiet.some(({ kind, from, to }) => kind === "closed" && from <= dayAfter(line.first, at) && dayAfter(line.first, at) <= to));
  return years.length < 2 || years.includes(false);
}
