import { readXls } from "hucre/xlsx";
import { MergedCells } from "./merged-cells.ts";
import type { Typed } from "./number-format.ts";
import { PIECE_ROWS, plainRow, sheetOf, workbookRemarks } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { durationText, momentText, numberText, yesNoText } from "./typed-text.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

type Book = Awaited<ReturnType<typeof readXls>>;
type BookSheet = Book["sheets"][number];
type BookValue = BookSheet["rows"][number][number];

const LOCKED = "This workbook is locked with a password; save it without one and bring that.";
/** The old format needs the file in memory several times over. */
const FILE_BYTES = 64 * 1024 ** 2;

/** Names of streams stand in the container's directory in UTF-16. */
function holds(latin: string, name: string): boolean {
  return latin.includes([...name].join("\0"));
}

/** First records of a workbook's stream: its start (0x0809, 16 bytes, version 0x0600) and, when it is locked, the key's record 0x2F. */
const BOOK_START = "\x09\x08\x10\x00\x00\x06\x05\x00", LOCK = 0x2f, FIRST_RECORDS = 8;

function isLocked(bytes: Uint8Array, latin: string): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = latin.indexOf(BOOK_START);
  for (let records = 0; at !== -1 && at + 4 <= view.byteLength && records < FIRST_RECORDS; records += 1) {
    if (view.getUint16(at, true) === LOCK) return true;
    at += 4 + view.getUint16(at + 2, true);
  }
  return false;
}

/** What a container of old Office files is instead of a workbook that can be read; null when it is one. */
function whyNotBook(bytes: Uint8Array): string | null {
  const latin = new TextDecoder("windows-1252").decode(bytes);
  if (holds(latin, "EncryptedPackage")) return LOCKED;
  if (holds(latin, "WordDocument")) return "This is a word-processor document, not a table.";
  if (holds(latin, "PowerPoint Document")) return "This is a presentation, not a table.";
  if (!holds(latin, "Workbook") && !holds(latin, "Book")) return "This is an old Office file, but no workbook; save the table as .xlsx and bring that.";
  return isLocked(bytes, latin) ? LOCKED : null;
}

const START_1900 = Date.UTC(1901, 0, 1), DAY_ZERO = Date.UTC(1899, 11, 31);

/** The library gives lengths of time as moments around 1900, when no shop wrote tickets. */
function dateText(value: Date): Typed {
  const ms = value.getTime();
  return { text: ms < START_1900 ? durationText((ms - DAY_ZERO) / 1000) : momentText(ms), typed: true };
}

function cellText(value: BookValue | undefined): Typed {
  if (value === null || value === undefined) return { text: "", typed: false };
  if (value instanceof Date) return dateText(value);
  if (typeof value === "number") return { text: numberText(value), typed: true };
  if (typeof value === "boolean") return { text: yesNoText(value), typed: true };
  return { text: typeof value === "string" ? value : String(value), typed: false };
}

function rowOf(values: readonly BookValue[], line: number, merged: MergedCells, ends: ReadonlyMap<string, number>): SheetRow {
  const all = Array.from(values, cellText), cells = all.map(({ text }) => text), typed = new Set<number>();
  for (const [at, one] of all.entries()) {
    if (one.typed) typed.add(at);
    const last_row = ends.get(`${line}:${at}`);
    if (last_row !== undefined) merged.begin({ column: at, last_row, ...one });
  }
  merged.fill(line, cells, typed);
  while (cells.at(-1) === "") cells.pop();
  return plainRow(line, cells, typed);
}

function bookSheet({ name, rows, merges = [] }: BookSheet, size: number, options: OpenOptions): Sheet {
  const down = merges.filter(({ startRow, endRow }) => endRow > startRow);
  const ends = new Map(down.map(({ startRow, startCol, endRow }) => [`${startRow + 1}:${startCol}`, endRow + 1]));
  return sheetOf({ name }, options, async function* (onBytes, remarks) {
    const merged = new MergedCells();
    for (let at = 0; at < rows.length; at += PIECE_ROWS) {
      options.signal.throwIfAborted();
      const piece = rows.slice(at, at + PIECE_ROWS).map((values, place) => rowOf(values ?? [], at + place + 1, merged, ends));
      yield piece.filter(({ cells }) => cells.length > 0);
      onBytes(Math.round((size * Math.min(rows.length, at + PIECE_ROWS)) / rows.length));
    }
    remarks.push(...workbookRemarks({ merged, hidden_rows: 0, hidden_columns: 0 }));
  });
}

/**
 * The sheets of an old Excel workbook (.xls of 1997 to 2003).
 *
 * @throws {Unreadable} when it is older, locked, damaged or no workbook
 */
export async function xlsSheets(blob: Blob, options: OpenOptions): Promise<readonly Sheet[]> {
  if (blob.size > FILE_BYTES) throw new Unreadable("This old Excel workbook is larger than 64 MB; save it as .xlsx and bring that.");
  const bytes = new Uint8Array(await blob.arrayBuffer()), why = whyNotBook(bytes);
  if (why !== null) throw new Unreadable(why);
  const book = await readXls(bytes).catch((cause: unknown) => {
    throw new Unreadable("This old Excel workbook (.xls) cannot be read; save it as .xlsx and bring that.", { cause });
  });
  options.signal.throwIfAborted();
  if (book.sheets.length > LIMITS.sheets) throw new Unreadable(`This workbook has more than ${LIMITS.sheets} sheets.`);
  return book.sheets.map((sheet) => bookSheet(sheet, blob.size, options));
}
