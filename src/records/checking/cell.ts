import type { Column } from "../columns.ts";
import { dateCell } from "./date-cell.ts";
import { moneyCell, numberCell, wholeCell } from "./number-cell.ts";
import { textCell } from "./text-cell.ts";
import { yesNoCell } from "./yes-no-cell.ts";
import { modeCell, positionCell, wordCell } from "./word-cell.ts";
import type { Wrong } from "./wrong.ts";

/** A cell as it is stored: a DATE as `YYYY-MM-DD`, missing as null. */
export type CellValue = string | number | boolean | null;

/** What else of the row the meaning of a cell depends on. */
export interface Around {
  /** Newest day a date may name, `YYYY-MM-DD`. */
  readonly last_day: string;
  readonly reel_kind: string | null;
  readonly position: string | null;
}

/**
 * Reads one cell that is not blank.
 *
 * @param text without blanks around it
 * @returns the value as it is stored, or why it cannot be taken over
 */
export function cellValue(text: string, column: Column, around: Around): CellValue | Wrong {
  switch (column.kind) {
    case "text": return textCell(text, column.name);
    case "date": return dateCell(text, around.last_day);
    case "number": return numberCell(text, column);
    case "whole": return wholeCell(text, column);
    case "money": return moneyCell(text, column);
    case "yes_no": return yesNoCell(text);
    case "one_of": return wordCell(text, column);
    case "position": return positionCell(text, around.reel_kind);
    case "mode": return modeCell(text, around.position);
  }
}
