import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { FAMILIES } from "../../records/columns.ts";
import { oneOf, text, type Values } from "../../ui/url-state.ts";

/** Filters of the table as they stand in the address; `line` is the group whose figures are explained. */
export const STOCK_FIELDS = {
  show: oneOf(["all", "order", "enough"], "all"),
  supplier: text(),
  family: oneOf(["", ...FAMILIES], ""),
  line: text(),
};

/** Lines that can be planned and fit the filters. */
export function plannedLines(lines: readonly RestockLine[], values: Values<typeof STOCK_FIELDS>): readonly RestockLine[] {
  return lines.filter((line) => line.status !== "refused" &&
    (values.show === "all" || (values.show === "order") === (line.status === "order")) &&
    (values.supplier === "" || line.supplier === values.supplier) && (values.family === "" || line.family === values.family));
}

/** Suppliers of the table, by name. */
export const suppliersOf = (lines: readonly RestockLine[]): readonly string[] =>
  [...new Set(lines.flatMap((line) => line.supplier ?? []))].sort((a, b) => a.localeCompare(b));
