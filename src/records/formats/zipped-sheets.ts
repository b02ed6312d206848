import { ZIP_ARCHIVE, kindOfZip } from "./file-kind.ts";
import { odsSheets } from "./ods-sheets.ts";
import type { OpenOptions, Sheet } from "./sheet.ts";
import { DAMAGED_WORKBOOK, Unreadable } from "./unreadable.ts";
import { workbookPath } from "./xlsx-parts.ts";
import type { Archive } from "./xlsx-parts.ts";
import { xlsxSheets } from "./xlsx-sheets.ts";
import { entryText, zipEntries } from "./zip-file.ts";

const MIMETYPE_BYTES = 200;

/** OpenDocument files say in a file of their own what they are. */
async function mimetypeOf({ blob, entries, signal }: Archive): Promise<string> {
  const entry = entries.get("mimetype");
  let text = "";
  if (!entry || entry.bytes > MIMETYPE_BYTES) return text;
  for await (const piece of entryText(blob, entry, signal)) text += piece;
  return text.trim();
}

/**
 * The sheets of a workbook that is a zip archive: Excel or OpenDocument.
 *
 * @throws {Unreadable} when the archive is something else, damaged or locked
 */
export async function zippedSheets(blob: Blob, options: OpenOptions): Promise<readonly Sheet[]> {
  const archive: Archive = { blob, entries: await zipEntries(blob), signal: options.signal };
  const names = [...archive.entries.keys()], kind = kindOfZip(names, await mimetypeOf(archive));
  if (typeof kind !== "string") throw new Unreadable(kind.sentence);
  if (kind === "ods") return odsSheets(archive, options);
  const path = await workbookPath(archive);
  if (path === null) throw new Unreadable(names.some((name) => name.startsWith("xl/")) ? DAMAGED_WORKBOOK : ZIP_ARCHIVE);
  if (path.endsWith(".bin")) throw new Unreadable("This is a binary Excel workbook (.xlsb); save it as .xlsx and bring that.");
  return xlsxSheets(archive, path, options);
}
