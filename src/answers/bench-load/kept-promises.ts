import { drawLogNormal } from "../../stats/draws.ts";
import { quantile } from "../../stats/quantile.ts";
import { seededRandom } from "../../stats/random.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { minutesByDay } from "./capacity.ts";
import type { BenchRecords } from "./bench-records.ts";
import type { BenchTicket } from "./job-times.ts";
import { openTickets } from "./queue-plan.ts";
import type { PlanBasis } from "./queue-plan.ts";
import { dayOfMinutes } from "./promise.ts";

/** How dates promised in this way would have been kept over the last year, each made with only what was in the shop then. */
export interface KeptPromises {
  /** Reels whose end is known, or whose promised day is over. */
  readonly n: number;
  readonly kept: number;
  /** Days promised, in the middle. */
  readonly days: number | null;
  /** The same reels under "two weeks" for everything. */
  readonly two_weeks: number;
  /** Days added to today's dates, because earlier ones came out too short; 0 when they did not. */
  readonly added_days: number;
}

const LOOK_BACK = 365, EVERY = 3, FUTURES = 100, SHARE = 0.8, TWO_WEEKS = 14, FEWEST = 30, FAR = 200;

/** `on` in days since 2000. */
interface Made { readonly on: number; readonly days: number; /** Null while it is not ready. */ readonly took: number | null }

const numberOf = (day: string): number => daysFrom("2000-01-01", day);

/** Days promised to each reel of one day. */
function madeOn(day: string, { records, basis, today }: { records: BenchRecords; basis: PlanBasis; today: readonly BenchTicket[] }): Made[] {
  const { times, overhead_min, capacity, line } = basis, on = numberOf(day), random = seededRandom(on);
  const ahead = openTickets(records.tickets, dayAfter(day, -1)).open.flatMap((ticket) => (ticket.finished_on === day ? [] : [times.placeOf(ticket)])).filter((place) => place !== null);
  const free = minutesByDay(dayAfter(day, 1), FAR, { capacity, hours: records.hours, line, closures: records.season.closures });
  free.forEach((minutes, at) => { free[at] = minutes + (at === 0 ? 0 : (free[at - 1] as number)); });
  const minutes = (place: number) => { const { log_mean, log_sd } = times.jobs[place] as PlanBasis["times"]["jobs"][number]; return drawLogNormal(random, log_mean, log_sd) + overhead_min; };
  const before = Array.from({ length: FUTURES }, () => ahead.reduce((sum, place) => sum + minutes(place), 0));
  return today.flatMap((ticket): Made[] => {
    const place = times.placeOf(ticket), job = place === null ? null : times.jobs[place];
    if (place === null || !job) return [];
    const ready = before.map((sum) => {
      const opened = dayOfMinutes(free, sum + minutes(place)), waits = times.waits.length > 0 && random() < job.wait_chance;
      return opened + (waits ? (times.waits[Math.floor(random() * times.waits.length)] as number) : 0);
    }).sort((a, b) => a - b);
    return [{ on, days: Math.ceil(ready[Math.ceil(SHARE * FUTURES) - 1] as number) + 1, took: ticket.finished_on === null ? null : daysFrom(day, ticket.finished_on) }];
  });
}

/** Days to add so that 8 of 10 earlier dates would have been kept. */
function toAdd(made: readonly Made[], by: string): number {
  const today = numberOf(by), late: number[] = [];
  for (const { on, days, took } of made) if (took !== null && on + took <= today) late.push(took - days);
  return late.length < FEWEST ? 0 : Math.max(0, Math.ceil(quantile(late, SHARE)));
}

/** Walks through the last year; null with too few reels to say. */
export function keptPromises(records: BenchRecords, basis: PlanBasis): KeptPromises | null {
  const { as_of } = records.season, by_day = new Map<string, BenchTicket[]>();
  for (const ticket of records.tickets) if (ticket.received_on > dayAfter(as_of, -LOOK_BACK) && ticket.received_on <= as_of) by_day.set(ticket.received_on, [...(by_day.get(ticket.received_on) ?? []), ticket]);
  const made: Made[] = [];
  let n = 0, kept = 0, two_weeks = 0;
  const days: number[] = [];
  for (const [day, today] of [...by_day].filter((_, at) => at % EVERY === 0)) {
    const added = toAdd(made, day), now = madeOn(day, { records, basis, today });
    for (const { days: bare, took } of now) {
      const promised = bare + added;
      if (took === null && dayAfter(day, promised) >= as_of) continue;
      n += 1;
      days.push(promised);
      kept += Number(took !== null && took <= promised);
      two_weeks += Number(took !== null && took <= TWO_WEEKS);
    }
    made.push(...now);
  }
  return n < FEWEST ? null : { n, kept, days: quantile(days, 0.5), two_weeks, added_days: toAdd(made, as_of) };
}
