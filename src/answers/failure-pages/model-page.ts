import type { Engine } from "../../db/engine.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { comebacks } from "../comebacks/comebacks.ts";
import { NO_FIGURE } from "../failures/verdict.ts";
import type { Figure, Verdict } from "../failures/verdict.ts";
import { sideOf } from "../failures/verdict.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import { modelName } from "../model-name.ts";
import modelTicketsSql from "./model-tickets.sql?raw";
import { modelAdvice } from "./model-advice.ts";
import { PAGE_CAUTIONS, worstFirst } from "./page-words.ts";
import type { ModelPage } from "./pages.ts";

type TicketsRow = { readonly maker: string | null; readonly model: string; readonly tickets: number; readonly reels: number; readonly complaints: number; readonly known: number };

function shareOf(complaints: number, known: number): Figure {
  if (known === 0) return NO_FIGURE;
  const [low, high] = shareInterval(complaints, known);
  return { value: complaints / known, low, high };
}

/** The middle of the parts' general levels: each leaves its own part out, so that one bad part does not move it. */
function generalLevel(verdicts: readonly Verdict[]): number | null {
  const levels = verdicts.filter((one) => !one.series).flatMap((one) => sideOf(one, one.decided_on).own_level ?? []).sort((a, b) => a - b);
  return levels[Math.floor(levels.length / 2)] ?? null;
}

/** Parts of this model, and of its series where sizes of it are judged together. */
export function verdictsOfModel(verdicts: readonly Verdict[], of: { readonly maker: string | null; readonly model: string }): Verdict[] {
  return verdicts.filter((one) => one.maker === of.maker && (one.model === of.model || (one.series && one.models.includes(of.model)))).sort(worstFirst);
}

/**
 * Whether to warn customers of a model, and why.
 *
 * @param verdicts all of `failureVerdicts` for the same filter and no position
 */
export async function modelPage(
  engine: Engine, of: { readonly maker: string | null; readonly model: string }, verdicts: readonly Verdict[], filter: VerdictFilter, signal?: AbortSignal,
): Promise<ModelPage> {
  const { reel_kind, water, from, to } = filter, own = verdictsOfModel(verdicts, of);
  const [tickets, back] = await Promise.all([
    engine.rows<TicketsRow>(modelTicketsSql, { reel_kind, water, from_date: from, to_date: to }, signal),
    comebacks(engine, { reel_kind, water, from, to, ...of, group: null, position: null, watched_until: "records end", curves: true }, signal),
  ]);
  const mine = tickets.find((row) => row.maker === of.maker && row.model === of.model), others = tickets.filter((row) => row !== mine);
  const sum = (name: "complaints" | "known") => others.reduce((total, row) => total + row[name], 0);
  return {
    ...of, ...modelAdvice(modelName(of), own), reels: mine?.reels ?? 0, tickets: mine?.tickets ?? 0,
    complaint_share: shareOf(mine?.complaints ?? 0, mine?.known ?? 0), others_complaint_share: sum("known") === 0 ? null : sum("complaints") / sum("known"),
    general_level: generalLevel(own), verdicts: own, comebacks: back, cautions: PAGE_CAUTIONS,
  };
}
