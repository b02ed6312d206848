import { drawLogNormal, logNormalOf } from "../../stats/draws.ts";
import type { Random } from "../../stats/random.ts";
import type { PastJob } from "./past-jobs.ts";
import { WEEK } from "./past-weeks.ts";
import type { PastWeeks } from "./past-weeks.ts";
import { NeedsList } from "./needs.ts";
import type { Needs } from "./needs.ts";

/** How long an order of a group takes; groups of one supplier wait for the same delivery. */
export interface Delivered {
  readonly supplier: string | null;
  readonly lead_days: number;
  readonly lead_sd: number;
  readonly review_days: number;
}

export interface Ahead {
  readonly weeks: PastWeeks;
  readonly groups: readonly Delivered[];
  /** First day ahead, in days since 1970. */
  readonly from: number;
  /** Last day the shelf must last, counted from `from` as 1; null: until an order placed at the next order day arrives. */
  readonly lasting: number | null;
}

/** The least a delivery takes: it is not there on the day it is ordered. */
const SOONEST = 0.5;

/** For how many days each group must last in one future: until the next order arrives, which is late when its supplier is. */
function lastingDays({ groups, lasting }: Ahead, random: Random): number[] {
  if (lasting !== null) return groups.map(() => lasting);
  const taken = new Map<string | null, number>();
  return groups.map(({ supplier, lead_days, lead_sd, review_days }) => {
    const known = taken.get(supplier);
    if (known !== undefined) return Math.ceil(known + review_days);
    const { logMean, logSd } = logNormalOf(Math.max(SOONEST, lead_days), lead_sd), days = drawLogNormal(random, logMean, logSd);
    taken.set(supplier, days);
    return Math.ceil(days + review_days);
  });
}

/** Once as a rule; sometimes twice or not at all, so that on average there are `grown` jobs for one of then. */
const timesNow = (grown: number, random: Random): number => Math.floor(grown) + (random() < grown % 1 ? 1 : 0);

function addJob({ parts }: PastJob, day: number, days: readonly number[], list: NeedsList, taken: Int32Array): void {
  for (const [group, pieces] of parts) {
    const level = (taken[group] as number) + pieces;
    taken[group] = level;
    if (day <= (days[group] as number)) list.need(group, level);
  }
  list.endJob();
}

function oneFuture(ahead: Ahead, list: NeedsList, taken: Int32Array, random: Random): void {
  const { weeks, from } = ahead, days = lastingDays(ahead, random), end = Math.max(...days);
  const year = 1 + Math.floor(random() * Math.max(1, weeks.years));
  taken.fill(0);
  for (let start = 0; start < end; start += WEEK) {
    const week = weeks.like(from + start, year, random);
    for (const job of week.jobs) {
      const day = start + job.day - week.from + 1;
      for (let again = timesNow(week.grown, random); again > 0; again -= 1) addJob(job, day, days, list, taken);
    }
  }
  list.endScenario();
}

/**
 * Possible futures of the shop: whole weeks of its past put one after the other, of the same season, each future of one past year.
 *
 * A part needed later than its next delivery is not this order's business, so such needs are left out, and jobs without any
 * other (METHODS.md 6: scenarios are whole past tickets resampled by season, over the protection time).
 */
export function scenarios(ahead: Ahead, count: number, random: Random): Needs {
  const list = new NeedsList(), taken = new Int32Array(ahead.groups.length);
  for (let done = 0; done < count; done += 1) oneFuture(ahead, list, taken, random);
  return list.list();
}
