import { positions } from "../vocabulary-tables.ts";
import type { Entries } from "./bench-store.ts";
import { FOUND_COLUMNS, foundField, foundLine, type FoundColumn, type FoundLine } from "./fields.ts";

/** What stands in one line of findings; empty columns are absent. */
export type Found = FoundLine & Partial<Record<FoundColumn, string>>;

/** What one touch on "all fine" writes: looked at, as new, nothing done. */
export const FINE: Partial<Record<FoundColumn, string>> = { grade: "0", action: "left" };

const PLACE: ReadonlyMap<string, number> = new Map(positions.map(({ position }, at) => [position, at]));
const place = ({ position }: FoundLine) => PLACE.get(position) ?? PLACE.size;

/** All lines of findings that hold something, in the order of the position list. */
export function foundLines(entries: Entries): readonly Found[] {
  const lines = new Map<string, Found>();
  for (const [field, { value }] of entries) {
    const at = foundLine(field), column = field.split(":")[3] as FoundColumn | undefined;
    if (!at || !column || !FOUND_COLUMNS.includes(column) || value === null || value.trim() === "") continue;
    const key = `${at.position}:${at.line}`;
    lines.set(key, { ...(lines.get(key) ?? at), [column]: value.trim() });
  }
  return [...lines.values()].sort((a, b) => place(a) - place(b) || a.line - b.line);
}

export const isFine = ({ position: _, line: __, ...rest }: Found): boolean => {
  const written = Object.entries(rest);
  return written.length === Object.keys(FINE).length && written.every(([column, value]) => FINE[column as FoundColumn] === value);
};

/** The fields that "all fine" writes for a position. */
export const fineFields = (position: string): readonly (readonly [field: string, value: string])[] =>
  Object.entries(FINE).map(([column, value]) => [foundField({ position, line: 1 }, column as FoundColumn), value] as const);

/** The fields of one line of findings. */
export const fieldsOf = (at: FoundLine): readonly string[] => FOUND_COLUMNS.map((column) => foundField(at, column));
