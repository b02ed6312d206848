import { LONG_COVER_YEARS } from "../../answers/stock/reason.ts";
import type { ShelfMoney } from "../../answers/stock/shelf-money.ts";
import { count, money } from "../../ui/format.ts";
import { lineName } from "./stock-words.ts";

/** What lies in the drawers, and how much of it is not known. */
export function moneySentence(shelf: ShelfMoney, currency: string, locale?: string): string {
  const unknown = [
    ...(shelf.uncounted > 0 ? [`${count(shelf.uncounted, "line is", "lines are", locale)} not counted`] : []),
    ...(shelf.unpriced > 0 ? [`${count(shelf.unpriced, "line has", "lines have", locale)} no price`] : []),
  ];
  const most = shelf.families[0];
  const where = most === undefined || most.family === null ? "" : `, most of it in ${most.family}s (${money(most.value, currency, 0, locale)})`;
  return `Your drawers hold parts for ${money(shelf.value, currency, 0, locale)} in ${count(shelf.lines, "line", "lines", locale)}${where}${unknown.length > 0 ? `; ${unknown.join(", ")}` : ""}.`;
}

/** What of it is asleep. */
export function deadSentence({ dead, dead_value, spare_value }: ShelfMoney, currency: string, locale?: string): string {
  const first = dead[0];
  if (first === undefined) return `Nothing on the shelf lasts longer than ${LONG_COVER_YEARS} years at the present use.`;
  return `${money(dead_value, currency, 0, locale)} lie in ${count(dead.length, "line", "lines", locale)} that would last longer than ${LONG_COVER_YEARS} years, or that nothing used; ` +
    `parts for ${money(spare_value, currency, 0, locale)} of it two years will hardly take. The dearest is ${lineName(first.line)}: don't reorder it.`;
}
