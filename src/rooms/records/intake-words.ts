import type { Preview } from "../../records/understanding/understanding.ts";
import { count } from "../../ui/format.ts";

const NAMES: readonly (readonly [table: string, one: string, many: string])[] = [
  ["tickets", "ticket", "tickets"], ["findings", "finding", "findings"], ["parts", "part", "parts"], ["orders", "line of an order", "lines of orders"],
  ["models", "model", "models"], ["fits", "part that fits a model", "parts that fit models"], ["suppliers", "supplier", "suppliers"],
];

/**
 * How many records of each table, in words.
 *
 * @example
 * recordWords({ tickets: 3, findings: 1 }) // => "3 tickets and 1 finding"
 */
export function recordWords(records: Preview["records"]): string {
  const words = NAMES.flatMap(([table, one, many]) => ((records[table] ?? 0) > 0 ? [count(records[table], one, many)] : []));
  const last = words.pop();
  if (last === undefined) return "nothing";
  return words.length === 0 ? last : `${words.join(", ")} and ${last}`;
}

const rowsOf = (tallies: Preview["rows_to_fix"]) => tallies.reduce((sum, { rows }) => sum + rows, 0);

/** The preview in one line, for the foot of the sheet. */
export function comingIn({ records, rows_to_fix, rows_dropped }: Preview, open: number): string {
  const to_fix = rowsOf(rows_to_fix), aside = rowsOf(rows_dropped);
  return [
    `${recordWords(records)} will come in`, to_fix > 0 ? `${count(to_fix, "row", "rows")} to fix` : "", aside > 0 ? `${count(aside, "row", "rows")} left aside` : "",
    open > 0 ? `${count(open, "question has", "questions have")} no answer: rows that hang on it are kept to fix` : "",
  ].filter((part) => part !== "").join("; ") + ".";
}

const RAW = 400;

/** A row's cells on one line, long ones cut. */
export function rawLine(cells: readonly string[]): string {
  const line = cells.map((cell) => cell.trim()).join(" | ").replace(/(?: \|\s*)+$/, "");
  return line.length > RAW ? `${line.slice(0, RAW)} …` : line;
}
