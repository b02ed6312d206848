import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireInside, requireNonNegative } from "./requirement.ts";

/** The logarithm of a part's ratio to the others, and its variance. */
export interface LogRatio { log: number; variance: number }

export interface BeyondOwn {
  /** How many times as often the other parts fail as the others' do. */
  own_level: number;
  /** The part's ratio over that level. */
  ratio: number;
  low: number;
  high: number;
  /** Two-sided chance of a part this far from the model's other parts. */
  p: number;
}

/** Parts of one model do not all lie at its level: their logarithms spread by 0.2 (a fifth up or down) by themselves. */
export const PARTS_SPREAD = 0.2;
/** What is known of a model before any part was seen: its level lies within a factor of 2.7 of the others' (95 %). */
const LEVEL_SD = 0.5;

/**
 * How far one part of a model fails beyond what the model's other parts lead to expect.
 *
 * A cheap reel, a hard life or owners who come late move all parts of a model; a bad part moves one. The level is the
 * mean of the other parts' log ratios, weighted by what each is known to (DerSimonian & Laird 1986, Controlled Clinical
 * Trials 7:177-188, with a given spread between parts) and drawn a little toward 1; the part is judged against where a
 * further part of that model would lie.
 *
 * @param part the part in question
 * @param others the model's other parts
 * @throws {RangeError} if a variance is negative or not finite, or `level` not inside 0…1
 * @example
 * beyondOwn({ log: Math.log(3), variance: 0.04 }, []).own_level; // => 1
 */
export function beyondOwn(part: LogRatio, others: readonly LogRatio[], level = 0.95): BeyondOwn {
  requireInside("beyondOwn", "level", level);
  requireNonNegative("beyondOwn", "variance", part.variance);
  let weight = 1 / LEVEL_SD ** 2, sum = 0;
  for (const { log, variance } of others) {
    requireNonNegative("beyondOwn", "variance", variance);
    const one = 1 / (variance + PARTS_SPREAD ** 2);
    weight += one;
    sum += one * log;
  }
  const at = sum / weight, away = part.log - at, sd = Math.sqrt(part.variance + 1 / weight + PARTS_SPREAD ** 2);
  const far = normalQuantile((1 + level) / 2, 0, 1) * sd;
  return {
    own_level: Math.exp(at), ratio: Math.exp(away), low: Math.exp(away - far), high: Math.exp(away + far),
    p: Math.min(1, 2 * normalCdf(-Math.abs(away) / sd, 0, 1)),
  };
}
