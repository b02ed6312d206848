import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { FAMILIES } from "../../records/columns.ts";
import { oneOf, text, type Values } from "../../ui/url-state.ts";

/** Filters of the room as they stand in the address; `line` is the group whose figures are explained, the last four are the budget's. */
export const STOCK_FIELDS = {
  show: oneOf(["all", "order", "enough"], "all"),
  supplier: text(),
  family: oneOf(["", ...FAMILIES], ""),
  line: text(),
  budget: text(),
  lasting: oneOf(["next-order", "rush"], "next-order"),
  delivery: oneOf(["as-known", "half-longer", "twice"], "as-known"),
  held_up_by: oneOf(["any", "needed"], "any"),
};

/** Lines that can be planned and fit the filters. */
export function plannedLines(lines: readonly RestockLine[], values: Pick<Values<typeof STOCK_FIELDS>, "show" | "supplier" | "family">): readonly RestockLine[] {
  return lines.filter((line) => line.status !== "refused" &&
    (values.show === "all" || (values.show === "order") === (line.status === "order")) &&
    (values.supplier === "" || line.supplier === values.supplier) && (values.family === "" || line.family === values.family));
}

/** Suppliers of the table, by name. */
export const suppliersOf = (lines: readonly RestockLine[]): readonly string[] =>
  [...new Set(lines.flatMap((line) => line.supplier ?? []))].sort((a, b) => a.localeCompare(b));
