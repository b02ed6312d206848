import type { Advice, AdviceDue, AdviceQuestion, Skipping } from "../../answers/wear/advice.ts";
import { modelName } from "../../answers/model-name.ts";
import { count, minutes, money, number } from "../../ui/format.ts";
import { UNITS } from "./wear-filters.ts";

/** The reel the question is about, as one would say it. */
export function reelWords({ reel_kind, maker, model }: AdviceQuestion): string {
  if (model !== null) return modelName({ maker, model });
  return reel_kind === null ? "any reel" : `any ${reel_kind} reel`;
}

/** How the reel is used; "" when nothing was chosen. */
export function useWords({ water, rinse }: AdviceQuestion): string {
  return [water === null ? "" : `${water} water`, rinse === null ? "" : `${rinse} rinsed`].filter((word) => word !== "").join(", ");
}

const ODDS: Readonly<Record<string, string>> = { "0.05": "1 reel in 20", "0.1": "1 reel in 10", "0.2": "1 reel in 5" };
/** The risk as odds an owner can say aloud. */
export const riskWords = (risk: number): string => ODDS[String(risk)] ?? `${number(risk * 100)} reels in 100`;

const due = (one: AdviceDue, locale?: string) => (one.after === null ? null : count(one.after, UNITS[one.clock].one, UNITS[one.clock].many, locale));

/** "40 salt days or 12 months", or the one that is known; null when neither is. */
export function dueWords({ by_days, by_months }: Advice, locale?: string): string | null {
  const known = [due(by_days, locale), due(by_months, locale)].filter((word) => word !== null);
  return known.length > 0 ? known.join(" or ") : null;
}

/** The advice in one line. */
export function adviceHeadline(advice: Advice, locale?: string): string {
  const when = dueWords(advice, locale);
  if (when !== null) return `Come in after ${when}${advice.by_days.after !== null && advice.by_months.after !== null ? ", whichever comes first" : ""}.`;
  return advice.status === "beyond the records" ? "No part that matters fails this often within what the records have seen." : "Too few records of such reels to advise on.";
}

/** What leaving out one yearly service costs, in one or two sentences. */
export function skippingSentence(skip: Skipping, currency: string, locale?: string): string {
  const year = `These reels see ${number(skip.per_year, 0, locale)} ${UNITS[skip.clock].many} in a usual year.`;
  const parts = `After one year ${number(skip.failed_after_one, 1, locale)} parts have failed, after two ${number(skip.failed_after_two, 1, locale)}`;
  const more = [
    skip.more_minutes !== null && skip.more_minutes > 0 ? `${minutes(skip.more_minutes, locale)} more at the bench` : "",
    skip.more_parts !== null && skip.more_parts > 0 ? `${money(skip.more_parts, currency, 0, locale)} more for parts` : "",
  ].filter((word) => word !== "").join(" and ");
  return `${year} ${parts}${more ? `: a skipped year costs about ${more} at the next visit` : ""}.${skip.note ? ` ${skip.note}` : ""}`;
}

/** Heading of the slip; a question that names nothing is about the customer's own reel. */
export const slipTitle = ({ question: { reel_kind, model, water, rinse }, slip }: Advice): string =>
  [reel_kind, model, water, rinse].every((one) => one === null) ? "When to bring your reel in" : slip.heading;

/** What to tick on the slip. */
export const tickWords = ({ by_days: { clock } }: Advice): string =>
  `Tick one for each ${clock === "salt_days" ? "day in salt or brackish water" : "day of fishing"}; when they are full, bring it in.`;

/** Stands on every slip: what it says never goes over the maker. */
export const SLIP_DEFERS = "If the maker's service sheet asks for service sooner, go by that. Work under warranty belongs to the maker's authorised service.";

/** Most boxes to tick that fit on a slip. */
const MOST_BOXES = 60;

/** Boxes for the customer to tick, one a day; none where the days are unknown or too many. */
export function tickBoxes({ by_days }: Advice): readonly number[] {
  const days = by_days.after ?? 0;
  return days > 0 && days <= MOST_BOXES ? Array.from({ length: days }, (_, at) => at + 1) : [];
}
