import type { Engine } from "../../db/engine.ts";
import { comebacks } from "../comebacks/comebacks.ts";
import { failuresOverTime } from "../failures/failures-over-time.ts";
import { TOO_FEW } from "../failures/judged.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import { ruleChangesOf } from "../rule-changes/rule-changes.ts";
import type { RuleChange } from "../rule-changes/rule-changes.ts";
import { funnel } from "./funnel.ts";
import { PAGE_CAUTIONS, positionSummary, worstFirst } from "./page-words.ts";
import type { PositionPage } from "./pages.ts";

/** Planned openings where most models have enough of them to be placed. */
export function fairOpening(verdicts: readonly Verdict[]): "planned" | "*" {
  const enough = verdicts.filter((one) => sideOf(one, "planned").inspected >= TOO_FEW.inspected).length;
  return 2 * enough >= verdicts.length ? "planned" : "*";
}

/**
 * One part over all models: who is worse, the funnel, its failures against its replacements over time, and the rule changes
 * that touch it.
 *
 * @param verdicts all of `failureVerdicts` for the same filter
 * @throws {RangeError} when no model has this part
 */
export async function positionPage(
  engine: Engine, position: string, verdicts: readonly Verdict[], filter: VerdictFilter, changes: readonly RuleChange[], signal?: AbortSignal,
): Promise<PositionPage> {
  const own = verdicts.filter((one) => one.position === position).sort(worstFirst), [first] = own;
  if (!first) throw new RangeError(`positionPage: position must be one of the verdicts', got ${position}`);
  const { reel_kind, water, from, to, denominator } = filter, records = { reel_kind, water, from, to, maker: null, model: null };
  const [over_time, back] = await Promise.all([
    failuresOverTime(engine, { ...records, opening: "*", denominator, group: null, position, months: 3 }, signal),
    comebacks(engine, { ...records, group: null, position, watched_until: "records end", curves: true }, signal),
  ]);
  return {
    position, position_name: first.position_name, summary: positionSummary(first.position_name, own), verdicts: own, funnel: funnel(own, fairOpening(own)),
    over_time, comebacks: back, rule_changes: ruleChangesOf(changes, position), cautions: PAGE_CAUTIONS,
  };
}
