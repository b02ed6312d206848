import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { csv } from "../../ui/csv.ts";
import { ORDER_FILE, SUPPLIER_FILE } from "./stock-columns.ts";

/** CSV of the whole order with its reasons, for the owner: one line a part, numbers unrounded. */
export const orderFile = (lines: readonly RestockLine[]): string => csv(ORDER_FILE, lines);

/** CSV of what goes to one supplier: without our shelf, use and reasons. */
export const supplierFile = (lines: readonly RestockLine[]): string => csv(SUPPLIER_FILE, lines);

/**
 * Name of an order's file; signs that a disk would refuse become dashes.
 *
 * @example
 * orderFileName("Far Lantern", "2025-12-31"); // => "order-far-lantern-2025-12-31.csv"
 */
export function orderFileName(supplier: string, as_of: string): string {
  const plain = supplier.normalize("NFKD").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "");
  return `order-${plain === "" ? "supplier" : plain}-${as_of}.csv`;
}
