import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import { failuresOverTime } from "../failures/failures-over-time.ts";
import { findingsBehind } from "../failures/findings-behind.ts";
import { times, verdictName } from "../failures/reasons.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import { decimal, number } from "../wording.ts";
import { funnel } from "./funnel.ts";
import { METHOD, PAGE_CAUTIONS } from "./page-words.ts";
import type { EvidenceSheet } from "./pages.ts";
import { fairOpening } from "./position-page.ts";

function comparison(verdict: Verdict): string {
  const { opening, inspected, failed, others_inspected, others_failed, adjusted } = sideOf(verdict, verdict.decided_on);
  const came = opening === "planned" ? "planned services" : "all jobs that opened it";
  const share = (k: number, n: number) => (n < 10 ? `${number(k)} of ${number(n)}` : `${number(k)} of ${number(n)} (${((100 * k) / n).toFixed(0)} %)`);
  const like = adjusted.value === null || adjusted.low === null || adjusted.high === null ? "Like with like they cannot be compared."
    : `Among reels used alike that is ${times(adjusted.value)}, likely ${decimal(adjusted.low, 1)} to ${decimal(adjusted.high, 1)} times.`;
  return `In ${came} it had failed in ${share(failed, inspected)}; on the other models in ${others_inspected === 0 ? "none looked at" : share(others_failed, others_inspected)}. ${like}`;
}

/**
 * One printed page for a part of a model (or series), to show the maker's agency.
 *
 * @param verdict the one to show
 * @param verdicts all of `failureVerdicts` for the same filter, for the picture
 */
export async function evidenceSheet(engine: Engine, verdict: Verdict, verdicts: readonly Verdict[], filter: VerdictFilter, signal?: AbortSignal): Promise<EvidenceSheet> {
  const { position, maker, denominator } = verdict, { reel_kind, water, from, to } = filter, same = verdicts.filter((one) => one.position === position);
  const records = { reel_kind, water, from, to, maker, opening: "*" as const, denominator, group: null, position };
  const lists = await Promise.all(verdict.models.map((model) => findingsBehind(engine, { ...records, model }, signal)));
  const [over_time, span] = await Promise.all([
    failuresOverTime(engine, { ...records, model: verdict.series ? null : verdict.model, months: 6 }, signal), recordsSpan(engine, signal),
  ]);
  const findings = lists.flatMap((one) => one.findings).sort((a, b) => (a.received_on < b.received_on ? 1 : a.received_on > b.received_on ? -1 : 0));
  return {
    title: `${verdict.position_name}, ${verdictName(verdict)}: ${verdict.word}`, verdict, funnel: funnel(same, fairOpening(same)), over_time, findings,
    fine_unwritten: lists.reduce((sum, one) => sum + one.fine_unwritten, 0), comparison: comparison(verdict), method: METHOD, cautions: PAGE_CAUTIONS,
    from: from ?? span.from, to: to ?? span.to,
  };
}
