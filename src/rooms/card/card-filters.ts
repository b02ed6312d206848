import type { Choices, ModelChoice } from "../../answers/choices/choices.ts";
import type { ComplaintWords } from "../../answers/card/complaint-of.ts";
import { complaintOf, ROUTINE } from "../../answers/card/complaint-of.ts";
import type { ReelOnBench } from "../../answers/card/reel-card.ts";
import { modelName } from "../../answers/model-name.ts";
import { REEL_KINDS } from "../../records/columns.ts";
import { oneOf, text, type Values } from "../../ui/url-state.ts";

/** Kinds of reel that the trade's lists know. */
export const KINDS = REEL_KINDS.filter((kind) => kind !== "other");

/** What stands for a kind of reel where a model could stand too. */
export const ofKind = (kind: string): string => `any ${kind}`;

/** The reel on the bench as it stands in the address. `said` is what the customer says, in his own words. */
export const cardFields = ({ models }: Pick<Choices, "models">, complaints: readonly ComplaintWords[]) => ({
  reel: text([...KINDS.map(ofKind), ...models.map(modelName)]),
  fished: oneOf(["", "salt", "brackish", "fresh"], ""),
  rinse: oneOf(["", "never", "sometimes", "always"], ""),
  days: text(), months: text(),
  complaint: oneOf(["", ...complaints.map(({ code }) => code)], ""),
  said: text(), job: text(),
});
export type CardFields = ReturnType<typeof cardFields>;
export type CardValues = Values<CardFields>;

/** A whole number of days or months as somebody types it; null for nothing and for what is none. */
export function wholeOf(written: string): number | null {
  return /^\d{1,4}$/.test(written.trim()) ? Number(written.trim()) : null;
}

/** Whether something is written that is no number. */
export const notWhole = (written: string): boolean => written.trim() !== "" && wholeOf(written) === null;

const given = (value: string) => (value === "" ? null : value);

/** The models that a kind of reel is known for: those with a kind, by name. */
export const reelsToChoose = (models: readonly ModelChoice[]): readonly string[] =>
  [...new Set(models.filter(({ reel_kind }) => KINDS.some((kind) => kind === reel_kind)).map(modelName))].sort((a, b) => a.localeCompare(b));

/** The complaint chosen, else the one that the customer's words name. */
export const complaintMeant = ({ complaint, said }: Pick<CardValues, "complaint" | "said">, complaints: readonly ComplaintWords[]): string | null =>
  given(complaint) ?? (said.trim() === "" ? null : complaintOf(said, complaints));

/** The reel asked about; null while no reel is chosen. */
export function reelOnBench(values: CardValues, models: readonly ModelChoice[], complaints: readonly ComplaintWords[]): ReelOnBench | null {
  const kind = KINDS.find((one) => ofKind(one) === values.reel), model = models.find((one) => modelName(one) === values.reel);
  const reel_kind = kind ?? model?.reel_kind ?? null, meant = complaintMeant(values, complaints);
  if (reel_kind === null) return null;
  return {
    reel_kind, maker: kind ? null : model?.maker ?? null, model: kind ? null : model?.model ?? null, water: given(values.fished), rinse: given(values.rinse),
    days: wholeOf(values.days), months: wholeOf(values.months), complaint: meant === ROUTINE ? null : meant,
  };
}
