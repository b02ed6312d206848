import { verdictName } from "../answers/failures/reasons.ts";
import { sideOf } from "../answers/failures/verdict.ts";
import type { Verdict } from "../answers/failures/verdict.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "position", "maker", "model", "name", "series", "verdict", "decided_on", "inspected", "failed", "adjusted_ratio", "adjusted_low", "adjusted_high",
  "seasons_agree", "seasons_told", "leading_fault", "leading_fault_failed", "others_fault_failed", "others_failed", "fault_p_value", "cost", "minutes",
  "parts_cost", "waiting_days", "comebacks", "left_out", "reasons", "note",
];

function row(verdict: Verdict) {
  const side = sideOf(verdict, verdict.decided_on), { fault, cost } = verdict;
  return {
    position: verdict.position, maker: verdict.maker, model: verdict.model, name: verdictName(verdict), series: verdict.series, verdict: verdict.word,
    decided_on: verdict.decided_on, inspected: side.inspected, failed: side.failed,
    adjusted_ratio: side.adjusted.value, adjusted_low: side.adjusted.low, adjusted_high: side.adjusted.high,
    seasons_agree: verdict.seasons_agree, seasons_told: verdict.seasons_told,
    leading_fault: fault?.mode ?? null, leading_fault_failed: fault?.failed ?? null, others_fault_failed: fault?.others_failed ?? null,
    others_failed: fault?.others_of ?? null, fault_p_value: fault?.p_value ?? null,
    cost: cost.money, minutes: cost.minutes, parts_cost: cost.parts, waiting_days: cost.waiting_days, comebacks: cost.comebacks,
    left_out: verdict.left_out.join(";"), reasons: verdict.reasons.join(" "), note: fault ? "" : "no fault written",
  };
}

/** One line a part on a model, and on a series (all sizes of a model), with its reasons: worst word first, then what costs most. */
export function verdictTable(verdicts: readonly Verdict[]): ReportTable {
  return { file: "verdicts.csv", columns: COLUMNS, rows: verdicts.filter((one) => one.denominator === "coverage").map(row) };
}
