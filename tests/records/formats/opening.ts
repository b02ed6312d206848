import { openSheets } from "../../../src/records/formats/open-sheets.ts";
import type { OpenOptions, OpenedFile, Sheet, SheetRow } from "../../../src/records/formats/sheet.ts";

export async function opened(content: BlobPart, name = "file", more: Partial<OpenOptions> = {}): Promise<OpenedFile> {
  return openSheets({ name, blob: new Blob([content]) }, { signal: new AbortController().signal, onBytes: () => undefined, ...more });
}

export async function allRows(sheet: Sheet): Promise<SheetRow[]> {
  const rows: SheetRow[] = [];
  for await (const piece of sheet.rows()) rows.push(...piece);
  return rows;
}

export interface ReadSheet {
  readonly name: string | null;
  readonly cells: string[][];
  /** `line: typed places` of the rows that have some. */
  readonly typed: Record<number, number[]>;
  readonly lines: number[];
  readonly remarks: readonly string[];
}

/** Everything that a file gives, for comparing. */
export async function read(content: BlobPart, more: Partial<OpenOptions> = {}): Promise<{ kind: string; remarks: readonly string[]; sheets: ReadSheet[] }> {
  const file = await opened(content, "file", more), sheets: ReadSheet[] = [];
  for (const sheet of file.sheets) {
    const rows = await allRows(sheet);
    const typed = Object.fromEntries(rows.flatMap((row) => (row.typed ? [[row.line, [...row.typed].sort((a, b) => a - b)]] : [])));
    sheets.push({ name: sheet.name, cells: rows.map(({ cells }) => cells), typed, lines: rows.map(({ line }) => line), remarks: sheet.remarks });
  }
  return { kind: file.kind, remarks: file.remarks, sheets };
}

/** The cells of the only sheet of a file. */
export async function cellsOf(content: BlobPart, more: Partial<OpenOptions> = {}): Promise<string[][]> {
  const { sheets } = await read(content, more);
  if (sheets.length !== 1) throw new RangeError(`cellsOf: needs a file with one sheet, got ${sheets.length}`);
  return sheets[0]?.cells ?? [];
}
