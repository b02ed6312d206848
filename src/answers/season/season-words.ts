import { dayInWords } from "../days.ts";
import { number, pieces } from "../wording.ts";
import type { Season, SeasonStatus } from "./season.ts";

const weeks = (count: number) => pieces(count, "whole week");

/** What there is to go by, in one sentence. */
export function statusText(status: SeasonStatus, known: number): string {
  switch (status) {
    case "no records": return "There is no ticket up to this day, so there is nothing to look ahead from.";
    case "too few weeks": return `The records hold ${weeks(known)}. Four are the fewest to say anything about the weeks ahead.`;
    case "under a year": return `The records hold ${weeks(known)}, under a year, so no season can be seen yet: the forecast is flat, and its range is wide enough for a season.`;
    case "one to two years": return `The records hold ${weeks(known)}: one year shows one rush and cannot say whether it comes again. The forecast takes it as it was; read it with care.`;
    case "ok": return `The records hold ${weeks(known)}.`;
  }
}

type Told = Pick<Season, "quiet" | "after_as_of" | "level_change" | "past" | "as_of">;

function levelNote({ level_change }: Told): string[] {
  if (!level_change?.beyond_chance) return [];
  const { now, before, ratio } = level_change;
  return [`The last 13 weeks brought ${number(now)} reels, the same weeks a year before ${number(before)}: ${number(ratio)} times as many, more than chance. The forecast follows the newer weeks where that did better before.`];
}

/** Sentences about what was left out and what has changed. */
export function seasonNotes(told: Told): string[] {
  const gaps = told.quiet.filter(({ kind }) => kind === "gap"), closed = told.quiet.length - gaps.length;
  return [
    ...gaps.map(({ from, to }) => `No ticket is written from ${dayInWords(from)} to ${dayInWords(to)}. That is left out as a gap; if the shop was closed, write it into the calendar.`),
    ...(closed > 0 ? [`${pieces(closed, "short time")} without a single reel ${closed === 1 ? "is" : "are"} taken as closed.`] : []),
    ...(told.after_as_of > 0 ? [`${pieces(told.after_as_of, "ticket")} dated after this day ${told.after_as_of === 1 ? "is" : "are"} left out.`] : []),
    ...levelNote(told),
  ];
}
