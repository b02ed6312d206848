import { binomialAtLeast, binomialAtMost, binomialPmf } from "./binomial.ts";
import { exactShareInterval } from "./exact-share-interval.ts";
import { midPShareInterval } from "./mid-p-share-interval.ts";
import { requireInside, requirePositive, requireWhole } from "./requirement.ts";

export interface Rate { events: number; exposure: number }

export interface RateComparison {
  /** First rate over second; null when neither has an event, Infinity when only the first has. */
  ratio: number | null;
  /** Chance of a first count this low, or this high, if both rates were the same. */
  pLess: number;
  pGreater: number;
  /** Two-sided, by total probability of the outcomes no likelier than the one seen. */
  pLikelihood: number;
  /** Two-sided, twice the smaller tail: never too small. */
  pCentral: number;
  /** Two-sided, twice the smaller tail less half the outcome seen: right on average. The one to show. */
  pMid: number;
  exact: [number, number];
  midP: [number, number];
}

/** Outcomes whose probability is the same but for rounding count as equally likely. */
const SLACK = 1 + 1e-7;

/** All there is to say when neither side has an event. */
const NOTHING_SEEN: RateComparison = {
  ratio: null, pLess: 1, pGreater: 1, pLikelihood: 1, pCentral: 1, pMid: 1, exact: [0, Infinity], midP: [0, Infinity],
};

/**
 * Whether two rates differ, by the exact test that holds the total count fixed: with equal rates the first count is
 * binomial with share first exposure / both (Przyborowski & Wilenski 1940, Biometrika 31:313-323). Two-sided p values as
 * named by Fay (2010, R Journal 2:53-58); mid-p after Lancaster (1961).
 *
 * @throws {RangeError} if a count is not a whole number ≥ 0, an exposure not above 0, or `level` not inside 0…1
 * @example
 * compareRates({ events: 11, exposure: 800 }, { events: 23, exposure: 3011 }).ratio; // => 1.8001
 * compareRates({ events: 11, exposure: 800 }, { events: 23, exposure: 3011 }).pMid; // => 0.1216
 */
export function compareRates(first: Rate, second: Rate, level = 0.95): RateComparison {
  for (const { events, exposure } of [first, second]) {
    requireWhole("compareRates", "events", events);
    requirePositive("compareRates", "exposure", exposure);
  }
  requireInside("compareRates", "level", level);
  const seen = first.events, total = seen + second.events;
  if (total === 0) return { ...NOTHING_SEEN };
  const share = first.exposure / (first.exposure + second.exposure);
  const pLess = binomialAtMost(seen, total, share), pGreater = binomialAtLeast(seen, total, share);
  const point = binomialPmf(seen, total, share), tail = Math.min(pLess, pGreater);
  const likely = Array.from({ length: total + 1 }, (_, k) => binomialPmf(k, total, share));
  const ratioOf = (limit: number) => (limit >= 1 ? Infinity : ((limit / (1 - limit)) * second.exposure) / first.exposure);
  const ratios = ([low, high]: [number, number]): [number, number] => [ratioOf(low), ratioOf(high)];
  return {
    ratio: (seen / first.exposure) / (second.events / second.exposure),
    pLess, pGreater,
    pLikelihood: Math.min(1, likely.filter((p) => p <= point * SLACK).reduce((sum, p) => sum + p, 0)),
    pCentral: Math.min(1, 2 * tail),
    pMid: Math.min(1, 2 * (tail - point / 2)),
    exact: ratios(exactShareInterval(seen, total, level)),
    midP: ratios(midPShareInterval(seen, total, level)),
  };
}
