import { csvText, withoutApostrophe } from "./csv-out.ts";
import { csvRows } from "./formats/csv.ts";
import type { Reject, RowCells } from "./ledger/ledger.ts";

const COLUMNS = ["file", "line", "column", "value", "reason"] as const;

/** Stands between the faults of one row. */
const AND = " | ";

/** A row that is to be fixed, with all its faults. */
export interface RowToFix {
  readonly file: string;
  readonly line: number;
  readonly faults: readonly Pick<Reject, "column" | "value" | "reason">[];
  readonly row: RowCells | null;
}

/** Rejects put together by row, in their order. */
export function rowsOfRejects(rejects: readonly Reject[]): RowToFix[] {
  const found = new Map<string, { file: string; line: number; faults: Reject[]; row: RowCells | null }>();
  for (const reject of rejects) {
    const key = JSON.stringify([reject.file, reject.line]), before = found.get(key);
    if (before) before.faults.push(reject);
    else found.set(key, { file: reject.file, line: reject.line, faults: [reject], row: reject.row ?? null });
  }
  return [...found.values()];
}

/** Names of a row's cells; of two columns with one name, and of those without, each has a name of its own. */
function labels({ headings }: RowCells): string[] {
  const seen = new Map<string, number>();
  return headings.map((heading, at) => {
    const name = heading.trim() === "" ? `column ${at + 1}` : heading, nth = (seen.get(name) ?? 0) + 1;
    seen.set(name, nth);
    return nth === 1 ? name : `${name} (${nth})`;
  });
}

/**
 * The list of rows to fix as a CSV text: where each row is, what is wrong, and then the row's own cells under its file's
 * headings. Put right there, the list can be brought in again.
 */
export function rowsToFixCsv(rejects: readonly Reject[]): string {
  const rows = rowsOfRejects(rejects), own = [...new Set(rows.flatMap(({ row }) => (row ? labels(row) : [])))];
  return csvText([...COLUMNS, ...own], rows.map(({ file, line, faults, row }) => {
    const cells = new Map(row ? labels(row).map((label, at) => [label, row.cells[at] ?? ""]) : []);
    const joined = (part: "column" | "value" | "reason") => faults.map((fault) => fault[part]).join(AND);
    return [file, line, joined("column"), joined("value"), joined("reason"), ...own.map((label) => cells.get(label) ?? "")];
  }));
}

/** True for the headings of a list of rows to fix, whatever program saved it. */
export function isRowsToFix(headings: readonly string[]): boolean {
  return COLUMNS.every((name, at) => headings[at]?.replace(/^\uFEFF/, "").trim().toLowerCase() === name);
}

function faultsOf(column: string, value: string, reason: string): RowToFix["faults"] {
  const parts = [column, value, reason].map((text) => text.split(AND)), [columns = [], values = [], reasons = []] = parts;
  // A cell may hold the sign itself: then the row has one fault with all of it.
  if (columns.length !== values.length || columns.length !== reasons.length) return [{ column, value, reason }];
  return columns.map((name, at) => ({ column: name, value: values[at] ?? "", reason: reasons[at] ?? "" }));
}

function rowToFix(cells: readonly string[]): Omit<RowToFix, "row"> {
  const [file = "", line = "", column = "", value = "", reason = ""] = cells;
  if (!/^\d+$/.test(line.trim())) throw new RangeError(`rowsToFixFrom: needs a number for the line, got ${line}`);
  return { file, line: Number(line), faults: faultsOf(column, value, reason) };
}

/**
 * The rows of such a list, from the cells of its lines. A column is a file's own when a row of it has a cell there, or no row has.
 *
 * @param lines the row of headings first
 * @throws {RangeError} when it is no such list
 */
export function rowsToFixOf(lines: readonly (readonly string[])[]): RowToFix[] {
  const [headings = [], ...rest] = lines.map((cells) => cells.map(withoutApostrophe));
  if (!isRowsToFix(headings)) throw new RangeError(`rowsToFixOf: needs the headings ${COLUMNS.join(",")}, got ${headings.join(",")}`);
  const rows = rest.filter((cells) => cells.some((cell) => cell.trim() !== ""));
  const filled = headings.map((_, at) => new Set(rows.filter((cells) => (cells[at] ?? "") !== "").map(([file = ""]) => file)));
  const placesOf = (file: string) => headings.map((_, at) => at).filter((at) => at >= COLUMNS.length && (filled[at]?.size === 0 || filled[at]?.has(file)));
  const own = new Map([...new Set(rows.map(([file = ""]) => file))].map((file) => [file, placesOf(file)]));
  return rows.map((cells) => {
    const places = own.get(cells[0] ?? "") ?? [];
    const row = places.length === 0 ? null : { headings: places.map((at) => headings[at] ?? ""), cells: places.map((at) => cells[at] ?? "") };
    return { ...rowToFix(cells), row };
  });
}

/** The list that `rowsToFixCsv` wrote, as rejects. @throws {RangeError} when the text is no such list */
export async function rowsToFixFrom(text: string): Promise<Reject[]> {
  async function* once() { yield text; }
  const lines: string[][] = [];
  for await (const rows of csvRows(once(), { delimiter: ",", newline: "\n" })) lines.push(...rows.map(({ cells }) => cells));
  return rowsToFixOf(lines).flatMap(({ file, line, faults, row }) => faults.map((fault): Reject => ({ file, line, ...fault, ...(row ? { row } : {}) })));
}
