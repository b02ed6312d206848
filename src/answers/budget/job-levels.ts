import type { Random } from "../../stats/random.ts";
import { buyingOrder } from "./buying-order.ts";
import { jobCount, NeedsList } from "./needs.ts";
import type { Needs } from "./needs.ts";
import type { PastWeeks } from "./past-weeks.ts";
import { drawnDelivery, playedThrough } from "./scenarios.ts";
import type { Delivered } from "./scenarios.ts";

export interface Steady {
  readonly weeks: PastWeeks;
  readonly groups: readonly (Delivered & { readonly unit_cost: number })[];
  /** First day ahead, in days since 1970. */
  readonly from: number;
}

function oneFuture({ weeks, groups, from }: Steady, list: NeedsList, random: Random): void {
  const lead = drawnDelivery(groups, random).map((days) => Math.max(1, Math.round(days))), longest = Math.max(...groups.map(({ review_days }) => review_days));
  const settled = Math.max(...groups.map(({ review_days }, group) => (lead[group] as number) + review_days)) + longest, days = settled + longest;
  /** Pieces taken up to the end of every day so far; `days` rows of all groups. */
  const until = new Int32Array((days + 8) * groups.length), taken = new Int32Array(groups.length);
  let today = 0;
  playedThrough(weeks, from, days, random, (parts, day) => {
    for (; today < day; today += 1) until.set(taken, today * groups.length);
    for (const [group, pieces] of parts) taken[group] = (taken[group] as number) + pieces;
    if (day <= settled || day > days) return;
    for (const [group] of parts) {
      const { review_days } = groups[group] as Delivered, last_order = Math.floor((day - (lead[group] as number)) / review_days) * review_days;
      list.need(group, (taken[group] as number) - (until[last_order * groups.length + group] as number));
    }
    list.endJob();
  });
  list.endScenario();
}

/**
 * What jobs ask of a shelf that is filled up to a level on every order day: for each part, all that is taken from the last
 * order that has come until the job itself.
 */
export function steadyNeeds(steady: Steady, count: number, random: Random): Needs {
  const list = new NeedsList();
  for (let done = 0; done < count; done += 1) oneFuture(steady, list, random);
  return list.list();
}

/**
 * Levels to fill up to on every order day, so that the share of jobs asked for does not wait, for the least money on the
 * shelf that the choice of `buyingOrder` finds.
 *
 * @param shares of the jobs that need a part, 0…1, in rising order
 * @returns for each share the level of every group
 */
export async function jobLevels(steady: Steady, shares: readonly number[], count: number, random: Random): Promise<number[][]> {
  const needs = steadyNeeds(steady, count, random), jobs = jobCount(needs), level = steady.groups.map(() => 0), levels: number[][] = [];
  const order = await buyingOrder(needs, steady.groups.map(({ unit_cost }) => ({ position: 0, first: 1, pack: 1, unit_cost })));
  let served = 0;
  const keep = () => { while (levels.length < shares.length && served >= (shares[levels.length] as number) * jobs - 1e-9) levels.push([...level]); };
  keep();
  for (const { groups, to, jobs: helped } of order) {
    groups.forEach((group, i) => { level[group] = to[i] as number; });
    served += helped;
    keep();
  }
  return levels;
}
