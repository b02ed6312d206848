import { openSheets } from "./formats/open-sheets.ts";
import type { NamedFile } from "./formats/sheet.ts";
import { Unreadable } from "./formats/unreadable.ts";
import type { Reject } from "./ledger/ledger.ts";
import { isRowsToFix, rowsOfRejects, rowsToFixOf } from "./rows-to-fix.ts";
import type { RowToFix } from "./rows-to-fix.ts";

/** A file to read: one that was given, or the rows of one file that came back in the list of rows to fix, under that file's name. */
export interface Incoming {
  readonly file: NamedFile;
  /** Line of `file` on which a row begins → the line it had in the file it came from; null for a file as it was given. */
  readonly lines: ReadonlyMap<number, number> | null;
}

/** A list of this many rows is no longer put right by hand. */
const MOST = 200_000;

const HEADINGS = /^\W*file\W+line\W+column\W+value\W+reason\b/i;

/** A list looks like one from its first bytes, or was saved as a workbook under its own name. */
async function mayBeList({ name, blob }: NamedFile): Promise<boolean> {
  return /rows.to.fix/i.test(name) || HEADINGS.test((await blob.slice(0, 400).text()).replaceAll("\0", ""));
}

/** Cells of a file whose headings are those of the list; null for any other file. */
async function listedCells(file: NamedFile, signal: AbortSignal): Promise<string[][] | null> {
  if (!(await mayBeList(file))) return null;
  try {
    const { sheets } = await openSheets(file, { signal, onBytes: () => undefined });
    const [sheet] = sheets, [first] = sheet ? await sheet.head(1) : [];
    if (!sheet || !first || !isRowsToFix(first.cells)) return null;
    const cells: string[][] = [];
    for await (const rows of sheet.rows()) {
      cells.push(...rows.map((row) => row.cells));
      if (cells.length > MOST) throw new Unreadable(`This list of rows to fix is longer than ${MOST} rows; put the rows right in their own files.`);
    }
    return cells;
  } catch (error) {
    // What cannot be opened is told when it is read as any file is.
    if (error instanceof Unreadable) return null;
    throw error;
  }
}

/** Without the guard against formulas: what it would put in front is not in the row. */
const csvLine = (cells: readonly string[]) => `${cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",")}\r\n`;

function asFile(name: string, rows: readonly RowToFix[], known: ReadonlyMap<string, RowToFix>): Incoming {
  const headings = rows.map((row) => known.get(keyOf(row))?.row?.headings).find((found) => found !== undefined) ?? rows[0]?.row?.headings ?? [];
  const lines = new Map<number, number>(), heading = csvLine(headings);
  let text = heading, line = heading.split("\n").length;
  for (const { row, line: from } of rows) {
    lines.set(line, from);
    const places = headings.map((label) => row?.headings.indexOf(label) ?? -1);
    const next = csvLine(places.map((at) => (at === -1 ? "" : row?.cells[at] ?? "")));
    text += next;
    line += next.split("\n").length - 1;
  }
  return { file: { name, blob: new Blob([text]) }, lines };
}

const keyOf = ({ file, line }: Pick<RowToFix, "file" | "line">) => JSON.stringify([file, line]);

/** What a returned list holds, one file for each that its rows came from; null when the file is no such list. */
async function returned(file: NamedFile, rejects: readonly Reject[], signal: AbortSignal): Promise<readonly Incoming[] | null> {
  const cells = await listedCells(file, signal);
  if (!cells) return null;
  const rows = rowsToFixOf(cells).filter(({ row }) => row !== null), known = new Map(rowsOfRejects(rejects).map((row) => [keyOf(row), row]));
  return [...new Set(rows.map((row) => row.file))].map((name) => asFile(name, rows.filter((row) => row.file === name), known));
}

/**
 * The files to read: a list of rows to fix that came back stands for the files its rows came from, any other for itself.
 *
 * @param rejects rows still to fix, whose headings the returned rows are read under
 */
export async function incoming(files: readonly NamedFile[], rejects: () => Promise<readonly Reject[]>, signal: AbortSignal): Promise<Incoming[]> {
  const found: Incoming[] = [];
  for (const file of files) found.push(...((await returned(file, await rejects(), signal)) ?? [{ file, lines: null }]));
  return found;
}
