import { dayAfter, daysFrom } from "../days.ts";
import type { Season } from "../season/season.ts";
import type { BenchRecords } from "./bench-records.ts";
import { weekHours } from "./capacity.ts";
import type { ExtraHours } from "./capacity.ts";
import { recentTickets } from "./job-times.ts";
import type { BenchTicket, JobTimes } from "./job-times.ts";
import { queuePlan } from "./queue-plan.ts";
import type { PlanBasis } from "./queue-plan.ts";
import type { QueuePlan, WeekPlan } from "./simulate.ts";

/** Changes to try on the weeks ahead; null is none. */
export interface WhatIf {
  /** Share of the rush's planned full services that an offer brings in during the slack weeks before it. */
  readonly offer_share: number | null;
  readonly help: ExtraHours | null;
  readonly closed: { readonly from: string; readonly to: string } | null;
  /** Day on which one more order goes to the suppliers, and days until it is there. */
  readonly order: { readonly on: string; readonly days: number } | null;
}
export const NO_CHANGE: WhatIf = { offer_share: null, help: null, closed: null, order: null };

/** What an offer moves, and what it is worth. */
export interface Moved { readonly services: number; readonly from_weeks: number; readonly to_weeks: number; /** Mean charge of a planned full service; null where charges are not written. */ readonly charge: number | null }

const FULL = "full service", SLACK = 0.9;
const meanMinutes = ({ log_mean, log_sd }: QueuePlan["jobs"][number]) => Math.exp(log_mean + log_sd ** 2 / 2);
const single = (rising: Float64Array): Float64Array => rising.map((share, at) => share - (at === 0 ? 0 : (rising[at - 1] as number)));
function rising(shares: Float64Array): Float64Array {
  const total = shares.reduce((sum, one) => sum + one, 0);
  let sum = 0;
  return shares.map((share) => (sum += share / total));
}

/** Expected hours of a week's reels, taking in and packing included. */
export function expectedHours({ tickets, mix }: Pick<WeekPlan, "tickets" | "mix">, { jobs, overhead_min }: Pick<QueuePlan, "jobs" | "overhead_min">): number {
  const minutes = single(mix).reduce((sum, share, job) => sum + share * (jobs[job] ? meanMinutes(jobs[job]) : 0), 0);
  return (tickets.mean * (minutes + overhead_min)) / 60;
}

/** Share of the full services that were planned, and what one brings in. */
function plannedServices(tickets: readonly BenchTicket[]): { share: number; charge: number | null } {
  const full = tickets.filter(({ job }) => job === FULL), planned = full.filter(({ opening }) => opening === "planned"), charged = planned.flatMap(({ charged: sum }) => (sum === null ? [] : [sum]));
  return { share: full.length === 0 ? 0 : planned.length / full.length, charge: charged.length === 0 ? null : charged.reduce((sum, one) => sum + one, 0) / charged.length };
}

/** Reels of each job taken out of a week (below 0: put in). */
function withJobs(week: WeekPlan, take: (job: number, reels: number) => number): { week: WeekPlan; taken: Float64Array } {
  const reels = single(week.mix).map((share) => share * week.tickets.mean), taken = reels.map((one, job) => take(job, one)), left = reels.map((one, job) => Math.max(0, one - (taken[job] as number)));
  const mean = left.reduce((sum, one) => sum + one, 0);
  return { week: mean <= 0 ? week : { ...week, tickets: { mean, size: week.tickets.size }, mix: rising(left) }, taken };
}

/** Moves planned full services out of the weeks over the hours there are, into the slack weeks before them. */
function moveServices(plan: QueuePlan, capacity: readonly number[], share: number, about: { planned: number; times: JobTimes }): { plan: QueuePlan; services: number; from_weeks: number; to_weeks: number } {
  const hours = plan.weeks.map((week) => expectedHours(week, plan)), rush = hours.map((need, at) => (capacity[at] as number) > 0 && need > (capacity[at] as number)), first = rush.indexOf(true);
  const room = hours.map((need, at) => (at < first ? Math.max(0, SLACK * (capacity[at] as number) - need) : 0)), free = room.reduce((sum, one) => sum + one, 0);
  const isFull = (job: number) => about.times.jobs[job]?.job === FULL;
  if (first < 0 || free <= 0) return { plan, services: 0, from_weeks: 0, to_weeks: 0 };
  const moved = new Float64Array(plan.jobs.length);
  const all = plan.weeks.map((week, at) => (rush[at] ? withJobs(week, (job, reels) => (isFull(job) ? share * about.planned * reels : 0)) : null));
  for (const one of all) one?.taken.forEach((reels, job) => { moved[job] = (moved[job] as number) + reels; });
  const needed = moved.reduce((sum, reels, job) => sum + (reels * (meanMinutes(plan.jobs[job] as QueuePlan["jobs"][number]) + plan.overhead_min)) / 60, 0), part = needed > 0 ? Math.min(1, free / needed) : 0;
  const weeks = plan.weeks.map((week, at) => {
    if (rush[at]) return withJobs(week, (job, reels) => (isFull(job) ? part * share * about.planned * reels : 0)).week;
    const into = (room[at] as number) / free;
    return into > 0 ? withJobs(week, (job) => -part * into * (moved[job] as number)).week : week;
  });
  return { plan: { ...plan, weeks }, services: part * moved.reduce((sum, one) => sum + one, 0), from_weeks: rush.filter(Boolean).length, to_weeks: room.filter((one) => one > 0).length };
}

/** Reels of the days that are closed on top come in the next open week: customers wait, they do not vanish. */
function postponed(plan: QueuePlan, usual: QueuePlan): QueuePlan {
  let carried = 0;
  const weeks = plan.weeks.map((week, at) => {
    const lost = Math.max(0, (usual.weeks[at]?.tickets.mean ?? 0) - week.tickets.mean);
    if (lost > 0 || week.days.length === 0) { carried += lost; return week; }
    const mean = week.tickets.mean + carried;
    carried = 0;
    return { ...week, tickets: { ...week.tickets, mean } };
  });
  return { ...plan, weeks };
}

/** The plan with the changes made, and what an offer moved. */
export function changedPlan(records: BenchRecords, season: Season, basis: PlanBasis, what: WhatIf): { plan: QueuePlan; moved: Moved | null } {
  const closures = what.closed ? [{ ...what.closed, who: null, text: "" }] : [], extra = what.help ? [what.help] : [];
  const usual = queuePlan(records, season, basis), { as_of } = season, first = dayAfter(as_of, 1);
  let plan = postponed(queuePlan(records, season, basis, { closures, extra }), usual), moved: Moved | null = null;
  if (what.order) {
    const from = daysFrom(first, what.order.on) + what.order.days;
    plan = { ...plan, weeks: plan.weeks.map((week) => (week.ends >= from ? { ...week, wait_times: 0 } : week)) };
  }
  if (what.offer_share !== null && what.offer_share > 0) {
    const { share: planned, charge } = plannedServices(recentTickets(records.tickets, as_of)), mondays = [...(season.rest ? [season.rest] : []), ...season.ahead].map(({ monday }) => monday);
    const done = moveServices(plan, mondays.map((monday) => weekHours(monday, first, plan.capacity)), what.offer_share, { planned, times: basis.times });
    plan = done.plan;
    moved = { services: done.services, from_weeks: done.from_weeks, to_weeks: done.to_weeks, charge };
  }
  return { plan, moved };
}
