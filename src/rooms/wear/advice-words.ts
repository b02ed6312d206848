import type { Advice, AdviceDue, AdviceQuestion, AdviceStatus, Skipping } from "../../answers/wear/advice.ts";
import { modelName } from "../../answers/model-name.ts";
import { count, minutes, money, number, readerLocale } from "../../ui/format.ts";
import { UNITS } from "./wear-filters.ts";

/** Why a part has no figure. */
export const DUE_STATUS: Readonly<Record<AdviceStatus, string>> = {
  "ok": "", "beyond the records": "beyond the records", "too few": "too few to say", "no wear": "no likelier with more use",
};

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

/** Failed parts are told of so many reels: a fraction of a part is not. */
const REELS = 10;
const ofReels = (parts: number) => Math.round(REELS * parts);
/** More parts by name than these are only counted. */
const MOST_NAMED = 3;

/** Parts in the middle of a sentence: `Clutch yoke, fold pivot and handle knob`. */
function together([first = "", ...others]: readonly string[]): string {
  const small = others.map((name) => name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase()));
  return small.length === 0 ? first : `${[first, ...small.slice(0, -1)].join(", ")} and ${small.at(-1) ?? ""}`;
}

/** Parts that have no figure in the records, "" where all have. */
function lacking(without: readonly string[], what: string, of: string, locale?: string): string {
  if (without.length === 0) return "";
  const named = without.length > MOST_NAMED ? `${count(without.length, "part has", "parts have", locale)}` : `${together(without)} ${without.length === 1 ? "has" : "have"}`;
  return ` ${named} no ${what} in the records and ${without.length === 1 ? "is" : "are"} not in the ${of}.`;
}

/** What leaving out one yearly service costs, and what is not in it. */
export function skippingSentence(skip: Skipping, currency: string, locale?: string): string {
  const { more_minutes, more_parts } = skip, one = ofReels(skip.failed_after_one), two = ofReels(skip.failed_after_two);
  const year = `These reels see ${count(Math.round(skip.per_year), UNITS[skip.clock].one, UNITS[skip.clock].many, locale)} in a usual year.`;
  const first = one === 0 ? "hardly any failed part" : `about ${count(one, "failed part", "failed parts", locale)}`;
  const parts = `Ten such reels have ${first} between them after one year, ${two > one ? `about ${number(two, 0, locale)}` : "hardly more"} after two`;
  const more = [
    more_minutes !== null && more_minutes >= 0.5 ? `${minutes(more_minutes, locale)} more at the bench` : "",
    more_parts !== null && more_parts >= 0.5 ? `${money(more_parts, currency, 0, locale)} more for parts` : "",
  ].filter((word) => word !== "").join(" and ");
  const missing = [
    more_parts === null ? " No prices of parts are in the records, so the money cannot be told." : lacking(skip.without_price, "price", "money", locale),
    more_minutes === null ? " The records do not show what a failed part takes at the bench." : lacking(skip.without_minutes, "minutes", "time", locale),
  ].join("");
  return `${year} ${parts}${more ? `: a skipped year costs each about ${more} at the next visit` : ""}.${missing}${skip.note ? ` ${skip.note}` : ""}`;
}

/** Heading of the slip; a question that names nothing is about the customer's own reel. */
export const slipTitle = ({ question: { reel_kind, model, water, rinse }, slip }: Advice): string =>
  [reel_kind, model, water, rinse].every((one) => one === null) ? "When to bring your reel in" : slip.heading;

/** The month by which the reel should come in, counted from the day of its service; null where no months are known. */
export function comeInBy({ by_months: { after } }: Advice, today: string, locale = readerLocale()): string | null {
  const [year, month] = today.split("-").map(Number);
  if (after === null || year === undefined || month === undefined) return null;
  return new Intl.DateTimeFormat(locale, { month: "long", year: "numeric", timeZone: "UTC" }).format(Date.UTC(year, month - 1 + after, 1));
}

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
