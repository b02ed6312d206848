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
  /** Characters of one row; a quotation mark that is never closed makes the rest of the file one row. */
  row_chars: 16 * 1024 ** 2,
  /** Columns of one file; more than any spreadsheet holds. */
  columns: 16_384,
} as const;
