import { headBytes } from "./decoded-text.ts";
import { kindOf } from "./file-kind.ts";
import type { Kind } from "./file-kind.ts";
import type { OpenOptions, OpenSheets, OpenedFile, Sheet } from "./sheet.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

type Open = (blob: Blob, head: Uint8Array, options: OpenOptions) => Promise<readonly Sheet[]>;

/** What reads each kind is loaded only when such a file comes. */
const OPEN: Readonly<Record<Kind, Open>> = {
  text: async (...given) => [await (await import("./text-sheet.ts")).textSheet(...given)],
  json: async (blob, _head, options) => (await import("./json-sheets.ts")).jsonSheets(blob, options),
  zip: async (blob, _head, options) => (await import("./zipped-sheets.ts")).zippedSheets(blob, options),
  ole: async (blob, _head, options) => (await import("./xls-sheets.ts")).xlsSheets(blob, options),
  parquet: async (blob, _head, options) => [await (await import("./parquet-sheet.ts")).parquetSheet(blob, options)],
  arrow: async (blob, _head, options) => [await (await import("./arrow-sheet.ts")).arrowSheet(blob, options)],
};
const NAMES = { text: "text", json: "json", zip: "workbook", ole: "workbook", parquet: "parquet", arrow: "arrow" } as const;

async function isEmpty(sheet: Sheet): Promise<boolean> {
  return (await sheet.head(1)).length === 0;
}

/** A workbook often has sheets that nobody ever used. */
async function withoutEmpty(kind: OpenedFile["kind"], all: readonly Sheet[]): Promise<OpenedFile> {
  const sheets: Sheet[] = [], remarks: string[] = [];
  for (const sheet of all) {
    if (await isEmpty(sheet)) remarks.push(`The sheet “${sheet.name ?? ""}” is empty.`);
    else sheets.push(sheet);
  }
  if (sheets.length === 0) throw new Unreadable("The file holds nothing but empty sheets.");
  const hidden = sheets.filter((sheet) => sheet.hidden).map(({ name }) => `The sheet “${name ?? ""}” is hidden in the workbook; it was read too.`);
  return { kind, sheets, remarks: [...hidden, ...remarks] };
}

/**
 * Names what a file is by its bytes, whatever it is called, and opens its sheets.
 *
 * Text with separated cells (packed with gzip or not), JSON and JSON lines, Excel and OpenDocument workbooks, Parquet, Arrow.
 *
 * @throws {Unreadable} with one sentence for the owner when it is none of these, damaged, locked or too large
 * @throws the signal's reason when cancelled
 */
export const openSheets: OpenSheets = async ({ blob }, options) => {
  options.signal.throwIfAborted();
  if (blob.size === 0) throw new Unreadable("The file is empty.");
  if (blob.size > LIMITS.file_bytes) throw new Unreadable("The file is larger than 512 MB; split it, or leave out columns that are not needed.");
  const head = await headBytes(blob, options.signal), kind = kindOf(head);
  if (typeof kind !== "string") throw new Unreadable(kind.sentence);
  const is_packed = new Uint8Array(await blob.slice(0, 2).arrayBuffer()).join() === "31,139";
  if (is_packed && kind !== "text" && kind !== "json") throw new Unreadable("This is a packed file with another one in it; unpack it and bring that.");
  const sheets = await OPEN[kind](blob, head, options);
  return kind === "text" ? { kind: NAMES[kind], sheets, remarks: [] } : withoutEmpty(NAMES[kind], sheets);
};
