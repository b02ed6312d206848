import { csvText, withoutApostrophe } from "./csv-out.ts";
import type { Reject } from "./ledger/ledger.ts";
import { csvRows } from "./formats/csv.ts";

const COLUMNS = ["file", "line", "column", "value", "reason"] as const;

/** The list of rows to fix as a CSV text. */
export function rowsToFixCsv(rejects: readonly Reject[]): string {
  return csvText(COLUMNS, rejects.map(({ file, line, column, value, reason }) => [file, line, column, value, reason]));
}

/**
 * The list that `rowsToFixCsv` wrote.
 *
 * @throws {RangeError} when the text is no such list
 */
export async function rowsToFixFrom(text: string): Promise<Reject[]> {
  const rejects: Reject[] = [];
  async function* once() { yield text; }
  let heading: string | null = null;
  for await (const rows of csvRows(once(), { delimiter: ",", newline: "\n" })) {
    for (const { cells } of rows) {
      if (heading === null) heading = cells.join(",");
      else rejects.push(rejectOf(cells.map(withoutApostrophe)));
    }
  }
  if (heading !== COLUMNS.join(",")) throw new RangeError(`rowsToFixFrom: needs the headings ${COLUMNS.join(",")}, got ${heading}`);
  return rejects;
}

function rejectOf([file = "", line = "", column = "", value = "", reason = ""]: string[]): Reject {
  if (!/^\d+$/.test(line)) throw new RangeError(`rowsToFixFrom: needs a number for the line, got ${line}`);
  return { file, line: Number(line), column, value, reason };
}
