import { MONTH_DAYS, YEAR_DAYS } from "../days.ts";
import { number, pieces } from "../wording.ts";
import type { RestockLine } from "./restock-line.ts";

type Told = Omit<RestockLine, "reason">;

/** Shelf that lasts longer than this is dead money. */
export const LONG_COVER_YEARS = 5;

function use({ used, months, demand_per_month, demand_per_month_high }: Told): string {
  if (used === 0) return `None used in ${pieces(Math.round(months), "month")}, so at most about ${number(demand_per_month_high * 12)} a year`;
  return demand_per_month >= 1 ? `You use about ${number(demand_per_month)} a month` : `You used ${number(used)} in ${pieces(Math.round(months), "month")}`;
}

function shelf({ on_hand, on_order, waiting }: Told): string {
  return [
    `${number(on_hand ?? 0)} on the shelf`,
    ...(on_order > 0 ? [`${number(on_order)} on order`] : []),
    ...(waiting > 0 ? [`${number(waiting)} promised to waiting jobs`] : []),
  ].join(", ");
}

function rounding({ order_qty, order_up_to, on_hand, on_order, waiting, pack_qty, min_order_qty }: Told): string {
  const short = (order_up_to ?? 0) - ((on_hand ?? 0) + on_order - waiting), bought = order_qty ?? 0;
  if (bought <= short) return "";
  if (min_order_qty > short) return ` (${number(short)} short, the smallest order is ${number(min_order_qty)})`;
  return pack_qty > 1 ? ` (${number(short)} short, packs of ${number(pack_qty)})` : "";
}

function cover(line: Told): string {
  const years = line.cover_years;
  if (line.used === 0) return (line.on_hand ?? 0) > 0 ? "nothing to order, and perhaps too many kept" : "nothing to order";
  if (years !== null && years >= LONG_COVER_YEARS) return `enough for about ${number(years)} years, so stop buying it`;
  return "enough";
}

/**
 * Why this advice, in one sentence with its numbers.
 *
 * @example
 * "You use about 12 a month; the next 20 days may take 19; 9 on the shelf, so order 10."
 */
export function reason(line: Told): string {
  if (line.status === "cannot tell") {
    const what = line.part_no === null ? "it is not in your parts list: add it" : "nobody wrote how many are on the shelf: count them";
    const keep = line.reorder_point === null ? "" : ` (keep ${number(line.reorder_point)})`;
    return `${use(line)}, but ${what}${keep}.`;
  }
  const ahead = line.used === 0 ? "" : `; the next ${number(Math.round(line.protection_days))} days may take ${number(line.reorder_point ?? 0)}`;
  const end = line.status === "order" ? `so order ${number(line.order_qty ?? 0)}${rounding(line)}` : cover(line);
  return `${use(line)}${ahead}; ${shelf(line)}${line.status === "order" ? ", " : ": "}${end}.`;
}

/** Sentences beside the reason: what is assumed, and where figures disagree. */
export function lineNotes(line: Told): string[] {
  const { lead, season_factor, class_known, target } = line, notes: string[] = [];
  const days = `${number(lead.days)} days (give or take ${number(lead.sd)})`;
  if (lead.source === "observed") {
    const late = lead.late === null || lead.quoted_days === null ? "" : `; ${number(lead.quoted_days)} were quoted, ${number(lead.late)} came later`;
    notes.push(`Arrives after ${days}, from ${pieces(lead.arrivals, "delivery")}${late}.`);
  }
  if (lead.source === "quoted") notes.push(`Quoted ${days}; ${pieces(lead.arrivals, "delivery")} on record.`);
  if (lead.source === "assumed") notes.push(`No delivery time known: ${days} assumed.`);
  if (Math.abs(season_factor - 1) >= 0.05) notes.push(`These days of the year bring ${number(season_factor)} times the usual number of reels.`);
  if (!class_known) notes.push(`Nobody wrote whether a job can be finished without it: planned to last with ${number(target * 100)} % chance.`);
  return notes;
}

/** Years the shelf lasts at this monthly use; null without use or count. */
export function coverYears(on_hand: number | null, per_month: number): number | null {
  return on_hand === null || per_month === 0 ? null : on_hand / (per_month * (YEAR_DAYS / MONTH_DAYS));
}
