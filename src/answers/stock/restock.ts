import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import { daysFrom } from "../days.ts";
import { money, number } from "../wording.ts";
import { adviseLines, checked } from "./advise-lines.ts";
import type { ShelfRow } from "./chosen-part.ts";
import { leadOf } from "./plan-line.ts";
import type { Around } from "./plan-line.ts";
import { stockRecords } from "./restock-facts.ts";
import type { StockRecords } from "./restock-facts.ts";
import type { RestockLine, RestockSettings, SupplierSheet } from "./restock-line.ts";
import { seasonFactor } from "./season-factor.ts";
import { supplierSheets } from "./supplier-sheets.ts";
import { useWindow } from "./use-window.ts";
import type { UseWindow } from "./use-window.ts";

export const RESTOCK_DEFAULTS = { review_days: 14, targets: { A: 0.95, B: 0.9 }, lead_days: 14 } as const;

export interface Restock {
  readonly settings: RestockSettings;
  /** Days of records the use is taken from; null while there is no ticket. */
  readonly used_from: string | null;
  readonly used_to: string;
  /** What to order first (dearest first), then what cannot be told, what is refused, and the rest by use. */
  readonly lines: readonly RestockLine[];
  readonly sheets: readonly SupplierSheet[];
  readonly total: number;
  /** Pieces used without a part number that could be told: no line can count them. */
  readonly unmapped_pieces: number;
  /** Sentences that hold for the whole table: season, records too short, and the like. */
  readonly notes: readonly string[];
}

/** Records that ended longer ago than this do not tell of the present. */
const STALE_DAYS = 30;

function seasonNote(records: StockRecords, as_of: string): string {
  const { factor, years, tickets } = seasonFactor(records.intake, as_of, 28);
  if (years < 2) return "Less than two full years of records: no season can be seen, so every day counts the same.";
  return `In the last ${years} years the four weeks ahead brought ${number(factor)} times the usual number of reels (${number(tickets)} tickets).`;
}

function tableNotes(records: StockRecords, settings: RestockSettings, window: UseWindow, last: string): string[] {
  const stale = daysFrom(last, settings.as_of);
  return [
    seasonNote(records, settings.as_of),
    ...(stale > STALE_DAYS ? [`Your newest ticket is ${number(stale)} days old: use is taken up to ${last}.`] : []),
    ...(window.days < 365 ? [`Only ${number(window.days)} days of records: the levels are on the safe side.`] : []),
    ...(records.unmapped_pieces > 0
      ? [`${number(records.unmapped_pieces)} pieces were used without a part number that can be told: no line counts them.`] : []),
  ];
}

function terms(shelf: readonly ShelfRow[], around: Pick<Around, "deliveries" | "settings">) {
  const first = new Map(shelf.map((row) => [row.supplier, row]).reverse() as [string | null, ShelfRow][]);
  return [...first].map(([supplier, row]) =>
    ({ supplier, order_cost: row.order_cost, min_order_value: row.min_order_value, lead: leadOf(row, around) }));
}

/**
 * What to reorder, how many, from whom and why: one line an interchange group.
 *
 * @throws {RangeError} when `as_of` is not a day, days are not above zero, or a target is not within 0…1
 */
export async function restock(
  engine: Engine,
  given: Partial<RestockSettings> & Pick<RestockSettings, "as_of">,
  signal?: AbortSignal,
): Promise<Restock> {
  const settings = checked({ ...RESTOCK_DEFAULTS, ...given });
  const { from, to } = await recordsSpan(engine, signal), last = to !== null && to < settings.as_of ? to : settings.as_of;
  const window = useWindow(from !== null && from < last ? from : last, last);
  const records = await stockRecords(engine, settings.as_of, window, signal);
  const lines = adviseLines(records, window, settings);
  const sheets = supplierSheets(lines, terms(records.shelf, { deliveries: records.deliveries, settings }));
  return {
    settings, used_from: from === null ? null : window.from, used_to: last, lines, sheets,
    total: money(sheets.reduce((sum, sheet) => sum + sheet.total, 0)), unmapped_pieces: records.unmapped_pieces,
    notes: from === null ? ["No ticket yet: nothing is known of what is used."] : tableNotes(records, settings, window, last),
  };
}
