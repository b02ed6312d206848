import { dayAfter, daysFrom, YEAR_DAYS } from "../days.ts";

export type IntakeDay = { readonly day: string; readonly tickets: number };

export interface SeasonFactor {
  /** Intake of the days ahead against the usual; 1 where no season can be seen. */
  readonly factor: number;
  /** Full years of records it rests on; under two there is no season to see. */
  readonly years: number;
  readonly tickets: number;
}

/** A window shorter than this would follow single busy days. */
const SHORTEST_WINDOW = 28;
/** Records that begin after the new-year holiday and end before it are still a full year. */
const CLOSED_DAYS = 7;
/** The factor is drawn toward 1 as if this many more tickets had come in as usual: our own choice, for small shops. */
const CALM = 10;

/** The same day of an earlier year; 29 February becomes the 28th. */
const yearsBefore = (day: string, years: number) => `${Number(day.slice(0, 4)) - years}${day.slice(4).replace("-02-29", "-02-28")}`;

/**
 * How busy the days after `as_of` were in the years before, against the mean of those years.
 *
 * @param intake tickets by day, oldest first, none after `as_of`
 * @param days length of the time ahead
 */
export function seasonFactor(intake: readonly IntakeDay[], as_of: string, days: number): SeasonFactor {
  const first = intake[0]?.day, last = intake.at(-1)?.day;
  const years = first === undefined || last === undefined ? 0 : Math.floor((daysFrom(first, last) + 1 + CLOSED_DAYS) / 365);
  const length = Math.max(SHORTEST_WINDOW, Math.round(days));
  if (last === undefined || years < 2 || length > YEAR_DAYS) return { factor: 1, years, tickets: 0 };
  const within = (from: string, to: string) =>
    intake.reduce((sum, { day, tickets }) => (day >= from && day <= to ? sum + tickets : sum), 0);
  const windows = Array.from({ length: years }, (_, y) => yearsBefore(dayAfter(as_of, 1), y + 1))
    .map((from) => ({ from, to: dayAfter(from, length - 1) }))
    .filter(({ to }) => to <= last);
  const start = dayAfter(yearsBefore(last, years), 1);
  const usual = within(start, last) / (daysFrom(start, last) + 1);
  const tickets = windows.reduce((sum, { from, to }) => sum + within(from, to), 0);
  return { factor: (tickets + CALM) / (usual * length * windows.length + CALM), years, tickets };
}
