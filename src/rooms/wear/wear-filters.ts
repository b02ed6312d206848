import type { Choices } from "../../answers/choices/choices.ts";
import { EVERYTHING } from "../../answers/filter.ts";
import { modelName } from "../../answers/model-name.ts";
import type { AdviceQuestion } from "../../answers/wear/advice.ts";
import { CLOCK_WORD, CLOCK_WORDS } from "../../answers/wear/wear-words.ts";
import { CLOCKS, type Clock, type WearFilter, type WearRow } from "../../answers/wear/wear.ts";
import { REEL_KINDS } from "../../records/columns.ts";
import { oneOf, text, type Values } from "../../ui/url-state.ts";

/** What stands for a kind of reel where a model could stand too. */
export const ofKind = (kind: string): string => `any ${kind}`;

/** Names of the models there are, in the order of the alphabet. */
export const modelNames = (models: Choices["models"]): readonly string[] =>
  [...new Set(models.map(modelName))].sort((a, b) => a.localeCompare(b));

/** Filters of the room as they stand in the address; the last four are the customer's reel. */
export const wearFields = ({ models, positions }: Pick<Choices, "models" | "positions">) => ({
  position: text(positions.map((one) => one.position)),
  clock: oneOf(CLOCKS, "salt_days"),
  kind: oneOf(["", ...REEL_KINDS], ""),
  model: text(modelNames(models)),
  water: oneOf(["", "salt", "brackish", "fresh"], ""),
  reel: text([...REEL_KINDS.map(ofKind), ...modelNames(models)]),
  fished: oneOf(["", "salt", "brackish", "fresh"], ""),
  rinse: oneOf(["", "never", "sometimes", "always"], ""),
  risk: oneOf(["5", "10", "20"], "10"),
});
export type WearFields = ReturnType<typeof wearFields>;
export type WearValues = Values<WearFields>;

const given = (value: string) => (value === "" ? null : value);

/** Maker and model behind a name of the address; both null for none. */
function named(models: Choices["models"], name: string): { readonly maker: string | null; readonly model: string | null } {
  const found = models.find((one) => modelName(one) === name);
  return found ? { maker: found.maker, model: found.model } : { maker: null, model: given(name) };
}

/** The records the curves look at. */
export function wearFilter(values: WearValues, models: Choices["models"]): WearFilter {
  return {
    ...EVERYTHING, ...named(models, values.model), reel_kind: given(values.kind), water: given(values.water),
    clock: CLOCKS.find((one) => one === values.clock) ?? "salt_days", first_sights: "planned",
  };
}

/** The question about a customer's reel, which is a kind or a model. */
export function adviceQuestion(values: WearValues, models: Choices["models"]): AdviceQuestion {
  const kind = REEL_KINDS.find((one) => ofKind(one) === values.reel) ?? null;
  const reel = kind === null ? named(models, values.reel) : { maker: null, model: null };
  return { reel_kind: kind, ...reel, water: given(values.fished), rinse: given(values.rinse), risk: Number(values.risk) / 100 };
}

/** The position to show: the chosen one, else the first to fail of those that wear with the clock, else the one with most behind it; null without any. */
export function shownRow(rows: readonly WearRow[], position: string): WearRow | null {
  const chosen = rows.find((row) => row.position === position);
  const first = rows.find((row) => row.wears === "yes" && row.b10.value !== null && !row.b10.beyond);
  return chosen ?? first ?? [...rows].sort((a, b) => b.n - a.n)[0] ?? null;
}

/** How the clock's unit is written behind a number. */
export const UNITS: Readonly<Record<Clock, { readonly one: string; readonly many: string }>> = {
  salt_days: { one: CLOCK_WORD.salt_days, many: CLOCK_WORDS.salt_days },
  use_days: { one: CLOCK_WORD.use_days, many: CLOCK_WORDS.use_days },
  months: { one: CLOCK_WORD.months, many: CLOCK_WORDS.months },
};

/** The filters in words, for the printed sheet, where the fields are not shown. */
export function filterWords({ clock, kind, model, water }: WearValues): string {
  const only = [kind === "" ? "" : `${kind} reels`, model, water === "" ? "" : `${water} water`].filter((word) => word !== "").join(", ");
  const unit = UNITS[CLOCKS.find((one) => one === clock) ?? "salt_days"].many;
  return `Life counted in ${unit}${only ? `; only ${only}` : ""}.`;
}
