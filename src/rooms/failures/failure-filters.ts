import type { Engine } from "../../db/engine.ts";
import type { FailureFilter, FailureRate } from "../../answers/failures/failure-rate.ts";
import { failureCounts, failureRates } from "../../answers/failures/failure-rates.ts";
import type { VerdictFilter } from "../../answers/failures/verdict-records.ts";
import { modelName } from "../../answers/model-name.ts";
import { REEL_KINDS } from "../../records/columns.ts";
import { date } from "../../ui/format.ts";
import { rowsBehindLink } from "../../ui/rows-behind-link.ts";
import { day, oneOf, text, type Values } from "../../ui/url-state.ts";

/** Filters of the room as they stand in the address. */
export const FAILURE_FIELDS = {
  opening: oneOf(["planned", "complaint", "both"], "planned"),
  counted: oneOf(["opened", "written"], "opened"),
  kind: oneOf(["", ...REEL_KINDS], ""),
  maker: text(),
  water: oneOf(["", "salt", "brackish", "fresh"], ""),
  from: day(),
  to: day(),
  position: text(),
  model: text(),
  /** Maker and the name that the sizes of a series share. */
  series: text(),
  found: oneOf(["failed", "all"], "failed"),
  /** The model to put beside `model`. */
  other: text(),
  sheet: oneOf(["", "evidence"], ""),
  /** Kind of reel whose drawing is shown; "" is the kind most often here. */
  drawing: oneOf(["", ...REEL_KINDS], ""),
};
export type FailureValues = Values<typeof FAILURE_FIELDS>;

const given = (value: string) => (value === "" ? null : value);

/** The records a question looks at; position and model are chosen from the answer, so that the comparison stays whole. */
export function failureFilter(values: FailureValues): FailureFilter {
  return {
    opening: values.opening === "planned" || values.opening === "complaint" ? values.opening : "*",
    denominator: values.counted === "written" ? "strict" : "coverage",
    reel_kind: given(values.kind), maker: given(values.maker), water: given(values.water), from: given(values.from), to: given(values.to),
    model: null, group: null, position: null,
  };
}

/** The same records for the verdicts; every model is judged beside all others, so none is left out. */
export function verdictFilter(values: FailureValues): VerdictFilter {
  const { denominator, reel_kind, water, from, to } = failureFilter(values);
  return { denominator, reel_kind, water, from, to, group: null, position: null };
}

/** The filters in words, for the printed sheet, where the fields are not shown; "" while none is set. */
export function filterWords(values: FailureValues): string {
  const kind = values.kind === "" ? "" : `${values.kind} reels`, water = values.water === "" ? "" : `${values.water} water`;
  const from = values.from === "" ? "" : `from ${date(values.from)}`, to = values.to === "" ? "" : `to ${date(values.to)}`;
  const words = [kind, values.maker, water, from, to].filter((word) => word !== "").join(", ");
  return words === "" ? "" : `Only ${words}.`;
}

export interface FailureSheet {
  /** For the table. */
  readonly rates: readonly FailureRate[];
  /** For the picture: where both openings were asked for they are drawn apart, unless the records never tell them. */
  readonly drawn: readonly FailureRate[];
}

/** The failure table of a filter, and what to draw of it. */
export async function failureSheet(engine: Engine, filter: FailureFilter, signal?: AbortSignal): Promise<FailureSheet> {
  const rates = await failureRates(engine, filter, signal);
  if (filter.opening !== "*") return { rates, drawn: rates };
  const planned = await failureCounts(engine, { ...filter, opening: "planned" }, signal);
  const complaint = await failureCounts(engine, { ...filter, opening: "complaint" }, signal);
  return { rates, drawn: planned.length + complaint.length > 0 ? [...planned, ...complaint] : rates };
}

/** The records behind a chosen part, on the chosen model or on all; null while no part is chosen, or the model is not there. */
export function findingFilter(
  values: FailureValues, rates: readonly FailureRate[],
): (FailureFilter & { readonly position: string }) | null {
  if (values.position === "") return null;
  const filter = { ...failureFilter(values), position: values.position };
  if (values.model === "") return filter;
  const row = rates.find((one) => modelName(one) === values.model);
  return row ? { ...filter, model: row.model, maker: row.maker } : null;
}

/** Where every row behind a share of failures is listed, under the same filter. */
export function failureRowsLink({ opening, denominator, reel_kind, maker, model, water, from, to, position }: FailureFilter): string {
  return rowsBehindLink({
    of: "inspections", position, kind: reel_kind, maker, model, water, from, to, opening: opening === "*" ? "both" : opening, counted: denominator === "strict" ? "written" : "opened",
  });
}
