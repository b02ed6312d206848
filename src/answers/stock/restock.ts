import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import { dayAfter, dayInWords, daysFrom } from "../days.ts";
import { between, BLOCK_DAYS, YEAR_BLOCKS } from "../demand/four-weeks.ts";
import { OriginView } from "../demand/origin-view.ts";
import { indexAhead, seasonProfile } from "../demand/season-profile.ts";
import { money, number } from "../wording.ts";
import { adviseLines, checked } from "./advise-lines.ts";
import type { ShelfRow } from "./chosen-part.ts";
import { freeFrom } from "./free-from.ts";
import { leadOf } from "./order-terms.ts";
import type { Around } from "./order-terms.ts";
import { stockRecords } from "./restock-facts.ts";
import type { StockRecords } from "./restock-facts.ts";
import type { RestockLine, RestockSettings, SupplierSheet } from "./restock-line.ts";
import { USUAL_LEVELS } from "./service-levels.ts";
import { supplierSheets } from "./supplier-sheets.ts";

export const RESTOCK_DEFAULTS = { review_days: 14, targets: USUAL_LEVELS, lead_days: 14, rule_changes: [], marks: [], free_from: {} } as const;

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

const allTickets = ({ blocks }: StockRecords): number[] =>
  blocks.days.map((_, block) => blocks.tickets.reduce((sum, list) => sum + (list[block] ?? 0), 0));

/** Told of the last two years, as long as use counts at most. */
const unmappedPieces = ({ blocks }: StockRecords): number => between(blocks.unmapped, 0, 2 * YEAR_BLOCKS);

function seasonNote(records: StockRecords): string {
  const { days, gap_days } = records.blocks, profile = seasonProfile(allTickets(records), days, 0), { years } = profile;
  if (years < 1) return "Less than a full year of records: no season can be seen, so every day counts the same.";
  const sure = years < 2 ? " One year shows a season only roughly." : "";
  return `In the last ${years === 1 ? "year" : `${years} years`} the four weeks ahead brought ${number(indexAhead(profile, gap_days, BLOCK_DAYS))} times the usual number of reels.${sure}`;
}

function tableNotes(records: StockRecords, { as_of }: RestockSettings): string[] {
  const { newest, blocks } = records, unmapped = unmappedPieces(records), stale = daysFrom(newest, as_of), days = blocks.days.reduce((sum, length) => sum + length, 0);
  return [
    seasonNote(records),
    ...(stale > STALE_DAYS ? [`Your newest ticket is ${number(stale)} days old: use is taken up to ${dayInWords(newest)}.`] : []),
    ...(days < 365 ? [`Only ${number(days)} days of records: the levels are on the safe side.`] : []),
    ...(unmapped > 0
      ? [`${number(unmapped)} pieces were used without a part number that can be told: no line counts them.`] : []),
  ];
}

/** First day of the whole years that use is taken from. */
function usedFrom({ blocks, newest }: StockRecords): string {
  return dayAfter(newest, 1 - between(blocks.days, 0, new OriginView(blocks, 0).end));
}

function terms(shelf: readonly ShelfRow[], around: Pick<Around, "deliveries" | "settings">) {
  const first = new Map(shelf.map((row) => [row.supplier, row]).reverse() as [string | null, ShelfRow][]);
  return [...first].map(([supplier, row]) =>
    ({
      supplier, order_cost: row.order_cost, min_order_value: row.min_order_value, lead: leadOf(row, around),
      free_from: supplier === null ? null : freeFrom(around.settings.free_from, supplier), as_of: around.settings.as_of,
    }));
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
  const first = from !== null && from < last ? from : last;
  const records = await stockRecords(engine, { first, newest: last, as_of: settings.as_of }, settings, signal);
  const lines = adviseLines(records, settings);
  const sheets = supplierSheets(lines, terms(records.shelf, { deliveries: records.deliveries, settings }));
  return {
    settings, used_from: from === null ? null : usedFrom(records), used_to: last, lines, sheets,
    total: money(sheets.reduce((sum, sheet) => sum + sheet.total, 0)), unmapped_pieces: unmappedPieces(records),
    notes: from === null ? ["No ticket yet: nothing is known of what is used."] : tableNotes(records, settings),
  };
}
