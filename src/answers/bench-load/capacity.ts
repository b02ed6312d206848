import { quantile } from "../../stats/quantile.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { awayOn } from "../season/bench-calendar.ts";
import type { Closure } from "../season/bench-calendar.ts";
import { mondayOf, opensOn } from "../season/open-days.ts";
import type { DayLine } from "../season/open-days.ts";
import { hoursAWeek } from "./bench-hours.ts";
import type { BenchHours } from "./bench-hours.ts";
import type { BenchTicket } from "./job-times.ts";

/** Hours of a usual week and where they are from. */
export interface Capacity { readonly hours_a_week: number; readonly from: "written" | "busy weeks"; /** Weeks behind it, where it is from the records. */ readonly weeks: number }

const LOOK_BACK_WEEKS = 52, FEWEST_WEEKS = 8, BUSY = 0.9;

/** Hours of the jobs finished in each week of the last year, busy weeks last. */
function finishedHours(tickets: readonly BenchTicket[], as_of: string, overhead_min: number): number[] {
  const since = dayAfter(as_of, -7 * LOOK_BACK_WEEKS), sums = new Map<string, number>();
  for (const { finished_on, labour_min } of tickets) {
    if (finished_on === null || labour_min === null || finished_on <= since || finished_on > as_of) continue;
    const monday = mondayOf(finished_on);
    sums.set(monday, (sums.get(monday) ?? 0) + (Math.min(labour_min, 600) + overhead_min) / 60);
  }
  return [...sums.values()].sort((a, b) => a - b);
}

/** The owner's hours; where none are written what the shop did in its busy weeks (9 of 10 did less); null where that is not known. */
export function capacityOf(hours: BenchHours, tickets: readonly BenchTicket[], as_of: string, overhead_min: number): Capacity | null {
  const written = hoursAWeek(hours);
  if (written !== null) return { hours_a_week: written, from: "written", weeks: 0 };
  const done = finishedHours(tickets, as_of, overhead_min);
  return done.length < FEWEST_WEEKS ? null : { hours_a_week: quantile(done, BUSY), from: "busy weeks", weeks: done.length };
}

/** Help for a time, or more hours. */
export interface ExtraHours { readonly from: string; readonly to: string; readonly hours_a_week: number }

/** Minutes on each of `days` days from `first` on: the week's hours over its usual days, without who is away, with help. */
export function minutesByDay(first: string, days: number, { capacity, hours, line, closures, extra = [] }: {
  capacity: Capacity; hours: BenchHours; line: DayLine; closures: readonly Closure[]; extra?: readonly ExtraHours[];
}): Float64Array {
  const usual = line.weekdays.filter((share) => share > 0).length, missing = new Map(hours.people.map(({ name, hours_a_week }) => [name, hours_a_week]));
  return Float64Array.from({ length: days }, (_, at) => {
    const day = dayAfter(first, at);
    if (!opensOn(day, line, closures)) return 0;
    const away = awayOn(closures, day).reduce((sum, who) => sum + (missing.get(who) ?? 0), 0);
    const help = extra.reduce((sum, { from, to, hours_a_week }) => sum + (from <= day && day <= to ? hours_a_week : 0), 0);
    return (Math.max(0, capacity.hours_a_week - away + help) * 60) / Math.max(1, usual);
  });
}

/** Hours of the week that begins on a Monday, of minutes by day from `first` on; days before `first` count nothing. */
export function weekHours(monday: string, first: string, minutes: Float64Array): number {
  const from = daysFrom(first, monday);
  let sum = 0;
  for (let at = Math.max(0, from); at < Math.min(minutes.length, from + 7); at += 1) sum += minutes[at] as number;
  return sum / 60;
}

