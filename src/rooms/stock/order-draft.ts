import type { OrderMark } from "../../answers/stock/order-marks.ts";
import type { RestockLine, SupplierSheet } from "../../answers/stock/restock-line.ts";

/** Pieces the owner wrote in place of the advice, by interchange group. */
export type Chosen = ReadonlyMap<string, number>;

/** All as advised. */
export const NONE_CHOSEN: Chosen = new Map();

/** A line of a supplier's order as it will go out. */
export interface DraftLine {
  readonly line: RestockLine;
  /** Pieces to order: the owner's, else the advice's. */
  readonly qty: number;
  readonly advised: number;
  /** Not short yet, offered to fill the order up. */
  readonly extra: boolean;
}

/** The order of a sheet: its lines and, where they are to be added, the parts that fill it up. */
export function draftOf({ lines, joint }: SupplierSheet, chosen: Chosen): DraftLine[] {
  const one = (line: RestockLine, advised: number, extra: boolean): DraftLine => ({ line, advised, extra, qty: chosen.get(line.interchange) ?? advised });
  return [...lines.map((line) => one(line, line.order_qty ?? 0, false)), ...joint.fill.map(({ line, qty }) => one(line, qty, true))];
}

/** The lines with the pieces that will go out, for the file and the printed sheet; what is set to none is left out. */
export function draftLines(draft: readonly DraftLine[]): RestockLine[] {
  return draft.filter(({ qty }) => qty > 0).map(({ line, qty }) =>
    ({ ...line, order_qty: qty, cost: line.unit_cost === null ? null : Math.round(qty * line.unit_cost * 100) / 100 }));
}

/** Money of a draft, lines without a price left out. */
export const draftTotal = (draft: readonly DraftLine[]): number =>
  Math.round(draftLines(draft).reduce((sum, line) => sum + (line.cost ?? 0), 0) * 100) / 100;

/** The marks that say this draft was sent on a day. */
export function sentMarks(draft: readonly DraftLine[], ordered_on: string): OrderMark[] {
  return draft.flatMap(({ line, qty }): OrderMark[] => (line.part_no === null || qty <= 0 ? []
    : [{ part_no: line.part_no, supplier: line.supplier, qty, ordered_on, arrived_on: null, seen: line.listed }]));
}

/** What the owner wrote, as whole pieces; null for what is no number of pieces. */
export function wholePieces(written: string): number | null {
  const found = /^\s*(\d{1,6})\s*$/.exec(written)?.[1];
  return found === undefined ? null : Number(found);
}

/** The choices with one more. */
export const withChosen = (chosen: Chosen, { interchange }: RestockLine, qty: number): Chosen => new Map(chosen).set(interchange, qty);
