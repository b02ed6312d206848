import type { ModelPage } from "../../answers/failure-pages/pages.ts";
import { sideOf, type Verdict } from "../../answers/failures/verdict.ts";
import { count, FEWEST_FOR_PERCENT, number, percent } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import { ofWords, worrying } from "./verdict-words.ts";

/**
 * Why a model's advice says what it says, in one sentence by the counts that weigh most.
 *
 * @param verdicts of the model's parts, worst word first
 */
export function adviceWhy(verdicts: readonly Verdict[]): string {
  const [first] = verdicts.filter(({ word }) => worrying(word));
  if (first) {
    const { failed, inspected, others_failed, others_inspected } = sideOf(first, first.decided_on);
    const rest = first.word === "stands out" ? "neither chance nor how these reels are used explains the difference" : "which is more often, but not yet surely more than chance or the life of these reels would make it";
    return `When such reels were opened it had failed in ${ofWords(failed, inspected)}, on the other models in ${ofWords(others_failed, others_inspected)}; ${rest}.`;
  }
  const judged = verdicts.filter(({ word }) => word !== "too few").length;
  return judged === 0 ? "Too few of these reels have been opened here to tell a weak part from bad luck."
    : `The ${count(judged, "part", "parts")} seen often enough ${judged === 1 ? "does" : "do"} not fail surely more often than on other reels that live alike.`;
}

/** What came in of a model and what for, in two sentences. */
export function cameInWords({ tickets, reels, complaint_share, others_complaint_share, general_level }: ModelPage): string {
  const reel = reels === 0 ? "" : ` on ${number(reels)} reels told apart by serial number`;
  const wrong = complaint_share.value === null || tickets < FEWEST_FOR_PERCENT ? "" : ` ${percent(complaint_share.value)} of them came in with something wrong (${likely(complaint_share.low, complaint_share.high)})${others_complaint_share === null ? "" : `, of the other models ${percent(others_complaint_share)}`}.`;
  const level = general_level === null ? "" : general_level > 1.25 ? ` All in all its parts fail about ${number(general_level, 1)} times as often as on other reels that live alike.`
    : general_level < 0.8 ? " All in all its parts fail less often than on other reels that live alike." : " All in all its parts fail about as often as on other reels that live alike.";
  return `${number(tickets)} tickets${reel}.${wrong}${level}`;
}
