import { money, number, pieces, price } from "../wording.ts";
import type { BenchLoad, Changed, LoadStatus, LoadWeek } from "./bench-load.ts";

/** Why there is no queue to show, or "". */
export function loadText(status: LoadStatus): string {
  switch (status) {
    case "ok": return "";
    case "no forecast": return "Without a forecast of the reels there are no hours to lay out.";
    case "no minutes": return "No finished job has its minutes written, so reels cannot be turned into hours.";
    case "no hours": return "Nobody's hours at the bench are written, and too few finished jobs show how much the shop gets done in a week. Write the hours, and the line can be worked out.";
  }
}

/** The week with the longest line. */
export const fullest = (weeks: readonly LoadWeek[]): LoadWeek | null =>
  weeks.reduce<LoadWeek | null>((most, week) => (most === null || week.line_hours.mean > most.line_hours.mean ? week : most), null);

const longest = (weeks: readonly LoadWeek[]): number | null => weeks.reduce<number | null>((most, { wait }) => (wait === null ? most : Math.max(most ?? 0, wait.most)), null);

function compared(before: readonly LoadWeek[], after: readonly LoadWeek[]): string {
  const one = fullest(before), other = fullest(after), wait = longest(before), then = longest(after);
  if (!one || !other) return "";
  const days = wait === null || then === null ? "" : `; in the worst week 8 of 10 reels are ready within ${number(then)} days instead of ${number(wait)}`;
  return `The longest line is ${number(other.line_hours.mean)} hours instead of ${number(one.line_hours.mean)}${days}.`;
}

/** Hours by which the longest line gets shorter. */
export const shorterBy = (before: readonly LoadWeek[], after: readonly LoadWeek[]): number => (fullest(before)?.line_hours.mean ?? 0) - (fullest(after)?.line_hours.mean ?? 0);

/** What a discount may cost at most: what the same relief would cost as help. */
function discount(load: BenchLoad, changed: Pick<Changed, "moved" | "weeks">, { help_cost, currency }: { help_cost: number | null; currency: string }): string[] {
  const { moved } = changed;
  if (!moved) return [];
  if (moved.services < 1) return ["No week ahead is over the hours the bench has with slack weeks before it, so there is nothing to move."];
  const told = `About ${pieces(Math.round(moved.services), "service")} would come in ${pieces(moved.to_weeks, "slack week")} instead of ${pieces(moved.from_weeks, "full one")}.`;
  if (help_cost === null) return [told, "Write what an hour at the bench costs (room Labour), and the discount that pays can be worked out."];
  const each = (Math.max(0, shorterBy(load.weeks, changed.weeks)) * help_cost) / moved.services, share = moved.charge === null || moved.charge <= 0 ? "" : ` (${number((100 * each) / moved.charge)} % of the ${price(money(moved.charge))} one brings in)`;
  return [told, `The line gets as much shorter as ${number(Math.max(0, shorterBy(load.weeks, changed.weeks)))} hours of help would make it. A discount up to ${price(money(each))} ${currency} a service${share} costs no more than that help.`.replace("  ", " ")];
}

/** What comes of a change, in sentences. */
export function changedText(load: BenchLoad, changed: Pick<Changed, "what" | "moved" | "weeks">, about: { help_cost: number | null; currency: string }): string[] {
  const { what } = changed;
  return [
    ...discount(load, changed, about), compared(load.weeks, changed.weeks),
    ...(what.closed ? ["Reels of the closed days are taken to come in the next open week."] : []),
    ...(what.order ? ["At best: as if the order held every part that jobs after its arrival would miss."] : []),
  ].filter((sentence) => sentence !== "");
}
