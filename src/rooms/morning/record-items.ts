import type { AdviceScore } from "../../answers/morning/advice-score.ts";
import type { Look } from "../../answers/morning/last-look.ts";
import { count, date, number } from "../../ui/format.ts";
import { linkTo, type Item, type Part } from "./sheet-part.ts";

/** What waits for the owner's answer. */
export interface ToAnswer {
  /** Rows that could not be taken in as written. */
  readonly rows: number;
  /** Ticket numbers with two contents, names that may be one, bearings of one of two sizes. */
  readonly conflicts: number;
  readonly names: number;
  readonly sizes: number;
  /** Words and wordings of notes that nothing was read from, or not surely. */
  readonly words: number;
}

export const answersWaiting = ({ rows, conflicts, names, sizes, words }: ToAnswer): number => rows + conflicts + names + sizes + words;

/** Rows and words that need an answer. */
export function recordsPart(waiting: ToAnswer, before: Look | null, locale?: string): Part {
  const { rows, conflicts, names, sizes, words } = waiting, then = before?.figures.to_answer ?? null, now = answersWaiting(waiting), records = linkTo("records");
  const all: readonly [number, string, string, string, string][] = [
    [rows, "row", "rows", records, " could not be taken in as written; each is listed with its file, line and reason."],
    [conflicts, "ticket number", "ticket numbers", records, ` ${conflicts === 1 ? "comes" : "come"} with two contents; both are kept until you settle it.`],
    [names, "name", "names", records, " may be another reel’s, written in a second way."],
    [words, "word or wording", "words and wordings", records, ` of your notes ${words === 1 ? "was" : "were"} not understood, or not surely; bring the file in again, and each is asked once.`],
    [sizes, "bearing", "bearings", linkTo("stock"), " may be of either of two sizes, and shares no stock until you say which."],
  ];
  return {
    title: "Records", to_do: true, changed: then === null || then === now ? "" : `${number(then, 0, locale)} waited for an answer then, ${number(now, 0, locale)} now.`,
    items: all.filter(([n]) => n > 0).map(([n, one, many, href, after]): Item => ({ before: "", figure: count(n, one, many, locale), href, after, why: "" })),
    nothing: "Nothing waits for an answer: every row came in, and no name or number is in doubt.",
    more: { words: "Bring records in, on Records", href: records },
  };
}

/** How the stock advice would have done on the shop's own past. @param why_not said where it could not be tried */
export function scorePart(score: AdviceScore | null, why_not: string, locale?: string): Part {
  const item = (of: AdviceScore): Item => ({
    before: "Had orders gone out as advised, ", figure: `${number(of.waited, 0, locale)} of ${count(of.jobs, "job", "jobs", locale)}`, href: linkTo("stock"),
    after: ` would have waited for a part from ${date(of.from, locale)} to ${date(of.to, locale)}${of.habits.map(({ policy, waited }) => `; by “${policy}” ${number(waited, 0, locale)}`).join("")}.`, why: "",
  });
  return {
    title: "Advice so far", to_do: false, changed: "", items: score === null ? [] : [item(score)], nothing: why_not,
    more: { words: "How good is the advice, at the end of Stock", href: linkTo("stock") },
  };
}
