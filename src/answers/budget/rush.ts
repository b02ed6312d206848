import { dayAfter, daysFrom } from "../days.ts";
import type { IntakeDay } from "../stock/order-advice.ts";

/** The busiest thirteen weeks of the year, as they lie ahead (or around) a day. */
export interface Rush {
  readonly from: string;
  readonly until: string;
  /** Reels that came in during these weeks, over `years` years, and how that compares with the usual. */
  readonly tickets: number;
  readonly years: number;
  readonly times_usual: number;
}

const WEEKS = 52, LENGTH = 13, WEEK = 7;
/** Less than this over the usual is no rush. */
const LEAST = 1.1;

const weekOf = (day: string): number => Math.min(WEEKS - 1, Math.floor(daysFrom(`${day.slice(0, 4)}-01-01`, day) / WEEK));

/** Where the busiest stretch of a circle of weeks begins. */
function busiest(weeks: readonly number[]): { week: number; tickets: number } {
  const sums = weeks.map((_, at) => Array.from({ length: LENGTH }, (_, i) => weeks[(at + i) % WEEKS] as number).reduce((sum, one) => sum + one, 0));
  const most = Math.max(...sums);
  return { week: sums.indexOf(most), tickets: most };
}

/**
 * The thirteen weeks in which most reels come in, the next that are not over; null under a year of records, or where no
 * quarter of the year is a tenth busier than the others.
 *
 * @param intake tickets by day (a day may have several rows), oldest first, none after `as_of`
 */
export function rush(intake: readonly Pick<IntakeDay, "day" | "tickets">[], as_of: string): Rush | null {
  const first = intake[0]?.day, last = intake.at(-1)?.day;
  const years = first === undefined || last === undefined ? 0 : Math.floor((daysFrom(first, last) + 1 + WEEK) / 365);
  if (last === undefined || years === 0) return null;
  const since = dayAfter(last, -years * 365), weeks = Array.from({ length: WEEKS }, () => 0);
  for (const { day, tickets } of intake) if (day > since) weeks[weekOf(day)] = (weeks[weekOf(day)] as number) + tickets;
  const { week, tickets } = busiest(weeks), all = weeks.reduce((sum, one) => sum + one, 0), times_usual = tickets / ((all * LENGTH) / WEEKS);
  if (times_usual < LEAST) return null;
  const year = Number(as_of.slice(0, 4)), starts = [year - 1, year, year + 1].map((one) => dayAfter(`${one}-01-01`, week * WEEK));
  const from = starts.find((start) => dayAfter(start, LENGTH * WEEK - 1) > as_of) as string;
  return { from, until: dayAfter(from, LENGTH * WEEK - 1), tickets, years, times_usual };
}
