import { drawLogNormal, logNormalOf } from "../../stats/draws.ts";
import type { Random } from "../../stats/random.ts";
import type { PastJob } from "./past-jobs.ts";
import { WEEK } from "./past-weeks.ts";
import type { Weeks } from "./past-weeks.ts";
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
  readonly weeks: Weeks;
  readonly groups: readonly Delivered[];
  /** First day ahead, in days since 1970. */
  readonly from: number;
  /** Last day the shelf must last, counted from `from` as 1; null: until an order placed at the next order day arrives. */
  readonly lasting: number | null;
}

/** The least a delivery takes: it is not there on the day it is ordered. */
const SOONEST = 0.5;

/** Days that each group's next order takes in one future; late for all groups of a supplier that is late. */
function drawnDelivery(groups: readonly Delivered[], random: Random): number[] {
  const taken = new Map<string | null, number>();
  return groups.map(({ supplier, lead_days, lead_sd }) => {
    const { logMean, logSd } = logNormalOf(Math.max(SOONEST, lead_days), lead_sd), days = taken.get(supplier) ?? drawLogNormal(random, logMean, logSd);
    taken.set(supplier, days);
    return days;
  });
}

/** For how many days each group must last in one future. */
function lastingDays({ groups, lasting }: Ahead, random: Random): number[] {
  if (lasting !== null) return groups.map(() => lasting);
  return drawnDelivery(groups, random).map((days, group) => Math.ceil(days + (groups[group] as Delivered).review_days));
}

/** Once as a rule; sometimes twice or not at all, so that on average there are `grown` jobs for one of then. */
const timesNow = (grown: number, random: Random): number => Math.floor(grown) + (random() < grown % 1 ? 1 : 0);

/** Jobs of `days` days ahead in one future, weeks like those days of one past year; `day` counts from 1. */
function playedThrough(weeks: Weeks, from: number, days: number, random: Random, job: (parts: PastJob["parts"], day: number) => void): void {
  const year = 1 + Math.floor(random() * Math.max(1, weeks.years));
  for (let start = 0; start < days; start += WEEK) {
    const week = weeks.like(from + start, year, random);
    for (const { parts, day } of week.jobs) {
      for (let again = timesNow(week.grown, random); again > 0; again -= 1) job(parts, start + day - week.from + 1);
    }
  }
}

function oneFuture(ahead: Ahead, list: NeedsList, taken: Int32Array, random: Random): void {
  const days = lastingDays(ahead, random);
  taken.fill(0);
  playedThrough(ahead.weeks, ahead.from, Math.max(...days), random, (parts, day) => {
    for (const [group, pieces] of parts) {
      const level = (taken[group] as number) + pieces;
      taken[group] = level;
      if (day <= (days[group] as number)) list.need(group, level);
    }
    list.endJob();
  });
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
