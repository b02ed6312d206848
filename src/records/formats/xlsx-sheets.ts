import type { OnBytes } from "./blob-bytes.ts";
import { sheetOf, workbookRemarks } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable } from "./unreadable.ts";
import { sharedStrings, shownStyles, workbookParts } from "./xlsx-parts.ts";
import type { Archive, SheetPart } from "./xlsx-parts.ts";
import { XlsxRows, columnOf } from "./xlsx-rows.ts";
import type { CellContext } from "./xlsx-rows.ts";
import { XmlScan, attribute, scanXml } from "./xml-scan.ts";
import { entryText } from "./zip-file.ts";
import type { ZipEntry } from "./zip-file.ts";

/** Merged cells of more than one row; they stand behind the rows of a sheet, so it is looked through for them first. */
async function mergesOf({ blob, signal }: Archive, entry: ZipEntry): Promise<ReadonlyMap<string, number>> {
  const merges = new Map<string, number>();
  const open = (name: string, attributes: string) => {
    const range = name === "mergeCell" ? /^([A-Z]+)(\d+):[A-Z]+(\d+)$/.exec(attribute(attributes, "ref") ?? "") : null;
    if (!range) return;
    const [, letters = "", first, last] = range;
    if (Number(last) > Number(first)) merges.set(`${Number(first)}:${columnOf(letters) ?? 0}`, Math.min(Number(last), LIMITS.workbook_rows));
  };
  await scanXml(behindRows(entryText(blob, entry, signal)), { open, close: () => undefined, text: () => undefined });
  return merges;
}

/** What stands behind the rows of a sheet; its rows need not be taken apart to find it. */
async function* behindRows(text: AsyncIterable<string>): AsyncGenerator<string> {
  const end = /<\/(?:\w+:)?sheetData\s*>|<(?:\w+:)?sheetData\s*\/>/, kept = 64;
  let before = "", is_behind = false;
  for await (const piece of text) {
    const all = before + piece, found: RegExpExecArray | null = is_behind ? null : end.exec(all);
    if (is_behind) yield piece;
    else if (found) yield all.slice(found.index + found[0].length);
    is_behind ||= found !== null;
    before = is_behind ? "" : all.slice(-kept);
  }
}

async function* rowsOf(archive: Archive, entry: ZipEntry, context: CellContext, onBytes: OnBytes, remarks: string[]): AsyncGenerator<SheetRow[]> {
  const reader = new XlsxRows(context), scan = new XmlScan(reader);
  for await (const text of entryText(archive.blob, entry, archive.signal, onBytes)) {
    scan.push(text);
    const rows = reader.take();
    if (rows.length > 0) yield rows;
  }
  scan.end();
  remarks.push(...workbookRemarks(reader));
}

/**
 * The sheets of an Excel workbook (Office Open XML), those without any cell too.
 *
 * @throws {Unreadable} when it is damaged
 */
export async function xlsxSheets(archive: Archive, path: string, options: OpenOptions): Promise<readonly Sheet[]> {
  const parts = await workbookParts(archive, path), styles = await shownStyles(archive, parts.styles);
  let strings: Promise<readonly string[]> | null = null;
  const sheet = ({ name, hidden, path: part }: SheetPart) => {
    const entry = archive.entries.get(part);
    if (!entry) throw new Unreadable(DAMAGED_WORKBOOK);
    let merges: ReturnType<typeof mergesOf> | null = null;
    return sheetOf({ name, hidden }, options, async function* (onBytes, remarks) {
      // One after the other, so that neither can fail while nobody waits for it.
      const texts = await (strings ??= sharedStrings(archive, parts.strings)), down = await (merges ??= mergesOf(archive, entry));
      yield* rowsOf(archive, entry, { strings: texts, styles, is_1904: parts.is_1904, merges: down }, onBytes, remarks);
    });
  };
  return parts.sheets.map(sheet);
}
