import { requireInside, requireSome } from "./requirement.ts";

export interface Departure {
  /** Middle of what the group's departure may be, drawn toward 0 by as much as its data deserve. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface PooledDepartures {
  readonly status: "fitted" | "no difference between groups";
  /** Likeliest spread of the departures (standard deviation). */
  readonly spread: number;
  readonly groups: readonly Departure[];
}

/** Departures and their spreads that are looked at; a departure of 3 in a logarithm is a factor of 20. */
const REACH = 3, STEP = 0.05, SPREADS = Array.from({ length: 24 }, (_, i) => i * 0.06);
const DEPARTURES = Array.from({ length: 2 * Math.round(REACH / STEP) + 1 }, (_, i) => -REACH + i * STEP);
/** Spreads this large are rare among parts of one kind: weak prior, half-normal. */
const USUAL_SPREAD = 0.5;

/** Weights of the departures at one spread, adding up to 1. */
function weightsAt(spread: number): number[] {
  const raw = DEPARTURES.map((at) => (spread === 0 ? Number(Math.abs(at) < STEP / 2) : Math.exp(-0.5 * (at / spread) ** 2)));
  const total = raw.reduce((sum, one) => sum + one, 0);
  return raw.map((one) => one / total);
}

function quantile(weights: readonly number[], p: number): number {
  let below = 0;
  for (const [i, weight] of weights.entries()) {
    if (below + weight >= p) return (DEPARTURES[i] as number) + STEP * ((p - below) / weight - 0.5);
    below += weight;
  }
  return REACH;
}

/** Weights of one group's departures, averaged over the spreads. */
function posteriorOf(likely: readonly number[], priors: readonly (readonly number[])[], weights: readonly number[]): number[] {
  const shares = priors.map((prior, s) => (weights[s] as number) / prior.reduce((sum, weight, i) => sum + weight * (likely[i] as number), 1e-300));
  return likely.map((one, i) => priors.reduce((sum, prior, s) => sum + (shares[s] as number) * (prior[i] as number) * one, 0));
}

/**
 * Departures of groups from what is common to them, thin groups drawn toward it. Only each group's log-likelihood is needed, so a group
 * without any failure is no trouble.
 *
 * Departures are normal around 0; their spread is not plugged in but averaged over a grid (Gelman et al., Bayesian Data Analysis, ch. 5)
 * with a half-normal prior of 0.5. Limits are the posterior's.
 *
 * @param groups log-likelihood of each group as a function of its departure, in −3…3
 * @throws {RangeError} if there is no group
 * @example
 * pooledDepartures([(at) => -((at - 1) ** 2) * 50, (at) => -((at + 1) ** 2) * 50]).groups[0]?.value; // => 0.98
 * pooledDepartures([() => 0]).status; // => "no difference between groups"
 */
export function pooledDepartures(groups: readonly ((departure: number) => number)[], level = 0.95): PooledDepartures {
  requireSome("pooledDepartures", "groups", groups);
  requireInside("pooledDepartures", "level", level);
  const likely = groups.map((group) => {
    const logs = DEPARTURES.map(group), top = Math.max(...logs);
    return logs.map((log) => Math.exp(log - top));
  });
  const priors = SPREADS.map(weightsAt);
  const logs = priors.map((prior, s) => likely.reduce((sum, one) => sum + Math.log(prior.reduce((inner, weight, i) => inner + weight * (one[i] as number), 1e-300)), -0.5 * ((SPREADS[s] as number) / USUAL_SPREAD) ** 2));
  const top = Math.max(...logs), best = logs.indexOf(top), weights = logs.map((log) => Math.exp(log - top)), total = weights.reduce((sum, one) => sum + one, 0);
  return {
    status: best === 0 ? "no difference between groups" : "fitted", spread: SPREADS[best] as number,
    groups: likely.map((one) => {
      const posterior = posteriorOf(one, priors, weights.map((weight) => weight / total));
      return { value: quantile(posterior, 0.5), low: quantile(posterior, (1 - level) / 2), high: quantile(posterior, (1 + level) / 2) };
    }),
  };
}
