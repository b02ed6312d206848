import { daysFrom } from "../days.ts";
import { demandBlocks } from "../demand/demand-blocks.ts";
import type { Opening, UseBlockRow } from "../demand/demand-blocks.ts";
import { blockOf } from "../demand/four-weeks.ts";
import { grouped } from "../grouped.ts";
import { adviseLines } from "./advise-lines.ts";
import type { ShelfRow } from "./chosen-part.ts";
import type { Delivery } from "./lead-time.ts";
import { datedHabits } from "./restock-facts.ts";
import type { StockRecords } from "./restock-facts.ts";
import type { RestockLine, RestockSettings } from "./restock-line.ts";

/** Pieces of one interchange group used or wanted on one ticket on one day; `together` is its batch, else its ticket. */
export type PastUse = {
  readonly interchange: string;
  readonly day: string;
  readonly opening: Opening;
  readonly pieces: number;
  readonly wanted: boolean;
  readonly together: string;
};

/** Reels that came in on a day. */
export type IntakeDay = { readonly day: string; readonly tickets: number };

/** One delivery: all lines of one order that arrived on one day. */
export type PastDelivery = Delivery & { readonly supplier: string; readonly ordered_on: string; readonly arrived_on: string };

/** What a shop has written, whole, as `stockPast` gives it: what is later than the day asked for is not looked at. */
export interface StockPast {
  /** Catalogue: prices, packs, quoted days. Its `on_hand`, `on_order` and `due_on` are not read, `StockNow` says them. */
  readonly shelf: readonly ShelfRow[];
  /** In the order of days, then groups, then tickets. */
  readonly use: readonly PastUse[];
  /** One row a day and way of coming in. */
  readonly intake: readonly (IntakeDay & { readonly opening: Opening })[];
  readonly deliveries: readonly PastDelivery[];
  /** Where parts of each group were used, for dated habits; empty where none are given. */
  readonly positions: readonly { readonly interchange: string; readonly position: string }[];
}

/** Pieces by interchange group on the day asked for; a group that is not named has none. */
export interface StockNow {
  readonly on_hand: ReadonlyMap<string, number>;
  readonly on_order: ReadonlyMap<string, number>;
  /** Pieces that open jobs wait for. */
  readonly waiting: ReadonlyMap<string, number>;
}

/** The rows up to `day`, of a list in the order of its days. */
function until<Row extends { readonly day: string }>(rows: readonly Row[], day: string): readonly Row[] {
  let low = 0, high = rows.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle]?.day ?? "") <= day) low = middle + 1;
    else high = middle;
  }
  return rows.slice(0, low);
}

const sameMoment = (one: PastUse, other: PastUse): boolean =>
  one.day === other.day && one.interchange === other.interchange && one.together === other.together && one.opening === other.opening;

/** Block of each day, worked out once a day. */
function blocksBack(newest: string): (day: string) => number {
  const known = new Map<string, number>();
  return (day) => {
    const found = known.get(day) ?? blockOf(daysFrom(day, newest));
    known.set(day, found);
    return found;
  };
}

/** What was used on one day: a row for each group and way of coming in. Which block the day lies in hangs on the day asked for. */
interface DayUse { readonly day: string; readonly rows: readonly { -readonly [Key in keyof UseBlockRow]: UseBlockRow[Key] }[] }

/** One day's use, as `use-by-block.sql` counts it: what left at once is squared as one. Pieces are whole, so that adding up by the day first gives the same sums. */
function onOneDay(uses: readonly PastUse[]): DayUse["rows"] {
  const rows = new Map<string, DayUse["rows"][number]>();
  for (let at = 0; at < uses.length;) {
    const first = uses[at] as PastUse, { interchange, opening } = first, key = `${opening ?? ""} ${interchange}`;
    let pieces = 0, wanted = 0, use: PastUse | undefined = first;
    for (; use !== undefined && sameMoment(use, first); at += 1, use = uses[at]) {
      pieces += use.pieces;
      wanted += use.wanted ? use.pieces : 0;
    }
    const row = rows.get(key) ?? { interchange, opening, block: 0, pieces: 0, wanted: 0, waiting: 0, squares: 0 };
    row.pieces += pieces;
    row.wanted += wanted;
    row.squares += pieces ** 2;
    rows.set(key, row);
  }
  return [...rows.values()];
}

/** A replay asks of the same past on a hundred days. */
const known_days = new WeakMap<readonly PastUse[], readonly DayUse[]>();

function dayUse(uses: readonly PastUse[]): readonly DayUse[] {
  const found = known_days.get(uses) ?? [...grouped(uses, ({ day }) => day)].map(([day, of]) => ({ day, rows: onOneDay(of) }));
  known_days.set(uses, found);
  return found;
}

/** Rows of the days up to one, each in its block; they stand until the next day is asked for. */
function useUntil(uses: readonly PastUse[], as_of: string, block: (day: string) => number): UseBlockRow[] {
  return until(dayUse(uses), as_of).flatMap(({ day, rows }) => {
    const at = block(day);
    // In place: copies of a hundred thousand rows a day asked for took a quarter of a replay.
    for (const row of rows) row.block = at;
    return rows;
  });
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

/** What the advice of one day reads. */
function recordsOn(past: StockPast, now: StockNow, { as_of, rule_changes }: Pick<RestockSettings, "as_of" | "rule_changes">): StockRecords {
  const intake = until(past.intake, as_of), first = intake[0]?.day ?? as_of, newest = intake.at(-1)?.day ?? as_of, block = blocksBack(newest);
  const tickets = intake.map(({ day, opening, tickets: came }) => ({ opening, block: block(day), tickets: came }));
  return {
    shelf: shelfNow(past.shelf, now), newest, waiting: now.waiting, under_way: new Map(), habits: datedHabits(past.positions, rule_changes, as_of),
    blocks: demandBlocks(useUntil(past.use, as_of, block), tickets, daysFrom(first, newest) + 1, daysFrom(newest, as_of)),
    deliveries: grouped<string | null, PastDelivery>(past.deliveries.filter((row) => row.arrived_on <= as_of), (row) => row.supplier),
  };
}

/**
 * The advice of one day from plain figures: what to order of every interchange group, as the Stock room would have said it.
 *
 * Pure: asks no engine, so that a replay can call it day after day. Of `past` only what is not after `settings.as_of` counts.
 *
 * @returns one line a group, in the order of `restock`
 * @throws {RangeError} when `as_of` is not a day, days are not above zero, or a target is not within 0…1
 */
export const orderAdvice = (past: StockPast, now: StockNow, settings: RestockSettings): readonly RestockLine[] => adviseLines(recordsOn(past, now, settings), settings);

/**
 * The same for several targets on the same day; what does not hang on them is worked out once.
 *
 * @returns lines as `orderAdvice` gives them, for each of `targets`
 */
export function orderAdviceFor(past: StockPast, now: StockNow, settings: RestockSettings, targets: readonly RestockSettings["targets"][]): (readonly RestockLine[])[] {
  const records = recordsOn(past, now, settings);
  return targets.map((one) => adviseLines(records, { ...settings, targets: one }));
}
