import type { Engine } from "../../db/engine.ts";
import type { RestockLine, RestockSettings, SupplierSheet } from "./restock-line.ts";

export const RESTOCK_DEFAULTS = { review_days: 14, targets: { A: 0.95, B: 0.9 }, lead_days: 14 } as const;

export interface Restock {
  readonly settings: RestockSettings;
  /** Days of records the use is taken from. */
  readonly used_from: string | null;
  readonly used_to: string;
  /** What to order first, then the rest; dearest cost first within. */
  readonly lines: readonly RestockLine[];
  readonly sheets: readonly SupplierSheet[];
  readonly total: number;
  /** Pieces used without a part number that could be told: no line can count them. */
  readonly unmapped_pieces: number;
  /** Sentences that hold for the whole table: season, records too short, and the like. */
  readonly notes: readonly string[];
}

/**
 * What to reorder, how many, from whom and why.
 *
 * @throws {RangeError} when `as_of` is not a day, days are not above zero, or a target is not within 0…1
 */
export async function restock(
  _engine: Engine,
  _settings: Partial<RestockSettings> & Pick<RestockSettings, "as_of">,
  _signal?: AbortSignal,
): Promise<Restock> {
  throw new Error("restock: under way");
}
