import { demandPmf } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireNonNegative, requirePositive } from "./requirement.ts";
import { expectedBackorders } from "./stock-level.ts";

/** Look once a period: at `point` or less order up to `upTo`; `cost` a period. */
export interface ReviewPolicy { point: number; upTo: number; cost: number }

/** Money for an order, and for a piece lying on the shelf or waited for during a period. */
export interface ReviewCosts { order: number; holding: number; shortage: number }

/** Cost of a period that begins with `level` on the shelf or under way. */
function periodCost(level: number, cover: CountDistribution, { holding, shortage }: ReviewCosts): number {
  // Below zero every piece asked for is waited for, those before it too.
  const short = level >= 0 ? expectedBackorders(level, cover) : cover.mean - level;
  return holding * (level - cover.mean + short) + shortage * short;
}

/** Expected visits to each shortfall below the order-up-to level between two orders: a renewal sequence. */
class Renewals {
  readonly #terms: number[] = [];
  readonly #demand: number[] = [];
  constructor(private readonly period: CountDistribution) {}
  at(shortfall: number): number {
    while (this.#terms.length <= shortfall) {
      const next = this.#terms.length, none = this.#pmf(0);
      let sum = next === 0 ? 1 : 0;
      for (let pieces = 1; pieces <= next; pieces += 1) sum += this.#pmf(pieces) * (this.#terms[next - pieces] ?? 0);
      this.#terms.push(sum / (1 - none));
    }
    return this.#terms[shortfall] ?? NaN;
  }
  #pmf(pieces: number): number {
    while (this.#demand.length <= pieces) this.#demand.push(demandPmf(this.#demand.length, this.period));
    return this.#demand[pieces] ?? NaN;
  }
}

/**
 * The cheapest rule of the kind "at s or less order up to S", for a shelf looked at once a period, when an order costs
 * the same whatever is in it.
 *
 * Algorithm of Zheng & Federgruen (1991, Operations Research 39:654-665), exact for this model: unfilled demand waits.
 *
 * @param period demand of one period
 * @param cover demand over the delivery time and one period more, on which costs are charged
 * @throws {RangeError} if a cost or a mean is not above 0 (the order cost may be 0)
 * @example
 * bestReviewPolicy({ order: 64, holding: 1, shortage: 9 }, { mean: 10, size: Infinity }, { mean: 10, size: Infinity }); // => { point: 6, upTo: 40, cost: 35.0216 }
 */
export function bestReviewPolicy(costs: ReviewCosts, period: CountDistribution, cover: CountDistribution): ReviewPolicy {
  requireNonNegative("bestReviewPolicy", "costs.order", costs.order);
  requirePositive("bestReviewPolicy", "costs.holding", costs.holding);
  requirePositive("bestReviewPolicy", "costs.shortage", costs.shortage);
  requirePositive("bestReviewPolicy", "period.mean", period.mean);
  requirePositive("bestReviewPolicy", "cover.mean", cover.mean);
  const known = new Map<number, number>(), renewals = new Renewals(period);
  const one = (level: number): number => {
    const cost = known.get(level) ?? periodCost(level, cover, costs);
    known.set(level, cost);
    return cost;
  };
  const all = (point: number, upTo: number): number => {
    let money = costs.order, time = 0;
    for (let shortfall = 0; shortfall < upTo - point; shortfall += 1) {
      money += renewals.at(shortfall) * one(upTo - shortfall);
      time += renewals.at(shortfall);
    }
    return money / time;
  };
  let best = 0;
  while (one(best + 1) < one(best)) best += 1;
  let upTo = best, point = best - 1;
  while (all(point, upTo) > one(point)) point -= 1;
  let cost = all(point, upTo);
  for (let level = best + 1; one(level) <= cost; level += 1) {
    if (all(point, level) >= cost) continue;
    upTo = level;
    while (all(point, upTo) <= one(point + 1)) point += 1;
    cost = all(point, upTo);
  }
  return { point, upTo, cost };
}
