import { drawLogNormal } from "../../stats/draws.ts";
import { seededRandom } from "../../stats/random.ts";
import type { Random } from "../../stats/random.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { USUAL_LEAD } from "./bench-records.ts";
import type { MissingPart } from "./bench-records.ts";
import type { JobTime, JobTimes } from "./job-times.ts";
import type { QueuePlan } from "./simulate.ts";

/** When a reel taken in today is ready, for one job. */
export interface JobPromise {
  readonly job: string | null;
  readonly reel_kind: string | null;
  /** Jobs behind its time. */
  readonly n: number;
  /** Day by which half, and 8 of 10, such reels are ready; null when not within half a year after the weeks ahead. */
  readonly middle: string | null;
  readonly promise: string | null;
  readonly days: number | null;
  /** Share of the futures in which it waits for a part, and the part that is likeliest to be missed. */
  readonly waits: number;
  readonly missing: { readonly name: string; readonly due_on: string | null } | null;
}

const SHARE = 0.8;

/** Minutes free up to the end of each day. */
function summed(capacity: Float64Array): Float64Array {
  let sum = 0;
  return capacity.map((minutes) => (sum += minutes));
}

/** First day by whose end so many minutes were free; `length` when never. */
export function dayOfMinutes(free: Float64Array, minutes: number): number {
  let low = 0, high = free.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((free[middle] as number) >= minutes) high = middle;
    else low = middle + 1;
  }
  return low;
}

const minutesOf = ({ log_mean, log_sd }: QueuePlan["jobs"][number], overhead_min: number, random: Random) => drawLogNormal(random, log_mean, log_sd) + overhead_min;

/** Minutes of the reels that are before it, once for every future. */
export function minutesBefore(plan: Pick<QueuePlan, "open" | "jobs" | "overhead_min">, random: Random, futures: number): Float64Array {
  return Float64Array.from({ length: futures }, () => plan.open.reduce((sum, { job }) => sum + minutesOf(plan.jobs[job] as QueuePlan["jobs"][number], plan.overhead_min, random), 0));
}

/** A part this job may miss today: how likely, and the day it is there. */
interface Miss { readonly chance: number; readonly there: (opened: number) => number; readonly part: MissingPart }

function missesOf({ job, reel_kind }: JobTime, missing: readonly MissingPart[], as_of: string): Miss[] {
  return missing.filter((part) => part.job === job && part.reel_kind === reel_kind && part.jobs > 0).map((part): Miss => {
    const due = part.due_on === null ? null : daysFrom(as_of, part.due_on) - 1, lead = part.lead_days ?? USUAL_LEAD;
    return { part, chance: (part.needed + 0.5) / (part.jobs + 5), there: (opened) => (due === null ? opened + lead : Math.max(opened, due)) };
  });
}

/** Day on which the job is ready in one future, and whether it waited. */
function readyOn(opened: number, job: JobTime, misses: readonly Miss[], { waits, random }: { waits: readonly number[]; random: Random }): { ready: number; waited: boolean } {
  let ready = opened;
  for (const miss of misses) if (random() < miss.chance) ready = Math.max(ready, miss.there(opened));
  if (waits.length > 0 && random() < job.wait_chance) ready = Math.max(ready, opened + (waits[Math.floor(random() * waits.length)] as number));
  return { ready: Math.ceil(ready), waited: ready > opened };
}

/**
 * Promise dates for a reel taken in today, job by job: it comes after what is in the shop, takes its minutes, and waits when a part is
 * missing: one that is not on the shelf now, or one that will be missed as such jobs missed parts before.
 *
 * @param capacity minutes by day, day 0 being tomorrow
 */
export function promises(plan: QueuePlan, times: JobTimes, about: { as_of: string; missing: readonly MissingPart[]; futures: number; seed: number; added_days: number }): JobPromise[] {
  const { as_of, futures, seed, added_days } = about, free = summed(plan.capacity), before = minutesBefore(plan, seededRandom(seed), futures);
  return times.jobs.map((job, at): JobPromise => {
    const random = seededRandom(seed + 1 + at), misses = missesOf(job, about.missing, as_of), ready = new Float64Array(futures);
    let waited = 0;
    for (let path = 0; path < futures; path += 1) {
      const opened = dayOfMinutes(free, (before[path] as number) + minutesOf(job, plan.overhead_min, random)), done = readyOn(opened, job, misses, { waits: times.waits, random });
      ready[path] = done.ready;
      waited += Number(done.waited);
    }
    ready.sort();
    const within = (share: number) => { const day = ready[Math.ceil(share * futures) - 1] as number; return day >= free.length ? null : day; };
    const middle = within(0.5), most = within(SHARE), likeliest = misses.length === 0 ? null : misses.reduce((best, one) => (one.chance > best.chance ? one : best)).part;
    return {
      job: job.job, reel_kind: job.reel_kind, n: job.n, middle: middle === null ? null : dayAfter(as_of, middle + 1),
      promise: most === null ? null : dayAfter(as_of, nextOpen(plan.capacity, most + added_days) + 1), days: most === null ? null : nextOpen(plan.capacity, most + added_days) + 1,
      waits: waited / futures, missing: likeliest && { name: likeliest.name ?? likeliest.interchange, due_on: likeliest.due_on },
    };
  });
}

/** That day, or the first one after it on which the bench works. */
function nextOpen(capacity: Float64Array, day: number): number {
  for (let at = day; at < capacity.length; at += 1) if ((capacity[at] as number) > 0) return at;
  return day;
}
