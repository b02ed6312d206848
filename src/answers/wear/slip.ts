import type { AdviceDue, AdviceQuestion, CustomerSlip } from "./advice.ts";
import type { Clock } from "./wear.ts";
import { CLOCK_WORD, CLOCK_WORDS, said } from "./wear-words.ts";

const ONE: Readonly<Record<Clock, string>> = { salt_days: "day in salt or brackish water", use_days: "day of fishing", months: "month" };
const MANY: Readonly<Record<Clock, string>> = { salt_days: "days in salt or brackish water", use_days: "days of fishing", months: "months" };
const KINDS: Readonly<Record<string, string>> = { spinning: "spinning reel", conventional: "conventional reel", baitcaster: "baitcaster", fly: "fly reel" };

const whole = (after: number, clock: Clock) => `${after} ${after === 1 ? ONE[clock] : MANY[clock]}`;

/** What reel is meant, in the customer's words. */
export function reelText({ maker, model, reel_kind, water, rinse }: AdviceQuestion): string {
  const reel = model === null ? `a ${KINDS[reel_kind ?? ""] ?? "reel"}` : [maker, model].filter((part) => part !== null).join(" ");
  const fished = water === null ? "" : ` fished in ${water} water`, rinsed = rinse === null ? "" : `, ${rinse} rinsed`;
  return `${reel}${fished}${rinsed}`;
}

const part = (name: string | null) => (name ?? "").replace(/^./, (letter) => letter.toLowerCase());

/** By when a due that is known has how many of a hundred failed, with its range. */
function reached({ after, value, low, high, clock, set_by_name }: AdviceDue, share: number): { text: string; rounded: boolean }[] {
  if (after === null || value === null) return [];
  const range = low === null && high === null ? "" : ` (likely ${low === null ? "0" : said(low)} to ${high === null ? "more than seen" : said(high)})`;
  return [{ text: `${share} have a failed ${part(set_by_name)} by ${said(value)} ${said(value) === "1" ? CLOCK_WORD[clock] : CLOCK_WORDS[clock]}${range}`, rounded: said(value) !== String(after) }];
}

/** Why then, for the owner: which part has failed by when, and how sure that is. */
export function dueText(question: AdviceQuestion, by_days: AdviceDue, by_months: AdviceDue): string {
  const share = Math.round(100 * question.risk), known = [by_days, by_months].flatMap((due) => reached(due, share));
  if (known.length === 0) {
    return by_days.status === "beyond the records" || by_months.status === "beyond the records"
      ? `For ${reelText(question)} no part that matters reached ${share} failed of 100 as far as the records go.` : `Too few records to say when ${reelText(question)} should come in.`;
  }
  const down = known.some(({ rounded }) => rounded) ? " The advice is rounded down from this to what a customer can remember." : "";
  return `Of 100 such reels ${known.map(({ text }) => text).join("; ")}.${down}`;
}

/** The slip for the customer. */
export function customerSlip(question: AdviceQuestion, by_days: AdviceDue, by_months: AdviceDue): CustomerSlip {
  const whens = [by_days, by_months].flatMap(({ after, clock }) => (after === null ? [] : [whole(after, clock)]));
  const first = [by_days, by_months].find(({ status }) => status === "ok");
  const lines = whens.length === 0
    ? ["From our own bench records we cannot yet say when this reel should come in. Once a year is common practice."]
    : [
      `Please bring it in after ${whens.join(" or ")}${whens.length > 1 ? ", whichever comes first" : ""}.`,
      first?.set_by_name ? `The part that usually goes first: ${part(first.set_by_name)}.` : "",
      "Counted since its last service here.",
    ].filter((line) => line !== "");
  return {
    heading: `When to bring it in: ${reelText(question)}`, lines,
    caution: "This is what we saw on reels like yours, not a promise for this one. Bring it at once if it feels rough, slips or got wet inside.",
  };
}
