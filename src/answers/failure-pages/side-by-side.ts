import type { Engine } from "../../db/engine.ts";
import { mantelHaenszel } from "../../stats/mantel-haenszel.ts";
import { conditionCells, conditionRows } from "../failures/condition-rows.ts";
import { fieldOf, strataOf } from "../failures/peers.ts";
import type { Field, Peer } from "../failures/peers.ts";
import { TOO_FEW } from "../failures/judged.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import { grouped } from "../grouped.ts";
import { modelName } from "../model-name.ts";
import { beside, listed } from "./page-words.ts";
import type { SideBySide, SideBySideRow } from "./pages.ts";

interface Model { readonly maker: string | null; readonly model: string }

const isModel = (one: Model, of: Model) => one.maker === of.maker && one.model === of.model;

/** The first model beside the second only, like with like. */
function compared(field: Field, mine: Peer, other: Peer, first: Verdict, second: Verdict): SideBySideRow {
  const enough = [first, second].every((one) => sideOf(one, "planned").inspected >= TOO_FEW.inspected), opening = enough ? "planned" : "*";
  const without = field.models.filter((one) => one !== other), like = mantelHaenszel(strataOf(field, mine, without, opening));
  const ratio = { value: like.ratio, low: like.low, high: like.high };
  return {
    position: first.position, position_name: first.position_name, first, second, ratio, p_value: like.status === "nothing alike" ? null : like.p,
    sentence: beside(first, second, ratio),
  };
}

function summary(a: string, b: string, rows: readonly SideBySideRow[]): string {
  const small = (row: SideBySideRow) => row.position_name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());
  const worse = rows.filter(({ ratio }) => ratio.low !== null && ratio.low > 1).map(small), better = rows.filter(({ ratio }) => ratio.high !== null && ratio.high < 1).map(small);
  if (worse.length + better.length === 0) return `Used alike, no part of the ${a} can be told from that of the ${b}.`;
  const more = (name: string, parts: readonly string[]) => (parts.length === 0 ? "" : `More often on the ${name}: ${listed(parts)}.`);
  return [more(a, worse), more(b, better)].filter((sentence) => sentence !== "").join(" ");
}

/**
 * Two models, part by part, within the same conditions; parts that only one has are left out.
 *
 * With dozens of parts one or two differ by chance: the rows carry `p_value`, uncorrected.
 *
 * @param verdicts all of `failureVerdicts` for the same filter
 */
export async function sideBySide(
  engine: Engine, first: Model, second: Model, verdicts: readonly Verdict[], filter: VerdictFilter, signal?: AbortSignal,
): Promise<SideBySide> {
  const { reel_kind, water, from, to, group, position, denominator } = filter;
  const values = { reel_kind, water, from_date: from, to_date: to, group_code: group, position, denominator };
  const conditions = grouped(conditionRows(await conditionCells(engine, values, signal)), (row) => row.position);
  const rows = verdicts.filter((one) => !one.series && isModel(one, first)).flatMap((one) => {
    const other = verdicts.find((two) => !two.series && two.position === one.position && isModel(two, second));
    const field = fieldOf(one.position, conditions.get(one.position) ?? []);
    const mine = field.models.find((peer) => isModel(peer, first)), theirs = field.models.find((peer) => isModel(peer, second));
    return other && mine && theirs ? [compared(field, mine, theirs, one, other)] : [];
  });
  const a = modelName(first), b = modelName(second);
  return { first: a, second: b, summary: summary(a, b, rows), rows: rows.sort((x, y) => (x.p_value ?? 1) - (y.p_value ?? 1)) };
}
