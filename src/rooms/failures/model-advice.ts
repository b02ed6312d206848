import type { ModelPage } from "../../answers/failure-pages/pages.ts";
import type { Verdict } from "../../answers/failures/verdict.ts";
import { count, FEWEST_FOR_PERCENT, number, percent } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import { inSentence, worrying } from "./verdict-words.ts";

/** What came in of a model and what for, in two sentences. */
export function cameInWords({ tickets, reels, complaint_share, others_complaint_share, general_level }: ModelPage): string {
  const reel = reels === 0 ? "" : ` on ${count(reels, "reel", "reels")} told apart by serial number`;
  const wrong = complaint_share.value === null || tickets < FEWEST_FOR_PERCENT ? "" : ` ${percent(complaint_share.value)} of them came in with something wrong (${likely(complaint_share.low, complaint_share.high)})${others_complaint_share === null ? "" : `, of the other models ${percent(others_complaint_share)}`}.`;
  const level = general_level === null ? "" : general_level > 1.25 ? ` All in all its parts fail about ${number(general_level, 1)} times as often as on other reels that live alike.`
    : general_level < 0.8 ? " All in all its parts fail less often than on other reels that live alike." : " All in all its parts fail about as often as on other reels that live alike.";
  return `${count(tickets, "ticket", "tickets")}${reel}.${wrong}${level}`;
}

/** Where the proof of a model's advice stands: the reasons for its worst part, and the sheet for the maker's agency. */
export function adviceLinks(verdicts: readonly Verdict[], href: (position: string, sheet: "" | "evidence") => string): { href: string; words: string }[] {
  const [first] = verdicts.filter(({ word }) => worrying(word));
  if (!first) return [];
  const reasons = { href: href(first.position, ""), words: `All figures on the ${inSentence(first.position_name)}` };
  return first.word === "stands out" ? [reasons, { href: href(first.position, "evidence"), words: "A page to show the maker’s agency" }] : [reasons];
}
