import type { OnBytes } from "./blob-bytes.ts";
import { OdsRows } from "./ods-rows.ts";
import { sheetOf, workbookRemarks } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable } from "./unreadable.ts";
import type { Archive } from "./xlsx-parts.ts";
import { XmlScan, attribute, scanXml } from "./xml-scan.ts";
import { entryText } from "./zip-file.ts";
import type { ZipEntry } from "./zip-file.ts";

interface Named {
  readonly name: string;
  readonly hidden: boolean;
}

/** Names of the sheets, in their order; a sheet is hidden by its style. */
async function namesOf({ blob, signal }: Archive, content: ZipEntry): Promise<readonly Named[]> {
  const hidden = new Set<string>(), names: Named[] = [];
  let depth = 0, style = "";
  await scanXml(entryText(blob, content, signal), {
    text: () => undefined,
    open: (name, attributes) => {
      if (name === "style") style = attribute(attributes, "name") ?? "";
      if (name === "table-properties" && attribute(attributes, "display") === "false") hidden.add(style);
      if (name !== "table" || (depth += 1) !== 1) return;
      names.push({ name: attribute(attributes, "name") ?? "", hidden: hidden.has(attribute(attributes, "style-name") ?? "") });
      if (names.length > LIMITS.sheets) throw new Unreadable(`This workbook has more than ${LIMITS.sheets} sheets.`);
    },
    close: (name) => {
      if (name === "table") depth -= 1;
    },
  });
  return names;
}

async function isLocked({ blob, entries, signal }: Archive): Promise<boolean> {
  const manifest = entries.get("META-INF/manifest.xml");
  let found = false;
  if (!manifest || manifest.bytes > LIMITS.cell_chars) return found;
  const open = (name: string) => (found ||= name === "encryption-data");
  await scanXml(entryText(blob, manifest, signal), { open, close: () => undefined, text: () => undefined });
  return found;
}

async function* rowsOf({ blob, signal }: Archive, content: ZipEntry, wanted: number, onBytes: OnBytes, remarks: string[]): AsyncGenerator<SheetRow[]> {
  const reader = new OdsRows(wanted), scan = new XmlScan(reader);
  for await (const text of entryText(blob, content, signal, onBytes)) {
    scan.push(text);
    const rows = reader.take();
    if (rows.length > 0) yield rows;
    if (reader.is_done) break;
  }
  if (!reader.is_done) throw new Unreadable(DAMAGED_WORKBOOK);
  remarks.push(...workbookRemarks(reader));
  const repeats = reader.repeated_rows.toLocaleString("en");
  if (reader.repeated_rows > 0) remarks.push(`${repeats} rows that only repeat the row above them to the end of the sheet were left out.`);
}

/**
 * The sheets of an OpenDocument spreadsheet, those without any cell too.
 *
 * @throws {Unreadable} when it is damaged or locked with a password
 */
export async function odsSheets(archive: Archive, options: OpenOptions): Promise<readonly Sheet[]> {
  const content = archive.entries.get("content.xml");
  if (!content) throw new Unreadable(DAMAGED_WORKBOOK);
  if (await isLocked(archive)) throw new Unreadable("This workbook is locked with a password; save it without one and bring that.");
  const names = await namesOf(archive, content);
  return names.map((named, wanted) => sheetOf(named, options, (onBytes, remarks) => rowsOf(archive, content, wanted, onBytes, remarks)));
}
