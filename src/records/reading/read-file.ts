import type { Report } from "../../db/engine.ts";
import type { TableName } from "../columns.ts";
import type { FileTally, Reject } from "../ledger/ledger.ts";
import { DELIMITER_LINE, csvRows, shapeOf } from "../formats/csv.ts";
import type { CsvShape } from "../formats/csv.ts";
import { encodingOf, headBytes, textOf } from "../formats/decoded-text.ts";
import type { Encoding } from "../formats/sheet.ts";
import { whyNotText } from "./file-kind.ts";
import type { StagedRows } from "./filling.ts";
import { isKnownHeading, layoutOf } from "./headings.ts";
import type { Layout } from "./headings.ts";
import type { Mapping } from "./mapping.ts";
import { layoutRemarks } from "./remarks.ts";
import { RowTaker } from "./row-taker.ts";
import { LIMITS, Unreadable } from "../formats/unreadable.ts";

export interface ReadOptions {
  /** Number of the file within its import, from 1. */
  readonly file_no: number;
  readonly mapping: Mapping | null;
  /** Newest day a date may name, `YYYY-MM-DD`. */
  readonly last_day: string;
  readonly signal: AbortSignal;
  readonly report: Report;
  /** Takes the rows that passed; the next ones are read when it has. */
  readonly take: (rows: StagedRows) => Promise<void>;
}

/** What reading made of a file; which rows are new is settled later, `rows_known` only repeat a ticket of the same file. */
export interface FileRead extends Omit<FileTally, "rows_new"> {
  readonly rejects: readonly Reject[];
}

export interface NamedFile {
  readonly name: string;
  readonly blob: Blob;
}

/** Reads one file, here or in a worker. */
export type ReadFile = (file: NamedFile, options: ReadOptions) => Promise<FileRead>;

async function sha256(blob: Blob): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

interface Opened {
  readonly encoding: Encoding;
  readonly head: string;
  readonly shape: CsvShape;
}

async function open({ blob }: NamedFile, { signal, mapping }: ReadOptions): Promise<Opened> {
  if (blob.size === 0) throw new Unreadable("The file is empty.");
  if (blob.size > LIMITS.file_bytes) throw new Unreadable("The file is larger than 512 MB; split it, or leave out columns that are not needed.");
  const bytes = await headBytes(blob, signal), why = whyNotText(bytes);
  if (why !== null) throw new Unreadable(why);
  const encoding = await encodingOf(blob, signal);
  const head = new TextDecoder(encoding).decode(bytes, { stream: true });
  return { encoding, head, shape: shapeOf(head, (heading) => isKnownHeading(heading, mapping)) };
}

/** What the browser says when a file was moved, changed or is a folder. */
const GONE = new Set(["NotReadableError", "NotFoundError", "SecurityError"]);

function sentenceOf(error: unknown): string | null {
  if (error instanceof Unreadable) return error.message;
  if (error instanceof Error && GONE.has(error.name)) return "The file could not be opened; was it moved, changed or is it a folder?";
  return null;
}

/** Reads all rows of an opened file; gives the layout and what became of the rows. */
async function rowsOf(file: NamedFile, options: ReadOptions, { encoding, head, shape }: Opened): Promise<{ layout: Layout; taker: RowTaker }> {
  const { signal, report, mapping } = options;
  const onBytes = (done: number) => report({ step: `Reading ${file.name}`, done, total: file.blob.size, rows: taker?.rows_read ?? 0 });
  let skip = DELIMITER_LINE.test(head), blank = 0, layout: Layout | null = null, taker: RowTaker | null = null;
  for await (const rows of csvRows(textOf(file.blob, encoding, signal, onBytes), shape)) {
    for (const row of rows) {
      if (taker) taker.take(row);
      else if (skip) skip = false;
      else if (row.cells.every((cell) => cell.trim() === "")) blank += 1;
      else {
        layout = layoutOf(row.cells, file.name, mapping);
        taker = new RowTaker({ name: file.name, file_no: options.file_no }, layout, options.last_day);
      }
    }
    for (const staged of taker?.staged(false) ?? []) await options.take(staged);
  }
  if (!taker || !layout) throw new Unreadable("The file holds nothing but blank lines.");
  for (; blank > 0; blank -= 1) taker.take({ line: blank, cells: [""], lines: 1, stray_quote: false });
  taker.finish();
  for (const staged of taker.staged(true)) await options.take(staged);
  return { layout, taker };
}

/**
 * Reads one file: names what it is, finds delimiter, encoding and headings, and checks it row by row.
 *
 * @returns the tally; a file that cannot be read has the reason in `unreadable`, and what was given to `take` is void
 * @throws the signal's reason when cancelled
 */
export const readFile: ReadFile = async (file, options) => {
  const tally = { file: file.name, bytes: file.blob.size, sha256: "" };
  try {
    const opened = await open(file, options);
    const { layout, taker } = await rowsOf(file, options, opened);
    const tables: TableName[] = layout.plans.map(({ table }) => table.name);
    const remarks = [
      ...(opened.encoding === "windows-1252" ? ["Read as Windows-1252, because the text is not valid UTF-8."] : []),
      ...layoutRemarks(layout, options.mapping),
      ...taker.counts.sentences(),
      ...(taker.rows_read === 0 ? ["The file holds headings and no rows."] : []),
    ];
    const { rows_read, rows_known, rows_to_fix, rows_dropped, rejects } = taker;
    return { ...tally, sha256: await sha256(file.blob), tables, rows_read, rows_known, rows_to_fix, rows_dropped, unreadable: null, remarks, rejects };
  } catch (error) {
    const unreadable = sentenceOf(error);
    if (unreadable === null) throw error;
    return { ...tally, tables: [], rows_read: 0, rows_known: 0, rows_to_fix: 0, rows_dropped: 0, unreadable, remarks: [], rejects: [] };
  }
};
