import { drawGamma, drawLogNormal, drawPoisson } from "../../stats/draws.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";
import { seededRandom } from "../../stats/random.ts";
import type { Random } from "../../stats/random.ts";
import type { WorkMeans } from "../worker-work.ts";
import { emptyLine, inShop, workOff } from "./queue.ts";
import type { JobLine } from "./queue.ts";

/** Reels and jobs of one week to come. */
export interface WeekPlan {
  /** Reels, closed days taken out. */
  readonly tickets: CountDistribution;
  /** Its days on which reels come, from 0, and the share that has come by each, rising to 1. */
  readonly days: readonly number[];
  readonly shares: readonly number[];
  /** Share of each job, rising to 1. */
  readonly mix: Float64Array;
  /** Chance of waiting for parts, times this. */
  readonly wait_times: number;
  /** Its last day. */
  readonly ends: number;
}

/** What is in the shop already. */
export interface OpenJob { readonly job: number; /** Day its part is due, 0 when it waits for none. */ readonly not_before: number }

export interface QueuePlan {
  readonly weeks: readonly WeekPlan[];
  /** Minutes of every day, some way past the last week, so that the line can be worked off. */
  readonly capacity: Float64Array;
  readonly jobs: readonly { readonly log_mean: number; readonly log_sd: number; readonly wait_chance: number }[];
  readonly waits: readonly number[];
  readonly overhead_min: number;
  readonly open: readonly OpenJob[];
  /** Relative standard deviation of the level all weeks of one future share. */
  readonly level_sd: number;
}

/** Figures of one week over all futures. */
export interface Spread { readonly mean: number; readonly low: number; readonly high: number }
export interface SimulatedWeek {
  readonly tickets: Spread;
  /** Hours that the week's reels take, taking in and packing included. */
  readonly hours: Spread;
  /** Hours of work in the line at the week's end. */
  readonly line_hours: Spread;
  readonly in_shop: Spread;
  /** Days until a reel of that week is ready: mean, the middle one, and within which 8 of 10 are. */
  readonly wait: { readonly mean: number; readonly middle: number; readonly most: number } | null;
}

const LONGEST_WAIT = 400, TURN = 100;

/** Place in a rising list of shares, for a number in 0…1. */
function pick(shares: ArrayLike<number>, at: number): number {
  let low = 0, high = shares.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((shares[middle] as number) > at) high = middle;
    else low = middle + 1;
  }
  return low;
}

function drawCount(random: Random, { mean, size }: CountDistribution, level: number): number {
  if (mean <= 0) return 0;
  return drawPoisson(random, size === Infinity ? mean * level : drawGamma(random, size, size / (mean * level)));
}

/** One job's minutes and wait. */
function addJob(line: JobLine, at: number, { job, wait_times }: { job: number; wait_times: number }, plan: QueuePlan, random: Random): void {
  const { log_mean, log_sd, wait_chance } = plan.jobs[job] as QueuePlan["jobs"][number];
  line.minutes[at] = drawLogNormal(random, log_mean, log_sd) + plan.overhead_min;
  line.wait_days[at] = plan.waits.length > 0 && random() < wait_chance * wait_times ? plan.waits[Math.floor(random() * plan.waits.length)] as number : 0;
  line.not_before[at] = 0;
}

/** One future: fills the line; returns reels of each week. */
function fillLine(plan: QueuePlan, line: { -readonly [Key in keyof JobLine]: JobLine[Key] }, sourceOf: (part: number) => Random): number[] {
  const first = sourceOf(0);
  let at = 0;
  for (const { job, not_before } of plan.open) {
    addJob(line, at, { job, wait_times: 1 }, plan, first);
    line.arrives[at] = 0;
    line.not_before[at] = not_before;
    at += 1;
  }
  const level = plan.level_sd > 0 ? drawGamma(first, plan.level_sd ** -2, plan.level_sd ** -2) : 1;
  const counts = plan.weeks.map(({ tickets, days, shares, mix, wait_times }, week) => {
    const random = sourceOf(week + 1);
    const count = days.length === 0 ? 0 : Math.min(drawCount(random, tickets, level), line.arrives.length - at), on = new Array<number>(days.length).fill(0);
    for (let k = 0; k < count; k += 1) { const day = pick(shares, random()); on[day] = (on[day] as number) + 1; }
    days.forEach((day, d) => {
      for (let k = 0; k < (on[d] as number); k += 1, at += 1) { addJob(line, at, { job: pick(mix, random()), wait_times }, plan, random); line.arrives[at] = day; }
    });
    return count;
  });
  line.count = at;
  return counts;
}

const spread = (values: Float64Array): Spread => {
  const sorted = values.slice().sort(), at = (share: number) => sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] as number;
  return { mean: sorted.reduce((sum, one) => sum + one, 0) / sorted.length, low: at(0.1), high: at(0.9) };
};

/** Days within which a share of the reels was ready, from a count of each number of days. */
function withinShare(waits: Int32Array, total: number, share: number): number {
  let sum = 0;
  for (let days = 0; days < waits.length; days += 1) if ((sum += waits[days] as number) >= share * total) return days;
  return waits.length - 1;
}

class Tally {
  readonly #tickets: Float64Array[]; readonly #hours: Float64Array[]; readonly #left: Float64Array[]; readonly #inside: Float64Array[]; readonly #waits: Int32Array[];
  constructor(weeks: number, paths: number) {
    const room = () => Array.from({ length: weeks }, () => new Float64Array(paths));
    [this.#tickets, this.#hours, this.#left, this.#inside] = [room(), room(), room(), room()];
    this.#waits = Array.from({ length: weeks }, () => new Int32Array(LONGEST_WAIT + 1));
  }

  add(path: number, plan: QueuePlan, counts: readonly number[], line: JobLine, { ready, left }: { ready: Float64Array; left: Float64Array }): void {
    const inside = inShop(plan.capacity.length, line, ready);
    let job = plan.open.length;
    plan.weeks.forEach(({ ends }, week) => {
      const waits = this.#waits[week] as Int32Array;
      let minutes = 0;
      for (const end = job + (counts[week] as number); job < end; job += 1) {
        minutes += line.minutes[job] as number;
        const wait = Math.min(LONGEST_WAIT, (ready[job] as number) - (line.arrives[job] as number));
        waits[wait] = (waits[wait] as number) + 1;
      }
      (this.#tickets[week] as Float64Array)[path] = counts[week] as number;
      (this.#hours[week] as Float64Array)[path] = minutes / 60;
      (this.#left[week] as Float64Array)[path] = (left[ends] as number) / 60;
      (this.#inside[week] as Float64Array)[path] = inside[ends] as number;
    });
  }

  weeks(): SimulatedWeek[] {
    return this.#waits.map((waits, week) => {
      const total = waits.reduce((sum, one) => sum + one, 0), days = waits.reduce((sum, one, at) => sum + one * at, 0);
      return {
        tickets: spread(this.#tickets[week] as Float64Array), hours: spread(this.#hours[week] as Float64Array),
        line_hours: spread(this.#left[week] as Float64Array), in_shop: spread(this.#inside[week] as Float64Array),
        wait: total === 0 ? null : { mean: days / total, middle: withinShare(waits, total, 0.5), most: withinShare(waits, total, 0.8) },
      };
    });
  }
}

/** Room for the jobs of one future, with much to spare. */
function roomFor({ weeks, open }: QueuePlan): number {
  return open.length + Math.ceil(weeks.reduce((sum, { tickets: { mean, size } }) => sum + 6 * mean + 30 + (mean === 0 || size === Infinity ? 0 : (8 * mean) / Math.sqrt(size)), 0));
}

/**
 * The weeks to come, in many futures: reels drawn by the forecast, jobs by the mix of the season, minutes by job, worked off first
 * come, first served against the hours there are.
 *
 * @param seed the same seed gives the same futures, so that two plans can be compared
 * @throws the signal's reason when called off
 */
export async function simulate(plan: QueuePlan, { paths, seed }: { paths: number; seed: number }, { signal, report }: WorkMeans = {}): Promise<SimulatedWeek[]> {
  const line = emptyLine(roomFor(plan)), ready = new Float64Array(line.arrives.length), left = new Float64Array(plan.capacity.length), tally = new Tally(plan.weeks.length, paths);
  for (let path = 0; path < paths; path += 1) {
    if (path % TURN === 0) {
      report?.({ step: "Playing the weeks ahead many times over", done: path, total: paths });
      await new Promise((resolve) => setTimeout(resolve));
      signal?.throwIfAborted();
    }
    // A source for each week of each future: what one plan draws more than another must not shift the rest.
    const counts = fillLine(plan, line, (part) => seededRandom(seed + path * 1000 + part));
    workOff(plan.capacity, line, ready, left);
    tally.add(path, plan, counts, line, { ready, left });
  }
  return tally.weeks();
}
