import { daysFrom, isDay } from "../days.ts";
import { saidInText } from "../wording.ts";
import type { ShelfRow } from "./chosen-part.ts";
import type { Delivery } from "./lead-time.ts";

/**
 * An order the owner marked as sent, or as arrived. `seen` is what the parts list said of the part then: once the list says
 * something else it is newer than the mark, knows of the order itself, and the mark counts no more.
 */
export interface OrderMark {
  readonly part_no: string;
  readonly supplier: string | null;
  readonly qty: number;
  readonly ordered_on: string;
  readonly arrived_on: string | null;
  readonly seen: { readonly on_hand: number | null; readonly on_order: number | null };
}

/** Name of the ledger's setting that keeps them, as JSON, in the order they were marked. */
export const ORDER_MARKS_SETTING = "orders marked by hand";

const count = (one: unknown): one is number | null => one === null || (typeof one === "number" && Number.isFinite(one));

function marked(one: unknown): OrderMark | string {
  if (typeof one !== "object" || one === null) return "it is not written as one";
  const { part_no, supplier, qty, ordered_on, arrived_on, seen } = one as Record<string, unknown>;
  if (typeof part_no !== "string" || part_no === "") return "it names no part";
  if (typeof qty !== "number" || !(qty > 0 && Number.isFinite(qty))) return `the pieces of ${part_no} must be more than 0`;
  if (typeof ordered_on !== "string" || !isDay(ordered_on)) return `the day ${part_no} was ordered must be written YYYY-MM-DD`;
  if (arrived_on !== null && (typeof arrived_on !== "string" || !isDay(arrived_on) || arrived_on < ordered_on)) return `${part_no} cannot have come on ${saidInText(arrived_on)}`;
  const { on_hand, on_order } = (seen ?? {}) as Record<string, unknown>;
  if (!count(on_hand) || !count(on_order)) return `what the parts list said of ${part_no} is missing`;
  return { part_no, supplier: typeof supplier === "string" ? supplier : null, qty, ordered_on, arrived_on, seen: { on_hand, on_order } };
}

/**
 * The marks as they were kept; what cannot be read is left out and named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 */
export function readOrderMarks(kept: string | null): { marks: readonly OrderMark[]; faults: readonly string[] } {
  if (kept === null || kept === "") return { marks: [], faults: [] };
  let list: unknown;
  try {
    list = JSON.parse(kept);
  } catch {
    return { marks: [], faults: [`The orders you marked cannot be read: what is kept is damaged.`] };
  }
  if (!Array.isArray(list)) return { marks: [], faults: ["The orders you marked cannot be read: they are not a list."] };
  const read = list.map(marked);
  return {
    marks: read.filter((one) => typeof one !== "string"),
    faults: read.flatMap((one) => (typeof one === "string" ? [`An order you marked was left out: ${one}.`] : [])),
  };
}

/**
 * The marks as text for the ledger's setting.
 *
 * @throws {RangeError} if one of them names no part, no pieces, or days that cannot be
 */
export function orderMarksText(marks: readonly OrderMark[]): string {
  return JSON.stringify(marks.map((one) => {
    const read = marked(one);
    if (typeof read === "string") throw new RangeError(`orderMarksText: an order is marked wrongly: ${read}`);
    return read;
  }));
}

/** Marks that still count: made by `as_of`, and the parts list says what it said then. */
export function countingMarks(shelf: readonly ShelfRow[], marks: readonly OrderMark[], as_of: string): OrderMark[] {
  const rows = new Map(shelf.map((row) => [row.part_no, row]));
  return marks.filter(({ part_no, ordered_on, seen }) => {
    const row = rows.get(part_no);
    return row !== undefined && ordered_on <= as_of && row.on_hand === seen.on_hand && row.on_order === seen.on_order;
  });
}

const arrived = ({ arrived_on }: OrderMark, as_of: string): boolean => arrived_on !== null && arrived_on <= as_of;

type Pieces = ReadonlyMap<string, number>;

/**
 * Shelf and orders under way as the marks leave them: what was sent is on order, what came lies on the shelf. A shelf
 * nobody counted stays unknown; where the parts list tells no orders the sent pieces count with the orders of the records.
 */
export function withMarks(shelf: readonly ShelfRow[], under_way: Pieces, marks: readonly OrderMark[], as_of: string): { shelf: readonly ShelfRow[]; under_way: Pieces } {
  const counting = countingMarks(shelf, marks, as_of), ways = new Map(under_way);
  if (counting.length === 0) return { shelf, under_way };
  const listed = new Set(shelf.flatMap((row) => (row.on_order === null ? [] : [row.interchange])));
  const rows = shelf.map((row) => {
    const own = counting.filter((mark) => mark.part_no === row.part_no), pieces = (some: readonly OrderMark[]) => some.reduce((sum, mark) => sum + mark.qty, 0);
    if (own.length === 0) return row;
    const came = pieces(own.filter((mark) => arrived(mark, as_of))), sent = pieces(own) - came, told = listed.has(row.interchange);
    if (sent > 0 && (!told || ways.has(row.interchange))) ways.set(row.interchange, (ways.get(row.interchange) ?? 0) + sent);
    return { ...row, on_hand: row.on_hand === null ? null : row.on_hand + came, on_order: told ? (row.on_order ?? 0) + sent : null };
  });
  return { shelf: rows, under_way: ways };
}

/** Deliveries that only the marks know: the parts of one supplier sent on one day and come on one day are one. */
export function markedDeliveries(marks: readonly OrderMark[], as_of: string, quoted: (supplier: string) => number | null): (Delivery & { supplier: string })[] {
  const found = new Map<string, Delivery & { supplier: string }>();
  for (const mark of marks) {
    if (mark.supplier === null || mark.arrived_on === null || !arrived(mark, as_of)) continue;
    const { supplier, ordered_on, arrived_on } = mark, key = JSON.stringify([supplier, ordered_on, arrived_on]);
    found.set(key, { supplier, days: daysFrom(ordered_on, arrived_on), quoted_days: quoted(supplier) });
  }
  return [...found.values()];
}
