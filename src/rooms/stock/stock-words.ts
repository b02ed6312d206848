import type { RestockLine, SupplierSheet } from "../../answers/stock/restock-line.ts";
import type { Restock } from "../../answers/stock/restock.ts";
import { count, money, number } from "../../ui/format.ts";

/** What a line is called: its part's name, else its number, else its group's. */
export const lineName = (line: RestockLine): string => line.name ?? line.part_no ?? line.interchange;

/** Name of a supplier, where none is known a word for that. */
export const supplierName = (sheet: { readonly supplier: string | null }): string => sheet.supplier ?? "No supplier named";

/** The week's order in one or two sentences. */
export function orderSentence(restock: Pick<Restock, "sheets" | "total">, currency: string, locale?: string): string {
  const lines = restock.sheets.flatMap((sheet) => sheet.lines);
  if (lines.length === 0) return "Nothing to order this week: every part that is used has enough on the shelf or under way.";
  const pieces = lines.reduce((sum, line) => sum + (line.order_qty ?? 0), 0);
  const from = restock.sheets.filter((sheet) => sheet.lines.length > 0).length;
  const waiting = lines.filter((line) => line.waiting > 0).length;
  const urgent = waiting === 0 ? "" : ` ${count(waiting, "of these lines has", "of these lines have", locale)} jobs on the bench waiting for ${waiting === 1 ? "it" : "them"}.`;
  const later = restock.sheets.filter((sheet) => sheet.joint.decision === "wait").length;
  const waits = later === 0 ? "" : later === from ? " None of it is urgent: it can wait for the next order day." : ` ${number(later, 0, locale)} of these orders can wait for the next order day.`;
  return `Order ${count(lines.length, "line", "lines", locale)}, ${count(pieces, "piece", "pieces", locale)}, from ` +
    `${count(from, "supplier", "suppliers", locale)} for ${money(restock.total, currency, 0, locale)}.${urgent}${waits}`;
}

/** Whether a supplier's smallest order is reached, in words. */
export function minimumWords(sheet: SupplierSheet, currency: string, locale?: string): string {
  if (sheet.minimum_reached === null) return "no smallest order known";
  if (sheet.minimum_reached) return `smallest order of ${money(sheet.min_order_value, currency, 0, locale)} reached`;
  return `${money(sheet.short_by, currency, 0, locale)} short of the smallest order of ${money(sheet.min_order_value, currency, 0, locale)}`;
}

/** How long a supplier takes and where that is known from. */
export function leadWords(lead: RestockLine["lead"], locale?: string): string {
  const days = `about ${count(Math.round(lead.days), "day", "days", locale)} to arrive`;
  if (lead.source === "observed") return `${days}, from ${count(lead.arrivals, "delivery", "deliveries", locale)} of your own`;
  return lead.source === "quoted" ? `${days}, as quoted` : `${days}, assumed: nothing is known of this supplier`;
}

/** One line under a supplier's sheet: lines, money, smallest order, days. */
export function sheetSentence(sheet: SupplierSheet, currency: string, locale?: string): string {
  const unpriced = sheet.unpriced === 0 ? "" : ` (${count(sheet.unpriced, "line", "lines", locale)} without a price)`;
  const carriage = sheet.order_cost === null ? "" : ` Carriage ${money(sheet.order_cost, currency, 0, locale)}.`;
  const minimum = minimumWords(sheet, currency, locale).replace(/^./, (letter) => letter.toUpperCase());
  return `${count(sheet.lines.length, "line", "lines", locale)}, ${money(sheet.total, currency, 2, locale)}${unpriced}. ${minimum}.` +
    `${carriage} Takes ${leadWords(sheet.lead, locale)}.`;
}

/** How long the shelf lasts, in words. */
export function coverWords(line: RestockLine, locale?: string): string {
  if (line.used + line.wanted === 0) return `not used in ${count(Math.round(line.months), "month", "months", locale)}`;
  return line.cover_years === null ? "–" : `${number(line.cover_years, line.cover_years < 10 ? 1 : 0, locale)} years`;
}

export const STOCK_CAUTIONS: readonly string[] = [
  "The maker's service sheet decides which part goes in: check size, shields and material before fitting a part that is the same only by size.",
  "A reel under warranty belongs with the maker's authorised service before any part is ordered for it.",
  "Wear glasses when pressing bearings or lifting clips and springs; they fly.",
];

const SURE: Readonly<Record<RestockLine["part_class"], string>> = { A: "a job cannot be finished without it", B: "a job can be finished without it", C: "no job waits for it" };

/** How the advice for a line came about, sentence by sentence. */
export function lineStory(line: RestockLine, currency: string, locale?: string): readonly string[] {
  const whole = (value: number | null) => number(value, 0, locale);
  const others = line.part_nos.length < 2 ? [] : [`The same thing under ${whole(line.part_nos.length)} numbers, counted together: ${line.part_nos.join(", ")}.`];
  const pack = line.pack_qty > 1 || line.min_order_qty > 1
    ? [`Comes in packs of ${whole(line.pack_qty)}, at least ${count(line.min_order_qty, "piece", "pieces", locale)} an order, ${money(line.unit_cost, currency, 2, locale)} a piece.`] : [];
  const until = line.demand_mean === null ? [] : [
    `Until the order after this one arrives ${count(Math.round(line.protection_days), "day", "days", locale)} pass, ${count(line.review_days, "day", "days", locale)} ` +
    `of them between two orders: ${number(line.demand_mean, 1, locale)} pieces expected, not more than ${whole(line.demand_p95)} in 19 cases of 20.`,
  ];
  return [
    line.reason, ...others,
    `Used or wanted ${count(line.used, "piece", "pieces", locale)} in ${count(Math.round(line.months), "month", "months", locale)}, ${whole(line.wanted)} of them wanted when there were none.`,
    ...until,
    ...(line.class_known ? [`Kept so that it is there in ${number(line.target * 100, 0, locale)} cases of 100: ${SURE[line.part_class]}.`] : []),
    `On the shelf ${whole(line.on_hand)}, under way ${whole(line.on_order)}, jobs waiting for ${whole(line.waiting)}; order below ${whole(line.reorder_point)}, up to ${whole(line.order_up_to)}.`,
    ...pack, ...line.notes,
  ];
}
