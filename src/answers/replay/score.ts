import { mean } from "simple-statistics";
import { quantile } from "../../stats/quantile.ts";
import { money } from "../wording.ts";
import type { PolicyScore, Spread } from "./replay.ts";
import type { Outcome, World } from "./world.ts";

/** Stock that so many years of use would not take is dead. */
const DEAD_YEARS = 2, YEAR = 365;

const spread = (values: readonly number[]): Spread => ({ mean: mean([...values]), low: quantile(values, 0.1), high: quantile(values, 0.9) });

/** Value on the shelf at the end, beyond two years of the use that the replay saw. */
function deadStock({ on_hand }: Outcome, { groups, jobs, first, last }: World): number {
  const used = groups.map(() => 0);
  for (const { parts } of jobs) for (const [group, pieces] of parts) used[group] = (used[group] as number) + pieces;
  const enough = (group: number) => ((used[group] as number) * DEAD_YEARS * YEAR) / (last - first + 1);
  return on_hand.reduce((sum, pieces, group) => sum + Math.max(0, pieces - enough(group)) * (groups[group]?.unit_cost ?? 0), 0);
}

/** One way of ordering, over all draws of delivery days. */
export function scoreOf(named: Pick<PolicyScore, "policy" | "kind">, outcomes: readonly Outcome[], world: World): PolicyScore {
  const of = (value: (outcome: Outcome) => number) => outcomes.map(value), waited = spread(of((one) => one.waited)), jobs = outcomes[0]?.jobs ?? 0;
  const waits = of((one) => one.waited).reduce((sum, one) => sum + one, 0), days = of((one) => one.wait_days).reduce((sum, one) => sum + one, 0);
  return {
    ...named, jobs, waited, jobs_without_wait: jobs === 0 ? null : 1 - waited.mean / jobs, wait_days: waits === 0 ? null : days / waits,
    stock_value_mean: spread(of((one) => one.stock_value_mean)), orders: mean(of((one) => one.orders)),
    spend: money(mean(of((one) => one.spend))), carriage: money(mean(of((one) => one.carriage))), dead_stock: money(mean(of((one) => deadStock(one, world)))),
  };
}
