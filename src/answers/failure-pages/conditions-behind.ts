import type { Engine } from "../../db/engine.ts";
import { conditionCells, conditionRows } from "../failures/condition-rows.ts";
import { fieldOf, notOthers } from "../failures/peers.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import type { Verdict } from "../failures/verdict.ts";
import { modelName } from "../model-name.ts";

/** One set of conditions: the model of a verdict beside the others that lived and came in alike. */
export interface ConditionsBehind {
  readonly water: string | null;
  readonly rinse: string | null;
  /** Days fished since the last service, as the customer guesses. */
  readonly days: string | null;
  readonly sealed: string | null;
  readonly opening: "planned" | "complaint" | null;
  readonly inspected: number;
  readonly failed: number;
  readonly others_inspected: number;
  readonly others_failed: number;
}

/** Words of the number `conditions.sql` groups by, two binary places each; the first is "not written down". */
const WATER = [null, "fresh", "brackish", "salt"], RINSE = [null, "always", "sometimes", "never"], DAYS = [null, "under 15", "15 to 39", "40 and more"];
const SEALED = [null, "not sealed", "sealed", null], OPENING = [null, "planned", "complaint", null] as const;

const worded = (condition: number) => ({
  water: WATER[condition & 3] ?? null, rinse: RINSE[(condition >> 2) & 3] ?? null, days: DAYS[(condition >> 4) & 3] ?? null,
  sealed: SEALED[(condition >> 6) & 3] ?? null, opening: OPENING[(condition >> 8) & 3] ?? null,
});

/**
 * The counts that are set like with like for one verdict: every set of conditions its model was inspected under, beside the
 * other models under the same. Largest first.
 *
 * @returns nothing when the records no longer hold the model
 */
export async function conditionsBehind(engine: Engine, verdict: Verdict, filter: VerdictFilter, signal?: AbortSignal): Promise<readonly ConditionsBehind[]> {
  const { reel_kind, water, from, to, denominator } = filter;
  const values = { reel_kind, water, from_date: from, to_date: to, group_code: null, position: verdict.position, denominator };
  const field = fieldOf(verdict.position, conditionRows(await conditionCells(engine, values, signal)));
  const peer = (verdict.series ? field.series : field.models).find((one) => one.maker === verdict.maker && one.model === verdict.model);
  if (!peer) return [];
  const out = new Set(field.models.filter((one) => verdict.left_out.includes(modelName(one))).map(({ key }) => key)), without = notOthers(field, peer, out);
  const rows = [...peer.conditions].map(([condition, { inspected, failed }]) => {
    const gone = without.map((one) => one.conditions.get(condition)), all = field.total.get(condition);
    const rest = (name: "inspected" | "failed") => (all?.[name] ?? 0) - gone.reduce((sum, one) => sum + (one?.[name] ?? 0), 0);
    return { ...worded(condition), inspected, failed, others_inspected: rest("inspected"), others_failed: rest("failed") };
  });
  return rows.sort((a, b) => b.inspected - a.inspected || b.others_inspected - a.others_inspected);
}
