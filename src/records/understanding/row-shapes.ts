import { plainHeading } from "../reading/heading-words.ts";

/** Why rows are dropped, as their counted remark says it. */
export const TOTALS = "dropped as a row of totals", NO_JOB = "dropped as a line that is no job (only one cell is filled, and no day)";
export const KEYED_AGAIN = "dropped as the job before it keyed again a day later", TITLE = "passed over above the headings";
export const CREDIT = "dropped as a credit note: nothing was fitted", ASSORTED = "set aside: one line for several parts";

const DITTO = /^(?:["'”“„〃]{1,2}|-"-|-''-|do\.?|ditto|same as above)$/i;
const TOTAL = /^(?:(?:grand|sub|sub-)\s?)?totals?\b|^sum\b|^summe\b|\btotal$/i;

/** A mark for "the same as above". */
export const isDitto = (text: string): boolean => DITTO.test(text);

export const isFilled = (cell: string): boolean => cell.trim() !== "";

/** The headings written again further down. */
export function isHeadings(cells: readonly string[], headings: readonly string[]): boolean {
  const full = cells.filter(isFilled).length;
  if (full < 2) return false;
  return cells.every((cell, at) => plainHeading(cell) === plainHeading(headings[at] ?? "") && cell.trim() === (headings[at] ?? "").trim());
}

/** @param key_filled the row has a day, a number or a reel of its own */
export function isTotals(cells: readonly string[], key_filled: boolean): boolean {
  return !key_filled && cells.some((cell) => TOTAL.test(cell.trim()));
}

/** Copies down what ditto marks stand for. */
export class Dittos {
  copied = 0;
  private above: readonly string[] = [];

  /** @returns the row's cells with the marks replaced, and whether there were any */
  filled(cells: readonly string[]): { cells: string[]; ditto: ReadonlySet<number> } {
    const ditto = new Set<number>();
    const own = cells.map((cell, at) => {
      if (!isDitto(cell.trim())) return cell;
      ditto.add(at);
      return this.above[at] ?? "";
    });
    if (ditto.size > 0) this.copied += 1;
    if (own.some(isFilled)) this.above = own;
    return { cells: own, ditto };
  }
}
