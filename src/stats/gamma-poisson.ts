import { gammaAbove, gammaQuantile } from "./incomplete-gamma.ts";
import { demandQuantile } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireInside, requireNonNegative, requirePositive, requireWhole } from "./requirement.ts";

/** What is known about one rate: gamma distribution with mean shape / rate. */
export interface RateKnowledge { shape: number; rate: number }

/** @throws {RangeError} unless shape and rate are above 0 */
function requireKnowledge(caller: string, { shape, rate }: RateKnowledge): void {
  requirePositive(caller, "shape", shape);
  requirePositive(caller, "rate", rate);
}

/**
 * What is known about a line's rate once its own record is added to what lines are like.
 *
 * @param prior from `fitGammaPrior`
 * @throws {RangeError} if `events` is not a whole number ≥ 0 or `exposure` negative
 * @example
 * rateKnowledge({ shape: 0.8, rate: 0.5 }, 3, 1.5); // => { shape: 3.8, rate: 2.0 }
 */
export function rateKnowledge(prior: RateKnowledge, events: number, exposure: number): RateKnowledge {
  requireKnowledge("rateKnowledge", prior);
  requireWhole("rateKnowledge", "events", events);
  requireNonNegative("rateKnowledge", "exposure", exposure);
  return { shape: prior.shape + events, rate: prior.rate + exposure };
}

/**
 * Limits that hold the rate with probability `level`, tails equal.
 *
 * @throws {RangeError} if shape or rate is not above 0 or `level` not inside 0…1
 * @example
 * rateLimits({ shape: 5.8230, rate: 95.5617 }); // => [0.0219, 0.1195]
 */
export function rateLimits(knowledge: RateKnowledge, level = 0.95): [number, number] {
  requireKnowledge("rateLimits", knowledge);
  requireInside("rateLimits", "level", level);
  const { shape, rate } = knowledge;
  return [gammaQuantile((1 - level) / 2, shape) / rate, gammaQuantile((1 + level) / 2, shape) / rate];
}

/**
 * Probability that the rate is above `value`, from its own tail.
 *
 * @throws {RangeError} if shape or rate is not above 0 or `value` is negative
 * @example
 * rateAbove(0.65, { shape: 4.8230, rate: 3.3617 }); // => 0.9156
 */
export function rateAbove(value: number, knowledge: RateKnowledge): number {
  requireKnowledge("rateAbove", knowledge);
  requireNonNegative("rateAbove", "value", value);
  return gammaAbove(value * knowledge.rate, knowledge.shape);
}

/**
 * Demand to expect over `horizon`, with the doubt about the rate in it: negative binomial, wider than Poisson.
 *
 * @throws {RangeError} if shape, rate or `horizon` is not above 0
 * @example
 * predictiveDemand({ shape: 3.8, rate: 2 }, 0.1); // => { mean: 0.19, size: 3.8 }
 */
export function predictiveDemand(knowledge: RateKnowledge, horizon: number): CountDistribution {
  requireKnowledge("predictiveDemand", knowledge);
  requirePositive("predictiveDemand", "horizon", horizon);
  return { mean: (horizon * knowledge.shape) / knowledge.rate, size: knowledge.shape };
}

/**
 * Smallest stock that will do over `horizon` with at least `probability`. A rate put in as if it were known would fall
 * short of that chance, worst for parts never used before.
 *
 * @throws {RangeError} if shape, rate or `horizon` is not above 0 or `probability` not inside 0…1
 * @example
 * predictiveQuantile({ shape: 0.8, rate: 1 }, 0.1, 0.95); // => 1
 */
export function predictiveQuantile(knowledge: RateKnowledge, horizon: number, probability: number): number {
  requireInside("predictiveQuantile", "probability", probability);
  return demandQuantile(probability, predictiveDemand(knowledge, horizon));
}
