import type { ReelKnown, VisitBefore } from "../../answers/bench/bench.ts";
import { date, number } from "../../ui/format.ts";

const OFTEN = 8;

export const reelName = ({ maker, model }: Pick<ReelKnown, "maker" | "model">): string => `${maker ?? ""} ${model}`.trim();

/** The shop's reel of this name with its maker, or of this model alone where only one maker has it; else null. */
export function reelNamed(reels: readonly ReelKnown[], text: string): ReelKnown | null {
  const plain = text.trim().toLowerCase(), exact = reels.find((reel) => reelName(reel).toLowerCase() === plain);
  const alone = reels.filter(({ model }) => model.toLowerCase() === plain);
  return exact ?? (alone.length === 1 ? alone[0] ?? null : null);
}

/** Those that came in most, for one touch. */
export const reelsOften = (reels: readonly ReelKnown[]): readonly ReelKnown[] => reels.filter(({ tickets }) => tickets > 0).slice(0, OFTEN);

/** An earlier visit of the same serial in words. */
export function visitWords({ ticket_no, received_on, maker, model, job, months }: VisitBefore): string {
  return `${ticket_no} on ${date(received_on)} (${number(months, 1)} months before): ${[`${maker ?? ""} ${model ?? ""}`.trim(), job].filter(Boolean).join(", ")}`;
}
