import type { Fault } from "../checking/row.ts";
import type { CsvRow } from "../formats/csv.ts";
import type { Layout } from "./headings.ts";
import { BLANK, HEADINGS_AGAIN } from "./remarks.ts";

const bare = (cell: string) => cell.trim().toLowerCase();
const isBlank = (cell: string) => cell.trim() === "";

/** Without a column that every row needs, what else is wrong with a row does not matter yet. */
function lacking(missing: readonly string[]): Fault {
  const last = missing.at(-1) ?? "", others = missing.slice(0, -1).join(", ");
  const reason = others === "" ? `this file has no column ${last}` : `this file has no columns ${others} and ${last}`;
  return { column: missing.join(", "), value: "", reason };
}

/** Judges rows by their shape alone, before their cells are read. */
export class RowShape {
  private readonly headings: readonly string[];
  private readonly lacks: Fault | null;

  constructor({ headings, missing }: Pick<Layout, "headings" | "missing">) {
    this.headings = headings.map(bare);
    this.lacks = missing.length === 0 ? null : lacking(missing);
  }

  isShort({ cells }: CsvRow): boolean {
    return cells.length < this.headings.length;
  }

  /** The remark under which a row is dropped; null for a row to read. */
  whyDropped({ cells }: CsvRow): string | null {
    if (cells.every(isBlank)) return BLANK;
    const again = cells.length === this.headings.length && cells.every((cell, at) => bare(cell) === this.headings[at]);
    return again ? HEADINGS_AGAIN : null;
  }

  /** What is wrong with the row as a whole. */
  fault({ cells, line, lines, stray_quote }: CsvRow): Fault | null {
    if (stray_quote && lines > 1) {
      const reason = `a quotation mark in it does not end where the cell ends, so lines ${line} to ${line + lines - 1} were read as one row`;
      return { column: "", value: (cells[0] ?? "").slice(0, 200), reason };
    }
    if (this.lacks) return this.lacks;
    const wide = this.headings.length;
    if (cells.length <= wide) return null;
    const extra = cells.slice(wide).find((cell) => !isBlank(cell));
    if (extra === undefined) return null;
    return { column: "", value: extra.slice(0, 200), reason: `the row has ${cells.length} cells and the heading row ${wide}; a cell may hold a separator` };
  }
}
