import { money } from "../wording.ts";
import { jointOrder } from "./joint-order.ts";
import type { OrderConditions } from "./joint-order.ts";
import type { LeadTime, RestockLine, SupplierSheet } from "./restock-line.ts";

/** What a supplier asks of an order. */
export interface SupplierTerms extends OrderConditions {
  readonly supplier: string | null;
  readonly lead: LeadTime;
}

function sheet(lines: readonly RestockLine[], enough: readonly RestockLine[], terms: SupplierTerms): SupplierSheet {
  const total = money(lines.reduce((sum, line) => sum + (line.cost ?? 0), 0)), unpriced = lines.filter((line) => line.cost === null).length;
  const { supplier, order_cost, min_order_value, lead } = terms, missing = min_order_value === null ? null : money(Math.max(0, min_order_value - total));
  return {
    supplier, order_cost, min_order_value, lead, lines, total, unpriced,
    minimum_reached: missing === null ? null : missing === 0 ? true : unpriced > 0 ? null : false,
    short_by: missing, joint: jointOrder(lines, enough, terms),
  };
}

/** What to order, supplier by supplier, the dearest order first; suppliers with nothing to order are left out. */
export function supplierSheets(lines: readonly RestockLine[], terms: readonly SupplierTerms[]): SupplierSheet[] {
  return terms.flatMap((one) => {
    const own = lines.filter((line) => line.supplier === one.supplier), ordered = own.filter((line) => line.status === "order");
    return ordered.length === 0 ? [] : [sheet(ordered, own.filter((line) => line.status === "enough"), one)];
  }).sort((a, b) => b.total - a.total || ((a.supplier ?? "") < (b.supplier ?? "") ? -1 : 1));
}
