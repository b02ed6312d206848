import { shownAs } from "./number-format.ts";
import type { Shown } from "./number-format.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable } from "./unreadable.ts";
import { attribute, scanXml } from "./xml-scan.ts";
import { entryText } from "./zip-file.ts";
import type { ZipEntry } from "./zip-file.ts";

/** An opened archive. */
export interface Archive {
  readonly blob: Blob;
  readonly entries: ReadonlyMap<string, ZipEntry>;
  readonly signal: AbortSignal;
}

export interface SheetPart {
  readonly name: string;
  readonly hidden: boolean;
  /** Name of its file in the archive. */
  readonly path: string;
}

export interface WorkbookParts {
  readonly sheets: readonly SheetPart[];
  readonly is_1904: boolean;
  readonly styles: string | null;
  readonly strings: string | null;
}

const isTrue = (value: string | null) => value === "1" || value === "true";

/** Opens of the elements of one file in the archive. */
async function elements({ blob, entries, signal }: Archive, path: string, open: (name: string, attributes: string) => void): Promise<void> {
  const entry = entries.get(path);
  if (!entry) throw new Unreadable(DAMAGED_WORKBOOK);
  if (entry.bytes > LIMITS.whole_bytes) throw new Unreadable(DAMAGED_WORKBOOK);
  await scanXml(entryText(blob, entry, signal), { open, close: () => undefined, text: () => undefined });
}

/** A path as a part of the workbook names another: from the top, or from its own folder. */
function resolved(from: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1);
  const folders = from.split("/").slice(0, -1);
  for (const piece of target.split("/")) {
    if (piece === "..") folders.pop();
    else if (piece !== ".") folders.push(piece);
  }
  return folders.join("/");
}

interface Relation {
  readonly id: string;
  /** Last word of its type; its address differs between the strict and the usual kind of workbook. */
  readonly type: string;
  readonly path: string;
}

async function relationsOf(archive: Archive, part: string): Promise<readonly Relation[]> {
  const at = part.lastIndexOf("/") + 1, path = `${part.slice(0, at)}_rels/${part.slice(at)}.rels`, found: Relation[] = [];
  if (!archive.entries.has(path)) return found;
  await elements(archive, path, (name, attributes) => {
    const type = attribute(attributes, "Type")?.split("/").at(-1), target = attribute(attributes, "Target"), id = attribute(attributes, "Id");
    if (name === "Relationship" && type !== undefined && target !== null && id !== null) found.push({ id, type, path: resolved(part, target) });
  });
  return found;
}

/** The archive's own relations name the workbook; the usual place is taken when they do not. */
export async function workbookPath(archive: Archive): Promise<string | null> {
  const named = (await relationsOf(archive, "")).find(({ type }) => type === "officeDocument")?.path ?? "xl/workbook.xml";
  return archive.entries.has(named) ? named : null;
}

/**
 * Sheets, date system and other parts of a workbook.
 *
 * @throws {Unreadable} when it is damaged or has too many sheets
 */
export async function workbookParts(archive: Archive, path: string): Promise<WorkbookParts> {
  const relations = await relationsOf(archive, path), sheets: SheetPart[] = [];
  const part = (type: string) => relations.find((one) => one.type === type && archive.entries.has(one.path))?.path ?? null;
  let is_1904 = false;
  await elements(archive, path, (name, attributes) => {
    if (name === "workbookPr") is_1904 = isTrue(attribute(attributes, "date1904"));
    if (name !== "sheet") return;
    const id = attribute(attributes, "id"), sheet = relations.find((one) => one.id === id && one.type === "worksheet");
    const hidden = /hidden/i.test(attribute(attributes, "state") ?? "");
    if (sheet && archive.entries.has(sheet.path)) sheets.push({ name: attribute(attributes, "name") ?? "", hidden, path: sheet.path });
    if (sheets.length > LIMITS.sheets) throw new Unreadable(`This workbook has more than ${LIMITS.sheets} sheets.`);
  });
  return { sheets, is_1904, styles: part("styles"), strings: part("sharedStrings") };
}

/** What the cells of each style are shown as, by the style's number. */
export async function shownStyles(archive: Archive, path: string | null): Promise<readonly Shown[]> {
  if (path === null) return [];
  const codes = new Map<number, string>(), ids: number[] = [];
  let in_cells = false;
  await elements(archive, path, (name, attributes) => {
    if (name === "numFmt") codes.set(Number(attribute(attributes, "numFmtId")), attribute(attributes, "formatCode") ?? "");
    if (name === "cellXfs" || name === "cellStyleXfs") in_cells = name === "cellXfs";
    if (name === "xf" && in_cells) ids.push(Number(attribute(attributes, "numFmtId") ?? 0));
    if (name === "cellStyles") in_cells = false;
  });
  return ids.map((id) => shownAs(id, codes.get(id) ?? null));
}

/** Letters that XML cannot hold are written as `_x000D_` (ECMA-376 part 1, 22.9.2.19). */
export const withEscapes = (text: string): string =>
  (text.includes("_x") ? text.replace(/_x([\da-f]{4})_/gi, (_whole, code: string) => String.fromCharCode(Number.parseInt(code, 16))) : text).replace(/\r\n?/g, "\n");

/** Collects the text of one string, in one or several runs, without the reading aids of East Asian names. */
export class RunText {
  private parts = "";
  private in_text = false;
  private in_aid = false;

  open(name: string): void {
    if (name === "rPh") this.in_aid = true;
    if (name === "t") this.in_text = !this.in_aid;
  }

  close(name: string): void {
    if (name === "rPh") this.in_aid = false;
    if (name === "t") this.in_text = false;
  }

  text(text: string): void {
    if (this.in_text) this.parts += text;
  }

  take(): string {
    const text = withEscapes(this.parts);
    this.parts = "";
    return text;
  }
}

/**
 * The texts that the cells of a workbook point to, by number.
 *
 * @throws {Unreadable} when they are larger than the limit
 */
export async function sharedStrings({ blob, entries, signal }: Archive, path: string | null): Promise<readonly string[]> {
  const entry = path === null ? undefined : entries.get(path), strings: string[] = [], run = new RunText();
  if (!entry) return strings;
  if (entry.bytes > LIMITS.whole_bytes) throw new Unreadable("The texts of this workbook are larger than 256 MB; split it.");
  await scanXml(entryText(blob, entry, signal), {
    open: (name) => run.open(name),
    text: (text) => run.text(text),
    close: (name) => {
      run.close(name);
      if (name === "si") strings.push(run.take());
    },
  });
  return strings;
}
