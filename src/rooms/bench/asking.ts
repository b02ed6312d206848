import { cellValue } from "../../records/checking/cell.ts";
import { Wrong } from "../../records/checking/wrong.ts";
import type { Column } from "../../records/columns.ts";
import { lastDay } from "../../records/last-day.ts";

/** Words a column allows; none where anything may be written. */
export function wordsOf(column: Column | null): readonly string[] {
  if (column?.kind === "yes_no") return ["yes", "no"];
  return column?.words ?? [];
}

const LONG = new Set(["complaint", "note"]);

export type InputKind = "text" | "long" | "date" | "number";

/** How a column is written in. */
export function inputKind(column: Column | null): InputKind {
  if (column === null || LONG.has(column.name)) return column === null ? "text" : "long";
  if (column.kind === "date") return "date";
  return column.kind === "text" ? "text" : "number";
}

/**
 * Why the import would send a cell back, as a sentence; null when it would take it, or nothing is written.
 *
 * @param today `YYYY-MM-DD`
 */
export function cellFault(column: Column | null, text: string, today: string): string | null {
  if (column === null || text.trim() === "") return null;
  const value = cellValue(text.trim(), column, { last_day: lastDay(today), reel_kind: null, position: null });
  return value instanceof Wrong ? `${value.reason}.` : null;
}
