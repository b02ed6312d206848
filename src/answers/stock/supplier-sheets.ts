import { money } from "../wording.ts";
import type { LeadTime, RestockLine, SupplierSheet } from "./restock-line.ts";

/** What a supplier asks of an order. */
export interface SupplierTerms {
  readonly supplier: string | null;
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
  readonly lead: LeadTime;
}

function sheet(lines: readonly RestockLine[], terms: SupplierTerms): SupplierSheet {
  const total = money(lines.reduce((sum, line) => sum + (line.cost ?? 0), 0)), unpriced = lines.filter((line) => line.cost === null).length;
  const missing = terms.min_order_value === null ? null : money(Math.max(0, terms.min_order_value - total));
  return {
    ...terms, lines, total, unpriced,
    minimum_reached: missing === null ? null : missing === 0 ? true : unpriced > 0 ? null : false,
    short_by: missing,
  };
}

/** What to order, supplier by supplier, the dearest order first; suppliers with nothing to order are left out. */
export function supplierSheets(lines: readonly RestockLine[], terms: readonly SupplierTerms[]): SupplierSheet[] {
  const ordered = lines.filter((line) => line.status === "order");
  return terms
    .map((one) => sheet(ordered.filter((line) => line.supplier === one.supplier), one))
    .filter((one) => one.lines.length > 0)
    .sort((a, b) => b.total - a.total || ((a.supplier ?? "") < (b.supplier ?? "") ? -1 : 1));
}
