import type { FailureRate } from "../answers/failures/failure-rate.ts";
import { ALL_FAILURES, failureCounts } from "../answers/failures/failure-rates.ts";
import { rowKey } from "../answers/failures/count-row.ts";
import { reelsInspected } from "../answers/failures/reels-inspected.ts";
import { sideOf } from "../answers/failures/verdict.ts";
import type { Verdict, VerdictSide } from "../answers/failures/verdict.ts";
import { DENOMINATORS, OPENINGS } from "../answers/filter.ts";
import type { Engine } from "../db/engine.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "position", "maker", "model", "came_in", "denominator", "inspected", "failed", "rate", "rate_low", "rate_high",
  "pooled_rate", "pooled_low", "pooled_high", "adjusted_ratio", "adjusted_low", "adjusted_high", "p_value", "q_value", "verdict",
  "position_name", "reel_kind", "replaced", "replaced_routine", "outside", "outside_failed", "reels", "others_inspected", "others_failed",
  "compared", "expected", "seen_over_expected", "seen_over_expected_low", "seen_over_expected_high", "own_level", "beyond_own", "beyond_own_low",
  "beyond_own_high", "beyond_q", "widened", "note",
];
const NO_SIDE = {
  pooled_rate: null, pooled_low: null, pooled_high: null, adjusted_ratio: null, adjusted_low: null, adjusted_high: null, p_value: null, q_value: null,
  verdict: null, others_inspected: null, others_failed: null, compared: null, expected: null, seen_over_expected: null, seen_over_expected_low: null,
  seen_over_expected_high: null, own_level: null, beyond_own: null, beyond_own_low: null, beyond_own_high: null, beyond_q: null, widened: null,
};

const keyOf = ({ position, maker, model }: { position: string; maker: string | null; model: string }) => JSON.stringify([position, maker, model]);

/** Why a ratio is missing. */
function missing({ adjusted, compared, others_inspected, inspected }: VerdictSide): string {
  if (adjusted.value !== null || inspected === 0) return "";
  if (others_inspected === 0) return "no other model to compare with";
  return compared === 0 ? "no other model came in under the same conditions" : "one side has no failure: see seen_over_expected";
}

function sideColumns(side: VerdictSide, word: string) {
  return {
    rate_low: side.rate.low, rate_high: side.rate.high,
    pooled_rate: side.pooled.value, pooled_low: side.pooled.low, pooled_high: side.pooled.high,
    adjusted_ratio: side.adjusted.value, adjusted_low: side.adjusted.low, adjusted_high: side.adjusted.high,
    p_value: side.p_value, q_value: side.q_value, verdict: word,
    others_inspected: side.others_inspected, others_failed: side.others_failed, compared: side.compared, expected: side.expected,
    seen_over_expected: side.seen_over_expected.value, seen_over_expected_low: side.seen_over_expected.low, seen_over_expected_high: side.seen_over_expected.high,
    own_level: side.own_level, beyond_own: side.beyond_own.value, beyond_own_low: side.beyond_own.low, beyond_own_high: side.beyond_own.high,
    beyond_q: side.beyond_q, widened: side.widened,
  };
}

function row(rate: FailureRate, verdict: Verdict | undefined, reels: number) {
  const { opening, note, ...rest } = rate, side = verdict ? sideOf(verdict, opening) : null;
  const whole = rate.model === "*" && rate.maker === "*" ? "all models: nothing to draw toward or compare with" : "";
  // All openings together show the word of the whole verdict, which is taken from planned openings where they suffice.
  const word = verdict && side ? (opening === "*" ? verdict.word : side.word) : "";
  return {
    ...NO_SIDE, ...rest, reels, came_in: opening, ...(side ? sideColumns(side, word) : { ...NO_SIDE, rate_low: rest.rate_low, rate_high: rest.rate_high }),
    note: [note, whole, side ? missing(side) : ""].filter((part) => part !== "").join("; "),
  };
}

/**
 * Shares of failures for every way of coming in and both denominators, each model beside the others.
 *
 * @param verdicts of both denominators, drawn in for all openings
 */
export async function failureTable(engine: Engine, verdicts: readonly Verdict[]): Promise<ReportTable> {
  const rows = [];
  for (const opening of OPENINGS) {
    for (const denominator of DENOMINATORS) {
      const judged = new Map(verdicts.filter((one) => !one.series && one.denominator === denominator).map((one) => [keyOf(one), one]));
      const filter = { ...ALL_FAILURES, opening, denominator }, rates = await failureCounts(engine, filter), reels = await reelsInspected(engine, filter);
      rows.push(...rates.map((rate) => row(rate, judged.get(keyOf(rate)), reels.get(rowKey(rate)) ?? 0)));
    }
  }
  return { file: "failure-rates.csv", columns: COLUMNS, rows };
}
