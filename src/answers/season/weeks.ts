import { dayAfter, daysFrom } from "../days.ts";
import { mondayOf, opensOn, weekdayOf } from "./open-days.ts";
import type { Closure } from "./bench-calendar.ts";
import type { DayLine } from "./open-days.ts";

/** One whole week, named by its Monday. */
export interface Week {
  readonly monday: string;
  readonly tickets: number;
  /** Share of a usual week's reels that could come in on the days the shop was open, 0…1. */
  readonly open: number;
}

const LEAST_OPEN = 0.05;

/** Share of a week's usual reels on the days it is open. */
function share(monday: string, weekdays: readonly number[], isOpen: (day: string) => boolean): number {
  const sum = weekdays.reduce((all, weight, at) => all + (isOpen(dayAfter(monday, at)) ? weight : 0), 0);
  return Math.min(1, sum);
}

/** Whole weeks of the past; the running one is left out unless its last day is over. */
export function wholeWeeks(line: DayLine): Week[] {
  const { first, tickets, open, weekdays } = line, end = tickets.length;
  const weeks: Week[] = [];
  for (let monday = mondayOf(first); daysFrom(first, monday) + 6 < end; monday = dayAfter(monday, 7)) {
    const from = daysFrom(first, monday), inside = tickets.slice(Math.max(0, from), from + 7);
    weeks.push({ monday, tickets: inside.reduce((sum, one) => sum + one, 0), open: share(monday, weekdays, (day) => open[daysFrom(first, day)] === true) });
  }
  return weeks;
}

/** What the weeks were like for the forecast: null where the shop was closed or nothing is known. */
export const countOf = ({ tickets, open }: Week): number | null => (open < LEAST_OPEN && tickets === 0 ? null : tickets);

/** Days to come, one by one. */
export interface DayAhead {
  readonly day: string;
  /** Place of its week among the weeks ahead; the rest of the running week is 0 when there is one. */
  readonly week: number;
  readonly open: boolean;
  /** Share of the week's reels that come on this day, were the shop open all week. */
  readonly share: number;
}

/** Every day after `as_of` to the end of the last of `weeks` whole weeks. */
export function daysAhead(as_of: string, weeks: number, line: DayLine, closures: readonly Closure[]): DayAhead[] {
  const rest = weekdayOf(as_of) === 6 ? 0 : 1, last = dayAfter(mondayOf(as_of), 7 * (weeks + 1) - 1), base = mondayOf(dayAfter(as_of, 1));
  return Array.from({ length: daysFrom(as_of, last) }, (_, i) => {
    const day = dayAfter(as_of, i + 1), week = Math.floor(daysFrom(base, day) / 7);
    return { day, week, open: opensOn(day, line, closures), share: line.weekdays[weekdayOf(day)] ?? 0 };
  }).filter(({ week }) => week < weeks + rest);
}
