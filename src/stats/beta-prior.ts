import gammaln from "@stdlib/math-base-special-gammaln";
import { logRising } from "./log-rising.ts";
import { maximumBetween } from "./maximum-between.ts";
import { requireShare, requireSome } from "./requirement.ts";

/** What was seen of one model: failures among inspections. */
export interface Seen { failed: number; inspected: number }

export interface BetaPrior {
  status: "fitted" | "no difference between models";
  /** Pooled share of failures when there is no difference, mean of the models' shares otherwise. */
  mean: number;
  /** How many inspections the common mean is worth beside a model's own; Infinity when there is no difference. */
  strength: number;
  logLikelihood: number;
  /** Of one common share; twice the difference measures how much the models differ. */
  logLikelihoodPooled: number;
}

/** Logarithm of the strength: from models that fail always or never to differences nobody could see. */
const LOOSEST = -4, TIGHTEST = 13;
/**
 * Logarithm of how likely one model's count is when shares follow Beta(a, b), without the number of orders in which it can
 * come about.
 *
 * @example
 * logCount({ failed: 1, inspected: 2 }, 1, 1); // => -1.7918
 */
export function logCount({ failed, inspected }: Seen, a: number, b: number): number {
  return logRising(a, failed) + logRising(b, inspected - failed) - logRising(a + b, inspected);
}

/** Number of orders in which the counts can come about. */
const logOrders = (seen: readonly Seen[]): number => seen.reduce((sum, { failed, inspected }) =>
  sum + gammaln(inspected + 1) - gammaln(failed + 1) - gammaln(inspected - failed + 1), 0);

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/**
 * How shares of failures differ between models, by maximum marginal likelihood.
 *
 * Counts are binomial, their shares beta-distributed (Skellam 1948, JRSS B 10:257-261; Griffiths 1973, Biometrics
 * 29:637-648). When one common share explains the counts as well as any spread, the status says so and the strength is
 * Infinity: real records often have no visible difference, and a huge strength would be no finding.
 *
 * @throws {RangeError} if there is no model, or a count is impossible
 * @example
 * fitBetaPrior([{ failed: 2, inspected: 20 }, { failed: 2, inspected: 20 }]).status; // => "no difference between models"
 */
export function fitBetaPrior(seen: readonly Seen[]): BetaPrior {
  requireSome("fitBetaPrior", "seen", seen);
  seen.forEach(({ failed, inspected }) => { requireShare("fitBetaPrior", failed, inspected); });
  const failed = seen.reduce((sum, one) => sum + one.failed, 0), inspected = seen.reduce((sum, one) => sum + one.inspected, 0);
  const share = failed / inspected, orders = logOrders(seen), good = inspected - failed;
  const pooled = orders + (failed === 0 ? 0 : failed * Math.log(share)) + (good === 0 ? 0 : good * Math.log1p(-share));
  const none: BetaPrior = {
    status: "no difference between models", mean: share, strength: Infinity, logLikelihood: pooled, logLikelihoodPooled: pooled,
  };
  if (failed === 0 || good === 0) return none;
  const middle = Math.log(failed / good), wide = 4 + 4 / Math.sqrt(Math.min(failed, good));
  const ofMean = (strength: number) => (x: number) => 
    seen.reduce((sum, one) => sum + logCount(one, strength * logistic(x), strength * logistic(-x)), 0);
  const best = (logStrength: number) => maximumBetween(ofMean(Math.exp(logStrength)), middle - wide, middle + wide, 8);
  const top = maximumBetween((logStrength) => best(logStrength).value, LOOSEST, TIGHTEST), strength = Math.exp(top.at);
  if (top.at > TIGHTEST - 1 || top.value + orders < pooled + 1e-6) return none;
  const { at, value } = best(top.at);
  return { status: "fitted", mean: logistic(at), strength, logLikelihood: value + orders, logLikelihoodPooled: pooled };
}
