import type { Engine } from "../../db/engine.ts";
import { quantile } from "../../stats/quantile.ts";
import { dayAfter } from "../days.ts";
import { grouped } from "../grouped.ts";
import { number, pieces } from "../wording.ts";
import type { ShelfRow } from "./chosen-part.ts";
import deliveriesSql from "./deliveries.sql?raw";
import { freeFrom } from "./free-from.ts";
import { ENOUGH_DELIVERIES, leadTime } from "./lead-time.ts";
import type { Delivery } from "./lead-time.ts";
import orderHistorySql from "./order-history.sql?raw";
import { leadOf } from "./order-terms.ts";
import type { LeadTime, RestockSettings } from "./restock-line.ts";
import shelfSql from "./shelf.sql?raw";

type History = { supplier: string; orders: number; lines: number; spend: number | null; unpriced: number; last_on: string };

/** The same part from another supplier. */
export interface Elsewhere {
  readonly interchange: string;
  readonly here: string;
  readonly there: string;
  readonly supplier: string;
  /** Price there over price here, and days there less days here; null where one is unknown. */
  readonly price_ratio: number | null;
  readonly days_more: number;
}

/** One supplier: what it promises, what comes, and what the shop buys there. */
export interface SupplierFacts {
  readonly supplier: string;
  readonly lead: LeadTime;
  /** Days within which four deliveries in five came; null under five deliveries. */
  readonly four_in_five: number | null;
  /** Orders, lines and money of the year before; null without any. */
  readonly bought: Omit<History, "supplier"> | null;
  readonly parts: number;
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
  readonly free_from: number | null;
  readonly elsewhere: readonly Elsewhere[];
  readonly sentence: string;
}

function elsewhere(supplier: string, groups: ReadonlyMap<string, readonly ShelfRow[]>, lead: (row: ShelfRow) => LeadTime): Elsewhere[] {
  return [...groups].flatMap(([interchange, rows]) => {
    const here = rows.find((row) => row.supplier === supplier && row.replaces === null) ?? rows.find((row) => row.supplier === supplier);
    if (here === undefined) return [];
    return rows.filter((row) => row.supplier !== null && row.supplier !== supplier).map((there): Elsewhere => ({
      interchange, here: here.part_no, there: there.part_no, supplier: there.supplier ?? "", days_more: lead(there).days - lead(here).days,
      price_ratio: here.unit_cost === null || there.unit_cost === null || here.unit_cost === 0 ? null : there.unit_cost / here.unit_cost,
    }));
  });
}

function sentence(lead: LeadTime, four_in_five: number | null): string {
  if (lead.source !== "observed") {
    return lead.quoted_days === null ? `No delivery time is known; ${number(lead.days)} days are assumed.`
      : `Quotes ${pieces(lead.quoted_days, "day")}; ${pieces(lead.arrivals, "delivery")} on record, from ${ENOUGH_DELIVERIES} on they count instead.`;
  }
  const quoted = lead.quoted_days === null ? "" : `, ${number(lead.quoted_days)} were quoted`, late = lead.late === null ? "" : ` ${number(lead.late)} of ${number(lead.arrivals)} came later than quoted.`;
  return `Takes ${number(lead.days)} days on average${quoted}; four in five came within ${number(four_in_five ?? lead.days)}.${late}`;
}

/** Every supplier of the catalogue or the orders, by name; nothing later than `as_of` counts. */
export async function suppliers(engine: Engine, settings: RestockSettings, signal?: AbortSignal): Promise<SupplierFacts[]> {
  const { as_of } = settings;
  const [shelf, delivered, history] = await Promise.all([
    engine.rows<ShelfRow>(shelfSql, {}, signal), engine.rows<Delivery & { supplier: string }>(deliveriesSql, { as_of }, signal),
    engine.rows<History>(orderHistorySql, { as_of, from_date: dayAfter(as_of, -365) }, signal),
  ]);
  const deliveries = grouped<string | null, Delivery>(delivered, (row) => (row as Delivery & { supplier: string }).supplier), groups = grouped(shelf, (row) => row.interchange);
  const names = [...new Set([...shelf.flatMap((row) => row.supplier ?? []), ...history.map((row) => row.supplier)])].sort();
  return names.map((supplier) => {
    const rows = shelf.filter((row) => row.supplier === supplier), bought = history.find((row) => row.supplier === supplier);
    const quote = { lead_days: rows[0]?.lead_days ?? null, lead_days_sd: rows[0]?.lead_days_sd ?? null };
    const lead = leadTime(deliveries.get(supplier) ?? [], quote, settings.lead_days), days = (deliveries.get(supplier) ?? []).map((one) => one.days);
    const four_in_five = days.length < ENOUGH_DELIVERIES ? null : quantile(days, 0.8);
    return {
      supplier, lead, four_in_five, bought: bought ?? null, parts: rows.length, order_cost: rows[0]?.order_cost ?? null,
      min_order_value: rows[0]?.min_order_value ?? null, free_from: freeFrom(settings.free_from, supplier),
      elsewhere: elsewhere(supplier, groups, (row) => leadOf(row, { deliveries, settings })), sentence: sentence(lead, four_in_five),
    };
  });
}

/** `AB-MR74-S from Aldersund: 1.9 times the price, 26 days sooner.` */
export function elsewhereWords({ there, supplier, price_ratio, days_more }: Elsewhere): string {
  const dear = price_ratio === null ? "price unknown" : price_ratio === 1 ? "the same price" : `${number(price_ratio)} times the price`, days = Math.round(days_more);
  return `${there} from ${supplier}: ${dear}, ${days === 0 ? "as soon" : `${pieces(Math.abs(days), "day")} ${days > 0 ? "later" : "sooner"}`}.`;
}
