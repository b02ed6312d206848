/** A file as the owner gave it: its name (with folders, if any) and its bytes. */
export interface NamedFile {
  readonly name: string;
  readonly blob: Blob;
}

/** One row of a sheet as text, before anything is made of it. */
export interface SheetRow {
  /**
   * Where the row stands: line of a text file or row of a spreadsheet, from 1 (a quoted cell may run over several lines);
   * number of the record, from 1, in JSON, Parquet and Arrow, whose row of headings has 0.
   */
  readonly line: number;
  /** Lines the row takes up; 1 in all but text files. */
  readonly lines: number;
  /** Text as it stands in a text file; for what the file itself typed see `typed`. Rows may have different lengths. */
  readonly cells: string[];
  /** A quotation mark stands where RFC 4180 allows none, so where the cell ends is a guess. Text files only. */
  readonly stray_quote: boolean;
  /**
   * Places, from 0, of the cells that the file itself says are numbers, dates, times or yes/no; null when there are none.
   *
   * Their text is ours and needs no guess: dates `2025-03-04`, with a time of day `2025-03-04T19:14`; durations and times of
   * day `1:40` (hours and minutes; `1:40:30` if there are seconds); numbers `1234.5`; `yes` and `no`.
   */
  readonly typed: ReadonlySet<number> | null;
}

export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** How a text file is written. */
export interface TextShape {
  readonly delimiter: string;
  /** `\n` also reads lines that end in `\r\n`. */
  readonly newline: "\n" | "\r";
  readonly encoding: Encoding;
}

/** One table of a file: the whole of a text file, a sheet of a workbook, an array of a JSON file. */
export interface Sheet {
  /** Its name in the file; null when the file holds only one and gives it no name. */
  readonly name: string | null;
  /** The format itself names the columns, so the first row is the headings: JSON, Parquet, Arrow. */
  readonly has_headings: boolean;
  /** Null in all but text files. */
  readonly text: TextShape | null;
  /** The owner had the sheet hidden in the workbook. */
  readonly hidden: boolean;
  /**
   * What was filled in or is hidden, one sentence each; complete when `rows()` has ended.
   *
   * @example
   * ["3 rows are hidden in the workbook; they were read."]
   */
  readonly remarks: readonly string[];
  /**
   * All rows in pieces of some thousand, from the top, wholly blank ones too except in workbooks, where `line` jumps. May be
   * called again.
   *
   * @throws {Unreadable} when the file turns out to be damaged or too large
   * @throws the signal's reason when cancelled
   */
  rows(): AsyncGenerator<SheetRow[]>;
  /** The first `most` rows without reading on where the format allows it. Reports no bytes. */
  head(most: number): Promise<SheetRow[]>;
}

export type FormatKind = "text" | "workbook" | "json" | "parquet" | "arrow";

export interface OpenedFile {
  readonly kind: FormatKind;
  /** In the file's order, never none; sheets without any cell are left out and told in `remarks`. */
  readonly sheets: readonly Sheet[];
  /** What the owner should know of the file as a whole, one sentence each. */
  readonly remarks: readonly string[];
}

export interface OpenOptions {
  readonly signal: AbortSignal;
  /** Called with the bytes of the file, as it lies on the disk, read so far, while `rows()` runs; at most the file's size. */
  readonly onBytes: (done: number) => void;
  /** Helps to tell the separator of a text file: true for a heading that one of our tables knows. */
  readonly isKnownHeading?: (heading: string) => boolean;
  /** What the owner says of a text file, instead of what is guessed. */
  readonly text?: Partial<Pick<TextShape, "delimiter" | "encoding">>;
}

/** Names what a file is and opens it; see `open-sheets.ts`. */
export type OpenSheets = (file: NamedFile, options: OpenOptions) => Promise<OpenedFile>;
