import type { SheetRow } from "../formats/sheet.ts";
import { plainHeading } from "../reading/heading-words.ts";

export interface TableStart {
  /** Line of the heading row; null when there is none and the first row is data. */
  readonly heading_line: number | null;
  /** Cells of the heading row, as written; empty texts where there is none. */
  readonly headings: readonly string[];
  /** One name a column, all different; see `ColumnUnderstanding.label`. */
  readonly labels: readonly string[];
}

/** A heading row is looked for among the first rows that hold something. */
const LOOKED_AT = 20;

const isFilled = (cell: string) => cell.trim() !== "";
const filled = (cells: readonly string[]) => cells.filter(isFilled).length;
/** Words, as headings are; a date, a number, an amount or a whole sentence is data. */
const isWord = (cell: string) => /\p{L}/u.test(cell) && !/\d{2,}/.test(cell) && cell.trim().length <= 60;

/** How much a row looks like headings: cells we know count most. */
function score({ cells, typed }: SheetRow, width: number, isKnown: (heading: string) => boolean): number {
  const full = cells.filter(isFilled), words = full.filter(isWord).length, known = full.filter(isKnown).length;
  if (full.length < 2 || (typed?.size ?? 0) > 0) return 0;
  const different = new Set(full.map(plainHeading)).size === full.length;
  return known * 3 + (different && words >= full.length * 0.75 && full.length >= width * 0.6 ? 2 : 0);
}

function labelsOf(headings: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return headings.map((heading, at) => {
    const name = heading.trim().replace(/\s+/g, " "), isNamed = /[\p{L}\p{N}]/u.test(name);
    const label = isNamed ? name : `column ${at + 1}`, nth = (seen.get(label) ?? 0) + 1;
    seen.set(label, nth);
    return nth === 1 ? label : `${label} (${nth})`;
  });
}

/**
 * Where the table of a sheet starts: title rows above it are passed over, and a sheet may have no headings at all.
 *
 * @param head the first rows
 * @param isKnown true for a heading that any of our lists knows
 */
export function tableStart(head: readonly SheetRow[], has_headings: boolean, isKnown: (heading: string) => boolean): TableStart {
  const rows = head.filter(({ cells }) => cells.some(isFilled)), width = Math.max(1, ...rows.map(({ cells }) => filled(cells)));
  const ranked = rows.slice(0, LOOKED_AT).map((row) => ({ row, points: score(row, width, isKnown) }));
  const best = has_headings ? ranked[0] : ranked.reduce<(typeof ranked)[number] | undefined>((a, b) => (a && a.points >= b.points ? a : b), undefined);
  const widest = Math.max(1, ...rows.map(({ cells }) => cells.length));
  const found = best && (has_headings || best.points >= 2) ? best.row : null;
  const headings = Array.from({ length: found ? Math.max(found.cells.length, 1) : widest }, (_, at) => found?.cells[at] ?? "");
  return { heading_line: found?.line ?? null, headings, labels: labelsOf(headings) };
}
