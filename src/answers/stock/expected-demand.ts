import { uncertainLeadTimeDemand } from "../../stats/lead-time-demand.ts";
import { demandAtMost, demandQuantile } from "../../stats/negative-binomial.ts";
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
 * Pieces that delivery and review time may take: use not known exactly, delivery not on time, season counted.
 *
 * Gamma-Poisson predictive demand over a delivery time that varies (METHODS.md 6): unlike the plug-in level it holds its
 * target for parts with few uses on record. Pieces that go in pairs or by the batch add (clump − 1) × mean to the variance,
 * and what past weeks swung beyond that adds `unevenness` × mean².
 *
 * @param season_factor use in the days ahead against the usual
 * @throws {RangeError} when the protection time or a figure of the belief is not above 0, or `target` not inside 0…1
 */
export function expectedDemand(
  belief: UseBelief, lead: Pick<LeadTime, "days" | "sd">, review_days: number, season_factor: number, target: number,
): ExpectedDemand {
  const rate = { shape: belief.shape, rate: belief.rate / season_factor };
  const one_by_one = uncertainLeadTimeDemand(rate, { mean: lead.days + review_days, sd: lead.sd });
  const swings = (1 + 1 / one_by_one.size) * (1 + belief.unevenness) - 1;
  const demand = { mean: one_by_one.mean, size: 1 / (swings + (belief.clump - 1) / one_by_one.mean) };
  const level = demandQuantile(target, demand);
  return { mean: demand.mean, p95: demandQuantile(0.95, demand), level, level_chance: demandAtMost(level, demand) };
}
