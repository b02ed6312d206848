import { compareShares } from "../../stats/compare-shares.ts";
import { widenedShareInterval } from "../../stats/design-effect.ts";
import { mantelHaenszel } from "../../stats/mantel-haenszel.ts";
import type { LikeWithLike, Stratum } from "../../stats/mantel-haenszel.ts";
import type { LogRatio } from "../../stats/own-level.ts";
import { expectedFailures, standardisedRatio } from "../../stats/standardised-ratio.ts";
import type { Opening } from "../filter.ts";
import { FEWEST_FOR_SHARE } from "./failure-values.ts";
import type { Counts, Field, Peer } from "./peers.ts";
import { countsOf, notOthers, shopStrata, strataOf } from "./peers.ts";
import { NO_FIGURE } from "./verdict.ts";
import type { Figure, VerdictSide } from "./verdict.ts";

/** A side before it is seen beside the model's other parts and the family's other looks. */
export type PlainSide = Omit<VerdictSide, "word" | "own_level" | "beyond_own" | "q_value" | "beyond_q" | "pooled" | "shrunken_ratio"> & {
  /** For the model's general level; null where nothing alike was seen. */
  readonly log: LogRatio | null;
};

/** Counts worth fewer inspections, whole again. */
function worth({ inspected, failed }: Counts, widen: number): Counts {
  const fewer = Math.max(1, Math.round(inspected / widen));
  return { inspected: fewer, failed: Math.min(fewer, Math.round((failed * fewer) / inspected)) };
}

/** Exact mid-p of the peer against the others, of several shops the test within shops; null where nothing can be compared. */
function pValue(mine: Counts, others: Counts, shops: readonly Stratum[], widen: number): number | null {
  if (mine.inspected === 0 || others.inspected === 0) return null;
  if (shops.length > 1) {
    const { status, p } = mantelHaenszel(shops, { widen });
    return status === "nothing alike" ? null : p;
  }
  return compareShares(widen > 1 ? worth(mine, widen) : mine, others).pMid;
}

/** Ratios beyond this standard deviation of their logarithm rest on next to nothing. */
const KNOWN = 3;

/** With no failure on one side, half a failure is lent to both. */
function logOf(like: LikeWithLike, strata: readonly Stratum[]): LogRatio | null {
  if (like.status === "nothing alike") return null;
  if (like.ratio !== null && like.log_sd !== null && like.log_sd < KNOWN) return { log: Math.log(like.ratio), variance: like.log_sd ** 2 };
  const { observed, expected } = expectedFailures(strata);
  return { log: Math.log((observed + 0.5) / (expected + 0.5)), variance: 1 / (observed + 0.5) + 1 / (like.others_failed + 0.5) };
}

/** What the others' share would be if each shop had seen them as often as the peer. */
function othersShare(shops: readonly Stratum[]): number | null {
  const { expected, inspected } = expectedFailures(shops);
  return inspected === 0 ? null : expected / inspected;
}

function rateOf({ inspected, failed }: Counts, widen: number): Figure {
  if (inspected === 0) return NO_FIGURE;
  const [low, high] = widenedShareInterval(failed, inspected, widen);
  return { value: inspected < FEWEST_FOR_SHARE ? null : failed / inspected, low, high };
}

/** One peer beside the others of its position, for one way of coming in. */
export function comparedSide(field: Field, peer: Peer, opening: Opening, left_out: ReadonlySet<string>, widen: number): PlainSide {
  const without = notOthers(field, peer, left_out), mine = countsOf(peer.conditions, opening), all = countsOf(field.total, opening);
  const gone = without.map(({ conditions }) => countsOf(conditions, opening));
  const others = {
    inspected: gone.reduce((sum, one) => sum - one.inspected, all.inspected), failed: gone.reduce((sum, one) => sum - one.failed, all.failed),
  };
  const strata = strataOf(field, peer, without, opening), like = mantelHaenszel(strata, { widen });
  const { observed, expected, inspected: compared } = expectedFailures(strata), shops = shopStrata(field, peer, without, opening);
  return {
    opening, ...mine, widened: widen, rate: rateOf(mine, widen), others_inspected: others.inspected, others_failed: others.failed,
    others_models: field.models.filter((one) => !without.includes(one) && countsOf(one.conditions, opening).inspected > 0).length, others_share: othersShare(shops),
    adjusted: { value: like.ratio, low: like.low, high: like.high }, compared, expected: compared === 0 ? null : expected,
    seen_over_expected: standardisedRatio(observed, expected, { widen }), p_value: pValue(mine, others, shops, widen), log: logOf(like, strata),
  };
}
