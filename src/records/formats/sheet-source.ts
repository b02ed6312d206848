import type { OnBytes } from "./blob-bytes.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { LIMITS, Unreadable, tooWide } from "./unreadable.ts";

/** Rows given out at once. */
export const PIECE_ROWS = 1000;

/** How the rows of one sheet are read; `remarks` is filled on the way. */
export type ReadRows = (onBytes: OnBytes, remarks: string[]) => AsyncGenerator<SheetRow[]>;

export type SheetFacts = Pick<Sheet, "name"> & Partial<Pick<Sheet, "has_headings" | "hidden" | "text">>;

function checked({ cells, line }: SheetRow): void {
  if (cells.length > LIMITS.columns && cells.slice(LIMITS.columns).some((cell) => cell !== "")) {
    throw tooWide(line);
  }
  for (const [at, cell] of cells.entries()) {
    if (cell.length <= LIMITS.cell_chars) continue;
    throw new Unreadable(`The cell in row ${line}, column ${at + 1} holds more than a million letters; no record is that long.`);
  }
}

/** A sheet whose rows are read by `read`, within the limits of width and length. */
export function sheetOf(facts: SheetFacts, { onBytes }: OpenOptions, read: ReadRows): Sheet {
  let remarks: string[] = [];
  async function* run(report: OnBytes, said: string[]): AsyncGenerator<SheetRow[]> {
    for await (const rows of read(report, said)) {
      rows.forEach(checked);
      yield rows;
    }
  }
  const head = async (most: number) => {
    const first: SheetRow[] = [];
    for await (const rows of run(() => undefined, [])) {
      first.push(...rows.slice(0, most - first.length));
      if (first.length >= most) break;
    }
    return first;
  };
  return { has_headings: false, hidden: false, text: null, ...facts, get remarks() { return remarks; }, rows: () => run(onBytes, (remarks = [])), head };
}

/** A row of a file that has no lines of text. */
export const plainRow = (line: number, cells: string[], typed: ReadonlySet<number> | null): SheetRow =>
  ({ line, lines: 1, cells, stray_quote: false, typed: typed !== null && typed.size > 0 ? typed : null });

export interface WorkbookCounts {
  readonly hidden_rows: number;
  readonly hidden_columns: number;
  readonly merged: { readonly filled: number };
}

const were = (count: number, what: string) =>
  count === 1 ? `1 ${what} is hidden in the workbook; it was read.` : `${count.toLocaleString("en")} ${what}s are hidden in the workbook; they were read.`;

/** What a reader of the workbook sees otherwise than it was read, one sentence each. */
export function workbookRemarks({ hidden_rows, hidden_columns, merged: { filled } }: WorkbookCounts): string[] {
  return [
    ...(filled > 0 ? [`What merged cells say was filled into the ${filled === 1 ? "row" : `${filled.toLocaleString("en")} rows`} below that they cover.`] : []),
    ...(hidden_rows > 0 ? [were(hidden_rows, "row")] : []),
    ...(hidden_columns > 0 ? [were(hidden_columns, "column")] : []),
  ];
}
