import { grouped } from "../grouped.ts";
import type { ShelfRow } from "./chosen-part.ts";
import type { Delivery } from "./lead-time.ts";
import { adviseLines } from "./advise-lines.ts";
import type { StockRecords, UseRow } from "./restock-facts.ts";
import type { RestockLine, RestockSettings } from "./restock-line.ts";
import type { IntakeDay } from "./season-factor.ts";
import { useWindow } from "./use-window.ts";
import type { UseWindow } from "./use-window.ts";

/** Pieces of one interchange group used or wanted on one ticket on one day; `together` is its batch, else its ticket. */
export type PastUse = {
  readonly interchange: string;
  readonly day: string;
  readonly pieces: number;
  readonly wanted: boolean;
  readonly together: string;
};

/** One delivery: all lines of one order that arrived on one day. */
export type PastDelivery = Delivery & { readonly supplier: string; readonly ordered_on: string; readonly arrived_on: string };

/** What a shop has written, whole; what is later than the day asked for is not looked at. Lists are in the order of their days. */
export interface StockPast {
  /** Catalogue: prices, packs, quoted days. Its `on_hand`, `on_order` and `due_on` are not read, `StockNow` says them. */
  readonly shelf: readonly ShelfRow[];
  readonly use: readonly PastUse[];
  readonly intake: readonly IntakeDay[];
  readonly deliveries: readonly PastDelivery[];
}

/** Pieces by interchange group on the day asked for; a group that is not named has none. */
export interface StockNow {
  readonly on_hand: ReadonlyMap<string, number>;
  readonly on_order: ReadonlyMap<string, number>;
  /** Pieces that open jobs wait for. */
  readonly waiting: ReadonlyMap<string, number>;
}

/** The rows up to `day`, of a list in the order of its days. */
function until<Row>(rows: readonly Row[], day: string, of: (row: Row) => string): readonly Row[] {
  let low = 0, high = rows.length;
  while (low < high) {
    const middle = (low + high) >> 1, row = rows[middle];
    if (row !== undefined && of(row) <= day) low = middle + 1;
    else high = middle;
  }
  return rows.slice(0, low);
}

function useRow(interchange: string, uses: readonly PastUse[], window: UseWindow, waiting: number): UseRow {
  const inside = uses.filter((use) => use.day >= window.from), at_once = grouped(inside, (use) => `${use.day} ${use.together}`);
  const sum = (some: readonly PastUse[]) => some.reduce((total, use) => total + use.pieces, 0);
  return {
    interchange, waiting, pieces: sum(inside), wanted: sum(inside.filter((use) => use.wanted)),
    recent: sum(inside.filter((use) => use.day >= window.recent_from)),
    squares: [...at_once.values()].reduce((total, some) => total + sum(some) ** 2, 0),
  };
}

/** The catalogue with a group's pieces written on its first number. */
function shelfNow(shelf: readonly ShelfRow[], now: StockNow): ShelfRow[] {
  const seen = new Set<string>();
  return shelf.map((row) => {
    const first = !seen.has(row.interchange);
    seen.add(row.interchange);
    const of = (pieces: ReadonlyMap<string, number>) => (first ? pieces.get(row.interchange) ?? 0 : 0);
    return { ...row, on_hand: of(now.on_hand), on_order: of(now.on_order), due_on: null };
  });
}

/**
 * The advice of one day from plain figures: what to order of every interchange group, as the Stock room would have said it.
 *
 * Pure: asks no engine, so that a replay can call it day after day. Of `past` only what is not after `settings.as_of` counts.
 *
 * @returns one line a group, in the order of `restock`
 * @throws {RangeError} when `as_of` is not a day, days are not above zero, or a target is not within 0…1
 */
export function orderAdvice(past: StockPast, now: StockNow, settings: RestockSettings): readonly RestockLine[] {
  const { as_of } = settings, intake = until(past.intake, as_of, (row) => row.day), use = until(past.use, as_of, (row) => row.day);
  const first = intake[0]?.day ?? as_of, last = intake.at(-1)?.day ?? as_of, window = useWindow(first, last);
  const uses = grouped(use, (row) => row.interchange), names = new Set([...uses.keys(), ...now.waiting.keys()]);
  const records: StockRecords = {
    shelf: shelfNow(past.shelf, now), intake, under_way: [], unmapped_pieces: 0,
    use: [...names].map((name) => useRow(name, uses.get(name) ?? [], window, now.waiting.get(name) ?? 0)),
    deliveries: grouped<string | null, PastDelivery>(past.deliveries.filter((row) => row.arrived_on <= as_of), (row) => row.supplier),
  };
  return adviseLines(records, window, settings);
}
