import { times, verdictName } from "../failures/reasons.ts";
import { sideOf, VERDICT_WORDS } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import { modelName } from "../model-name.ts";
import { decimal } from "../wording.ts";

/** What every sheet with shares on it has to say. */
export const PAGE_CAUTIONS: readonly string[] = [
  "These are reels that came in here, not reels sold: those that never fail, and those thrown away, are not in the records.",
  "A link is not a cause: owners, water and care differ between models, and only what is written down could be taken into account.",
  "A part changed as routine is not a failure.",
  "Days fished are the customers' guesses, which makes real differences look smaller than they are.",
];

/** Part names start small inside a sentence. */
export const small = (name: string): string => name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());

/** Part names as a list: `a, b and c`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

const ratioOf = (verdict: Verdict): string => {
  const { adjusted } = sideOf(verdict, verdict.decided_on);
  if (adjusted.value === null || adjusted.low === null || adjusted.high === null) return "";
  return `, ${times(adjusted.value)} as on reels used alike (likely ${decimal(adjusted.low, 1)} to ${decimal(adjusted.high, 1)})`;
};

/** What the models of one part show, in one or two sentences. */
export function positionSummary(part: string, verdicts: readonly Verdict[]): string {
  const of = (word: Verdict["word"]) => verdicts.filter((one) => one.word === word && !one.series), out = of("stands out"), worse = of("worse than most, not yet sure");
  const names = (list: readonly Verdict[]) => listed(list.map(modelName));
  const [first] = out, also = worse.length > 0 ? ` ${names(worse)} may be worse than most.` : "";
  if (first) return out.length === 1 ? `${part}: ${names(out)} stands out${ratioOf(first)}.${also}` : `${part}: ${names(out)} stand out.${also}`;
  if (worse.length > 0) return `${part}: no model stands out; ${names(worse)} may be worse than most, not yet sure.`;
  return of("no different").length > 0 ? `${part}: no model fails more often than chance and use would make it.` : `${part}: these records cannot tell the models apart.`;
}

/** Why one model of two is the worse at a part, in a sentence. */
export function beside(first: Verdict, second: Verdict, ratio: { value: number | null; low: number | null; high: number | null }): string {
  const part = first.position_name, a = verdictName(first), b = verdictName(second);
  if (ratio.value === null || ratio.low === null || ratio.high === null) return `${part}: the two cannot be compared, one of them has no failure or no like.`;
  if (ratio.low > 1) return `${part}: the ${a} fails ${times(ratio.value)} as the ${b}.`;
  if (ratio.high < 1) return `${part}: the ${b} fails ${times(1 / ratio.value)} as the ${a}.`;
  return `${part}: no difference that chance could not make.`;
}

/** Worst words first, dearest first within a word. */
export const worstFirst = (a: Verdict, b: Verdict): number => VERDICT_WORDS.indexOf(a.word) - VERDICT_WORDS.indexOf(b.word) || b.cost.money - a.cost.money;

/** The method in three sentences, for a reader who has never met a statistic. */
export const METHOD: readonly [string, string, string] = [
  "Every job that opened the part counts as looked at, also when it was fine; a failure is a part that had to be replaced for its state or was graded 3 or worse.",
  "The model is compared with the other models among reels of the same water, rinsing, days fished and way of coming in, so that a hard life is not taken for a bad part.",
  "The range says how far chance could have moved the figure, reels that came together counting as fewer; among the many looks at parts of one kind false alarms are kept under one in twenty.",
];
