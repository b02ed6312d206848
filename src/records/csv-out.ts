import type { SqlValue } from "../db/engine.ts";

/** What a spreadsheet may take for the beginning of a formula, in letters of any width, behind any number of apostrophes. */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;
const ARMLESS = /^'+[=+\-@\t\r\n＝＋－＠]/;
const PLAIN_NEGATIVE = /^-\d+(?:\.\d+)?$/;

/**
 * A text as it may stand in a file that a spreadsheet opens: what it would run as a formula gets an apostrophe in front.
 * `withoutApostrophe` gives the text back unchanged.
 *
 * @example
 * withApostrophe("=1+1") // => "'=1+1"
 * withApostrophe("-5") // => "-5"
 */
export function withApostrophe(text: string): string {
  return FORMULA.test(text) && !PLAIN_NEGATIVE.test(text) ? `'${text}` : text;
}

/** The text that `withApostrophe` was given. */
export function withoutApostrophe(text: string): string {
  return ARMLESS.test(text) ? text.slice(1) : text;
}

/** One cell by RFC 4180 section 2; missing is empty, a yes is `yes`. */
export function csvCell(value: SqlValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return String(value);
  const text = withApostrophe(value);
  return /[",;\t\r\n|]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** One row with its line end. */
export const csvLine = (cells: readonly SqlValue[]): string => `${cells.map(csvCell).join(",")}\r\n`;

/** A CSV text by RFC 4180: a heading row, lines that end in CRLF, numbers with a point. */
export function csvText(columns: readonly string[], rows: Iterable<readonly SqlValue[]>): string {
  let text = csvLine(columns);
  for (const row of rows) text += csvLine(row);
  return text;
}
