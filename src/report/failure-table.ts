import type { FailureRate } from "../answers/failures/failure-rate.ts";
import { ALL_FAILURES, failureRates } from "../answers/failures/failure-rates.ts";
import { DENOMINATORS, OPENINGS } from "../answers/filter.ts";
import type { Engine } from "../db/engine.ts";
import type { ReportTable } from "./table.ts";

const LATER = "adjusted figures and verdict are not computed by this version";

const COLUMNS = [
  "position", "maker", "model", "came_in", "denominator", "inspected", "failed", "rate", "rate_low", "rate_high",
  "pooled_rate", "pooled_low", "pooled_high", "adjusted_ratio", "adjusted_low", "adjusted_high", "p_value", "q_value", "verdict",
  "position_name", "reel_kind", "replaced", "replaced_routine", "outside", "outside_failed", "reels", "note",
];

function row(rate: FailureRate) {
  const { opening, note, ...rest } = rate;
  const whole = rate.model === "*" && rate.maker === "*" ? "all models: nothing to draw toward or compare with" : "";
  return {
    ...rest, came_in: opening, adjusted_ratio: null, adjusted_low: null, adjusted_high: null, verdict: null,
    note: [note, whole, LATER].filter((part) => part !== "").join("; "),
  };
}

/** Shares of failures for every way of coming in and both denominators. */
export async function failureTable(engine: Engine): Promise<ReportTable> {
  const rates: FailureRate[] = [];
  for (const opening of OPENINGS) {
    for (const denominator of DENOMINATORS) rates.push(...await failureRates(engine, { ...ALL_FAILURES, opening, denominator }));
  }
  return { file: "failure-rates.csv", columns: COLUMNS, rows: rates.map(row) };
}
