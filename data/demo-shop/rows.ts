import Papa from "papaparse";

export type Cell = string | number | null;
export type Row = Record<string, Cell>;
export type TableName = keyof typeof COLUMNS;

/** The columns of the seven tables, in the order of their templates. */
export const COLUMNS = {
  tickets: ["ticket_no", "received_on", "finished_on", "maker", "model", "reel_kind", "serial", "water", "salt_days", "use_days",
    "months_since_service", "rinse", "came_in", "job", "complaint", "technician", "batch", "labour_min", "parts_wait_days", "warranty",
    "outcome", "labour_charge", "parts_charge", "note"],
  findings: ["ticket_no", "position", "part_no", "mode", "grade", "action", "routine", "qty", "unit_cost", "minutes", "note"],
  models: ["maker", "model", "reel_kind", "sealed", "tier", "new_price", "discontinued_on"],
  parts: ["part_no", "name", "family", "supplier", "unit_cost", "pack_qty", "min_order_qty", "lead_days", "lead_days_sd", "on_hand",
    "on_order", "due_on", "size", "material", "replaces", "essential"],
  fits: ["maker", "model", "position", "part_no", "qty"],
  suppliers: ["supplier", "order_cost", "min_order_value", "lead_days", "lead_days_sd", "review_days"],
  orders: ["order_no", "supplier", "part_no", "qty", "ordered_on", "arrived_on", "unit_cost"],
} as const;

export const yesNo = (value: boolean): string => (value ? "yes" : "no");
/** Money to the hundredth, as a number that prints without tails. */
export const money = (value: number): number => Math.round(value * 100) / 100;

/** CSV text of rows in the given columns, with a heading and Unix line ends; null is an empty cell. */
export function csv(columns: readonly string[], rows: readonly Row[]): string {
  const data = rows.map((row) => columns.map((column) => row[column] ?? ""));
  return `${Papa.unparse({ fields: [...columns], data }, { newline: "\n" })}\n`;
}
