import { USUAL_LEAD } from "./bench-records.ts";
import type { BenchRecords } from "./bench-records.ts";
import type { Capacity, ExtraHours } from "./capacity.ts";
import { minutesByDay } from "./capacity.ts";
import { jobDays, recentTickets, seasonMix } from "./job-times.ts";
import type { BenchTicket, JobTimes } from "./job-times.ts";
import type { OpenJob, QueuePlan, WeekPlan } from "./simulate.ts";
import { dayAfter, daysFrom } from "../days.ts";
import type { Closure } from "../season/bench-calendar.ts";
import { opensOn } from "../season/open-days.ts";
import type { DayLine } from "../season/open-days.ts";
import { openPart } from "../season/season-forecast.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";
import type { Season, WeekAhead } from "../season/season.ts";

/** Days past the last week in which the line is still worked off. */
const AFTER = 182;
/** An open ticket older than this is taken for forgotten: not fetched, or its end never written. */
export const FORGOTTEN_DAYS = 120;

/** Tickets in the shop on a day, oldest first, and those that look forgotten. */
export function openTickets(tickets: readonly BenchTicket[], as_of: string): { open: readonly BenchTicket[]; forgotten: number } {
  const inside = tickets.filter(({ received_on, finished, finished_on }) => received_on <= as_of && (finished_on === null ? !finished : finished_on > as_of));
  const open = inside.filter(({ received_on }) => daysFrom(received_on, as_of) <= FORGOTTEN_DAYS);
  return { open, forgotten: inside.length - open.length };
}

/** Jobs in the shop and the day from which each can be done. Day 0 is the day after `as_of`; a part due on it is there on 0. */
export function openJobs(
  { season: { as_of }, awaited }: { readonly season: Pick<BenchRecords["season"], "as_of">; readonly awaited: BenchRecords["awaited"] }, open: readonly BenchTicket[], times: Pick<JobTimes, "placeOf">,
): OpenJob[] {
  const parts = new Map(awaited.map((part) => [part.ticket_no, part]));
  return open.flatMap((ticket): OpenJob[] => {
    const job = times.placeOf(ticket), part = parts.get(ticket.ticket_no);
    const due = part === undefined ? 0 : part.due_on === null ? part.lead_days ?? USUAL_LEAD : daysFrom(as_of, part.due_on) - 1;
    return job === null ? [] : [{ job, not_before: Math.max(0, Math.ceil(due)) }];
  });
}

/** What of a week's scatter is its own, the level that all weeks share taken out. */
function ownScatter({ mean, size }: CountDistribution, level_sd: number): CountDistribution {
  const own = 1 / size - level_sd ** 2;
  return { mean, size: own > 1e-6 ? 1 / own : Infinity };
}

function weekPlan(week: WeekAhead, { season, line, closures, mix, last }: {
  season: Season; line: DayLine; closures: readonly Closure[]; mix: Float64Array; last: number;
}): WeekPlan {
  const first = dayAfter(season.as_of, 1), from = daysFrom(first, week.monday), days: number[] = [], shares: number[] = [];
  let sum = 0;
  for (let at = Math.max(0, from); at < from + 7; at += 1) {
    const day = dayAfter(first, at), share = line.weekdays[((at - from) % 7 + 7) % 7] ?? 0;
    if (share > 0 && opensOn(day, line, closures)) { days.push(at); shares.push(sum += share); }
  }
  return { tickets: openPart(ownScatter(week.whole, season.level_sd), Math.min(1, sum)), days, shares: shares.map((share) => share / sum), mix, wait_times: 1, ends: Math.min(last, from + 6) };
}

/** What a plan rests on beside the forecast. */
export interface PlanBasis { readonly times: JobTimes; readonly capacity: Capacity; readonly overhead_min: number; readonly line: DayLine }
/** Closed on top of the calendar, and hours on top of the usual ones. */
export interface PlanChanges { readonly closures: readonly Closure[]; readonly extra: readonly ExtraHours[] }
export const UNCHANGED: PlanChanges = { closures: [], extra: [] };

/** The weeks ahead as the simulation takes them; the rest of the running week comes first where there is one. */
export function queuePlan(records: BenchRecords, season: Season, about: PlanBasis, changes: PlanChanges = UNCHANGED): QueuePlan {
  const { times, capacity, overhead_min, line } = about, { as_of } = records.season, closures = [...records.season.closures, ...changes.closures], first = dayAfter(as_of, 1);
  const weeks = [...(season.rest ? [season.rest] : []), ...season.ahead], last = daysFrom(first, dayAfter(weeks.at(-1)?.monday ?? first, 6));
  const { open } = openTickets(records.tickets, as_of), past = jobDays(times, recentTickets(records.tickets, as_of));
  return {
    weeks: weeks.map((week) => weekPlan(week, { season, line, closures, mix: seasonMix(past, week.monday), last })),
    capacity: minutesByDay(first, last + 1 + AFTER, { capacity, hours: records.hours, line, closures, extra: changes.extra }),
    jobs: times.jobs, waits: times.waits, overhead_min, open: openJobs(records, open, times), level_sd: season.level_sd,
  };
}
