import type { Report } from "../../db/engine.ts";
import { dayAfter } from "../days.ts";
import { seasonOf } from "../season/season-forecast.ts";
import type { Season } from "../season/season.ts";
import type { WorkMeans } from "../worker-work.ts";
import { USUAL_OVERHEAD } from "./bench-hours.ts";
import type { Backlog, BenchLoad, Changed, LoadStatus, LoadWeek } from "./bench-load.ts";
import type { BenchRecords } from "./bench-records.ts";
import { capacityOf, weekHours } from "./capacity.ts";
import type { Capacity } from "./capacity.ts";
import { jobTimes } from "./job-times.ts";
import { keptPromises } from "./kept-promises.ts";
import { changedText, loadText } from "./load-words.ts";
import { promises } from "./promise.ts";
import { openTickets, queuePlan } from "./queue-plan.ts";
import type { PlanBasis } from "./queue-plan.ts";
import { simulate } from "./simulate.ts";
import type { QueuePlan } from "./simulate.ts";
import { changedPlan } from "./what-if.ts";
import type { WhatIf } from "./what-if.ts";

/** Futures played through, and where they start. */
export const FUTURES = 1000;
const SEED = 20261;

/** Where nobody's hours are known the hours that reels take can still be had. */
const UNLIMITED: Capacity = { hours_a_week: 1e6, from: "written", weeks: 0 };

/** The forecast and what the plan rests on; the basis is null where `status` says why. */
function foundation(records: BenchRecords): { season: Season; basis: PlanBasis | null; status: LoadStatus; overhead_min: number } {
  const season = seasonOf(records.season), overhead_min = records.rates.beside_min ?? USUAL_OVERHEAD, { as_of } = records.season;
  const times = jobTimes(records.tickets, as_of), capacity = capacityOf(records.hours, records.tickets, as_of, overhead_min);
  const status: LoadStatus = season.line === null || season.ahead.length === 0 ? "no forecast" : times === null ? "no minutes" : capacity === null ? "no hours" : "ok";
  const basis = times && season.line && (status === "ok" || status === "no hours") ? { times, capacity: capacity ?? UNLIMITED, overhead_min, line: season.line } : null;
  return { season, basis, status, overhead_min };
}

async function played(plan: QueuePlan, season: Season, means: WorkMeans): Promise<LoadWeek[]> {
  const weeks = [...(season.rest ? [season.rest] : []), ...season.ahead], done = await simulate(plan, { paths: FUTURES, seed: SEED }, means), first = dayAfter(season.as_of, 1);
  return done.map((week, at) => {
    const forecast = weeks[at] as Season["ahead"][number];
    return { ...week, monday: forecast.monday, forecast, capacity_hours: weekHours(forecast.monday, first, plan.capacity) };
  });
}

function backlogOf(records: BenchRecords, basis: PlanBasis | null): Backlog {
  const { open, forgotten } = openTickets(records.tickets, records.season.as_of), awaited = new Set(records.awaited.map(({ ticket_no }) => ticket_no));
  const minutes = open.reduce((sum, ticket) => {
    const place = basis?.times.placeOf(ticket) ?? null, job = place === null ? undefined : basis?.times.jobs[place];
    return sum + (job ? Math.exp(job.log_mean + job.log_sd ** 2 / 2) + (basis?.overhead_min ?? 0) : 0);
  }, 0);
  return { open: open.length, hours: minutes / 60, waiting: open.filter(({ ticket_no }) => awaited.has(ticket_no)).length, forgotten };
}

/**
 * Reels, hours, line and promise dates of the weeks ahead. Plain rows in and out, so it may run in a worker.
 *
 * @throws the signal's reason when called off
 */
export async function benchLoadOf(records: BenchRecords, means: WorkMeans = {}): Promise<BenchLoad> {
  const report: Report = means.report ?? (() => undefined);
  report({ step: "Trying the ways to look ahead on the shop's own past", done: 0, total: null });
  await new Promise((resolve) => setTimeout(resolve));
  const { season, basis, status, overhead_min } = foundation(records), { as_of } = records.season;
  means.signal?.throwIfAborted();
  const told = { season, status, status_text: loadText(status), capacity: status === "ok" ? basis?.capacity ?? null : null, overhead_min, overhead_from: records.rates.beside_min === null ? "usual" : "written", backlog: backlogOf(records, basis), futures: FUTURES } as const;
  if (basis === null) return { ...told, weeks: [], promises: [], kept: null };
  const plan = queuePlan(records, season, basis), weeks = await played(plan, season, means);
  if (status !== "ok") return { ...told, weeks: weeks.map((week) => ({ ...week, capacity_hours: null })), promises: [], kept: null };
  report({ step: "Holding promises against what became of them", done: 0, total: null });
  const kept = keptPromises(records, basis);
  return { ...told, weeks, kept, promises: promises(plan, basis.times, { as_of, missing: records.missing, futures: FUTURES, seed: SEED, added_days: kept?.added_days ?? 0 }) };
}

/** The weeks ahead with a change made; `load` is the same without. The futures are the same, so that nothing differs by chance alone. */
export async function changedLoadOf({ records, load, what, currency }: { records: BenchRecords; load: BenchLoad; what: WhatIf; currency: string }, means: WorkMeans = {}): Promise<Changed> {
  const { season, capacity, overhead_min } = load, times = jobTimes(records.tickets, records.season.as_of);
  if (load.status !== "ok" || !times || !capacity || !season.line) return { what, weeks: [], moved: null, text: [] };
  const { plan, moved } = changedPlan(records, season, { times, capacity, overhead_min, line: season.line }, what), weeks = await played(plan, season, means);
  return { what, weeks, moved, text: changedText(load, { what, moved, weeks }, { help_cost: records.rates.hour_cost, currency }) };
}
