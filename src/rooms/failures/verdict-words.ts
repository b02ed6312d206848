import type { Figure, Verdict, VerdictSide, VerdictWord } from "../../answers/failures/verdict.ts";
import { modelName } from "../../answers/model-name.ts";
import type { Tone } from "../../ui/exploded/drawn-part.ts";
import { DASH, FEWEST_FOR_PERCENT, number } from "../../ui/format.ts";

/** What each word means, in one line; stands beside the drawing and under the tables. */
export const WORD_LINES: Readonly<Record<VerdictWord, string>> = {
  "stands out": "fails clearly more often than the others; neither chance nor the way these reels come in explains it",
  "worse than most, not yet sure": "fails more often, but a guard against false alarms is not passed yet; look again next season",
  "cannot tell apart from how these reels come in": "salt, rinsing or who brings it in could be all there is to it",
  "no different": "nothing says that it fails more often than the others",
  "too few": "too few inspected, or too few failures to expect, to say anything",
};

const TONES: Readonly<Record<VerdictWord, Tone>> = {
  "stands out": "strong", "worse than most, not yet sure": "striped", "cannot tell apart from how these reels come in": "dotted",
  "no different": "plain", "too few": "few",
};
/** How a part with this verdict is filled. */
export const verdictTone = (word: VerdictWord): Tone => TONES[word];

/** True for the two words that ask for the owner's eye. */
export const worrying = (word: VerdictWord): boolean => word === "stands out" || word === "worse than most, not yet sure";

const many = (value: number, locale?: string): string => (value > 99 ? "many" : number(value, 1, locale));

/**
 * A ratio with its range, as times as often as the others.
 *
 * @example
 * timesWords({ value: 5.06, low: 2.8, high: 9.04 }, "en-GB"); // => "5.1 (2.8 to 9.0)"
 * timesWords({ value: null, low: null, high: null }); // => "–"
 */
export function timesWords({ value, low, high }: Figure, locale?: string): string {
  if (value === null) return DASH;
  return low === null || high === null ? number(value, 1, locale) : `${number(value, 1, locale)} (${number(low, 1, locale)} to ${many(high, locale)})`;
}

/** `32 of 236`. */
export const ofWords = (failed: number, inspected: number, locale?: string): string => `${number(failed, 0, locale)} of ${number(inspected, 0, locale)}`;

/** Share over share, nothing taken into account; null where either side gives none or is under ten. */
export function rawRatio({ failed, inspected, others_failed, others_inspected }: VerdictSide): number | null {
  if (inspected < FEWEST_FOR_PERCENT || others_failed === 0) return null;
  return (failed / inspected) / (others_failed / others_inspected);
}

/** Maker and model, a series with "(all sizes)". */
export const whose = (one: Pick<Verdict, "maker" | "model" | "series">): string => `${modelName(one)}${one.series ? " (all sizes)" : ""}`;

/** Part names start small inside a sentence. */
export const inSentence = (name: string): string => name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());
