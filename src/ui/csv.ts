import { cellText, type Column } from "./table-rows.ts";

/** Signs a spreadsheet begins a formula with, in letters of any width, behind any number of apostrophes. */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const PLAIN_NEGATIVE = /^-\d+(?:\.\d+)?$/;

/**
 * One cell of a CSV file. A text that a spreadsheet would run as a formula gets an apostrophe in front.
 *
 * @example
 * csvCell("=1+1"); // => "'=1+1"
 */
export function csvCell(value: string | number | boolean | null): string {
  if (value === null) return "";
  if (typeof value !== "string") return String(value);
  const safe = FORMULA.test(value) && !PLAIN_NEGATIVE.test(value) ? `'${value}` : value;
  return /[",;\t\r\n|]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows under the columns' keys as CSV with CRLF ends, values unrounded. */
export function csv<R>(columns: readonly Column<R>[], rows: readonly R[], shown: "values" | "texts" = "values"): string {
  const line = (cells: readonly (string | number | null)[]) => cells.map(csvCell).join(",");
  const body = rows.map((row) => line(columns.map((one) => (shown === "values" ? one.value(row) : cellText(one, row)))));
  return [line(columns.map((one) => one.key)), ...body, ""].join("\r\n");
}
