/** A file that cannot be read as a table; the message is one sentence for the owner. */
export class Unreadable extends Error {
  override readonly name = "Unreadable";
}

/** Bounds that keep a damaged or hostile file from filling the memory. */
export const LIMITS = {
  /** Bytes of a file as it lies on the disk. */
  file_bytes: 512 * 1024 ** 2,
  /** Bytes of a file after unpacking. */
  unpacked_bytes: 2 * 1024 ** 3,
  /** Bytes of a JSON file after unpacking, and of the texts of a workbook: these are in memory as a whole. */
  whole_bytes: 256 * 1024 ** 2,
  /** Characters of one row; a quotation mark that is never closed makes the rest of the file one row. */
  row_chars: 16 * 1024 ** 2,
  /** Characters of one cell; spreadsheets hold 32,767. */
  cell_chars: 1_000_000,
  /** Columns of one sheet that hold anything. */
  columns: 2_000,
  /** Rows of one sheet of a workbook; no spreadsheet program has more. */
  workbook_rows: 1_048_576,
  /** Files in one zip archive. */
  zip_entries: 10_000,
  /** Sheets of one file. */
  sheets: 500,
  /** Objects within objects of a JSON file. */
  depth: 20,
} as const;

const MOST = LIMITS.columns.toLocaleString("en");

export const tooWide = (line: number): Unreadable => new Unreadable(`Row ${line} has more than ${MOST} columns; no shop's table is that wide.`);
export const tooManyNames = (): Unreadable => new Unreadable(`The records have more than ${MOST} different names in them; no shop's table is that wide.`);

export const DAMAGED_WORKBOOK = "The workbook is damaged or was cut off; open it, save it again and bring that.";
