import { number, pieces } from "../wording.ts";
import type { Budget } from "./budget.ts";

/** What the owner has to know beside the curve: what was assumed, and what was left out. */
export function budgetNotes({ question, groups, left_out, jobs, years, rush, checked_on, fared }: Omit<Budget, "notes">): string[] {
  if (fared.length === 0) return ["Nothing is known yet of which parts jobs need, or no part on the list has a count and a price: no choice can be made."];
  const { refused, uncounted, unpriced, can_do_without } = left_out;
  const season = years === 0
    ? "Less than a year of records: no season can be seen, any week of the past may come again."
    : `Played through with whole weeks of your own past, of the same season, from ${pieces(years, "year")}${years === 1 ? ": what was special in that year looks like the season" : ""}.`;
  return [
    `${season} Told on ${number(checked_on)} futures that had no part in the choice, with about ${number(jobs)} jobs each that need one of ${pieces(groups.length, "part")}.`,
    "A job waits for its last missing part. Jobs take parts in the order they come in, and what is on order is taken as there in time.",
    ...(question.lasting === "rush" && rush === null ? ["No quarter of your year is busier than the others, so the list lasts until the next order arrives."] : []),
    ...(refused > 0 ? [`${pieces(refused, "line")} called assorted cannot be planned; no job waits for them here.`] : []),
    ...(uncounted > 0 ? [`${pieces(uncounted, "part")} without a shelf count left out; no job waits for them here.`] : []),
    ...(unpriced > 0 ? [`${pieces(unpriced, "part")} without a price left out; no job waits for them here.`] : []),
    ...(can_do_without > 0 ? [`${pieces(can_do_without, "part")} that a job can do without left out.`] : []),
    "What nobody has needed yet is not in it, and carriage and a supplier's smallest order are not either.",
  ];
}
