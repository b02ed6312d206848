import type { Engine } from "../../db/engine.ts";
import type { RecordsSpan } from "../choices/choices.ts";
import type { FailureRate } from "../failures/failure-rate.ts";
import type { LabourRow } from "../labour/labour.ts";
import type { Restock } from "../stock/restock.ts";
import type { RestockSettings } from "../stock/restock-line.ts";

/** What to do this week, on one page. */
export interface Morning {
  readonly as_of: string;
  readonly span: RecordsSpan;
  readonly restock: Restock;
  /** Rows the import could not take; counted by the caller. */
  readonly rows_to_fix: number;
  /** Jobs (all models) by median minutes, longest first; ten jobs or more each. */
  readonly slowest: readonly LabourRow[];
  /** Position and model with the highest share, twenty inspected or more; of planned openings wherever they suffice. */
  readonly most_failing: readonly FailureRate[];
  readonly most_failing_opening: "planned" | "*";
  /** Pieces open jobs are waiting for, by part. */
  readonly waiting: readonly { readonly interchange: string; readonly name: string | null; readonly pieces: number; readonly on_hand: number | null }[];
  readonly cautions: readonly string[];
}

/**
 * The morning sheet.
 *
 * @throws {RangeError} when `as_of` is not a day
 */
export async function morning(
  _engine: Engine,
  _settings: Partial<RestockSettings> & Pick<RestockSettings, "as_of"> & { readonly rows_to_fix: number },
  _signal?: AbortSignal,
): Promise<Morning> {
  throw new Error("morning: under way");
}
