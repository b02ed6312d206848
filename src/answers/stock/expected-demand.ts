import { uncertainLeadTimeDemand } from "../../stats/lead-time-demand.ts";
import { demandAtMost, demandQuantile } from "../../stats/negative-binomial.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";
import type { LeadTime } from "./restock-line.ts";

/** What is known of a daily use: a gamma distribution with mean `shape / rate`, pieces going `clump` at once. */
export interface UseBelief {
  readonly shape: number;
  readonly rate: number;
  readonly clump: number;
  /** Squared share of the mean by which demand swings beyond chance. */
  readonly unevenness: number;
}

export interface ExpectedDemand {
  readonly mean: number;
  readonly p95: number;
  /** Smallest count that lasts with the target chance, and the chance with which it does. */
  readonly level: number;
  readonly level_chance: number;
}

/**
 * What may be used in a time that varies, use not known exactly and the season counted.
 *
 * Gamma-Poisson predictive demand (METHODS.md 6): unlike a plug-in Poisson it is not sure of thin lines. Pieces that go in
 * pairs or by the batch add (clump − 1) × mean to the variance, and what past weeks swung beyond that adds `unevenness` × mean².
 *
 * @param season_factor use in these days against the usual
 * @throws {RangeError} when the time or a figure of the belief is not above 0
 */
export function countAhead(belief: UseBelief, time: { readonly days: number; readonly sd: number }, season_factor: number): CountDistribution {
  const one_by_one = uncertainLeadTimeDemand({ shape: belief.shape, rate: belief.rate / season_factor }, { mean: time.days, sd: time.sd });
  const swings = (1 + 1 / one_by_one.size) * (1 + belief.unevenness) - 1;
  return { mean: one_by_one.mean, size: 1 / (swings + (belief.clump - 1) / one_by_one.mean) };
}

/**
 * Pieces that delivery and review time may take, and the level that lasts with the target chance.
 *
 * @throws {RangeError} when the protection time or a figure of the belief is not above 0, or `target` not inside 0…1
 */
export function expectedDemand(
  belief: UseBelief, lead: Pick<LeadTime, "days" | "sd">, review_days: number, season_factor: number, target: number,
): ExpectedDemand {
  const demand = countAhead(belief, { days: lead.days + review_days, sd: lead.sd }, season_factor), level = demandQuantile(target, demand);
  return { mean: demand.mean, p95: demandQuantile(0.95, demand), level, level_chance: demandAtMost(level, demand) };
}
