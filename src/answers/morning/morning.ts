import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import type { RecordsSpan } from "../choices/choices.ts";
import type { FailureRate } from "../failures/failure-rate.ts";
import { ALL_FAILURES, failureCounts } from "../failures/failure-rates.ts";
import { EVERYTHING } from "../filter.ts";
import { labour } from "../labour/labour.ts";
import type { LabourRow } from "../labour/labour.ts";
import { restock } from "../stock/restock.ts";
import type { Restock } from "../stock/restock.ts";
import type { RestockLine, RestockSettings } from "../stock/restock-line.ts";
import { mostFailing } from "./most-failing.ts";

/** A part that open jobs wait for. */
export interface WaitingPart {
  readonly interchange: string;
  readonly name: string | null;
  readonly pieces: number;
  readonly on_hand: number | null;
}

/** What to do this week, on one page. */
export interface Morning {
  readonly as_of: string;
  readonly span: RecordsSpan;
  readonly restock: Restock;
  /** Rows the import could not take; counted by the caller. */
  readonly rows_to_fix: number;
  /** Jobs (all models) by median minutes, longest first; ten jobs or more each. */
  readonly slowest: readonly LabourRow[];
  /** Position on one model with the highest sure share (its lower limit), twenty inspected or more; planned openings wherever they suffice. */
  readonly most_failing: readonly FailureRate[];
  /** The same for positions over all models. */
  readonly failing_positions: readonly FailureRate[];
  readonly most_failing_opening: "planned" | "*";
  /** Parts that open jobs wait for, most pieces first. */
  readonly waiting: readonly WaitingPart[];
  readonly cautions: readonly string[];
}

export type MorningSettings = Partial<RestockSettings> & Pick<RestockSettings, "as_of"> & { readonly rows_to_fix: number };

const SHOWN = 5;
const FEWEST_JOBS = 10;

/** What every sheet with shares on it has to say. */
export const CAME_IN_CAUTION =
  "These are reels that came in here, not reels sold: those that never fail are not in the records, and a popular model comes in often.";
const COMPLAINT_CAUTION =
  "Too few planned openings to rank: complaints are counted in, so a model that comes in only when broken looks worse than it is.";

function waitingParts(lines: readonly RestockLine[]): WaitingPart[] {
  return lines
    .filter((line) => line.waiting > 0)
    .map(({ interchange, name, waiting, on_hand }) => ({ interchange, name, pieces: waiting, on_hand }))
    .sort((a, b) => b.pieces - a.pieces || (a.interchange < b.interchange ? -1 : 1));
}

/**
 * The morning sheet.
 *
 * @throws {RangeError} when `as_of` is not a day
 */
export async function morning(engine: Engine, { rows_to_fix, ...settings }: MorningSettings, signal?: AbortSignal): Promise<Morning> {
  const [span, order, times, planned, all] = await Promise.all([
    recordsSpan(engine, signal),
    restock(engine, settings, signal),
    labour(engine, EVERYTHING, signal),
    failureCounts(engine, { ...ALL_FAILURES, opening: "planned" }, signal),
    failureCounts(engine, ALL_FAILURES, signal),
  ]);
  const { models, positions, opening } = mostFailing(planned, all, SHOWN);
  return {
    as_of: settings.as_of, span, restock: order, rows_to_fix,
    slowest: times.rows.filter((row) => row.model === "*" && row.job !== null && row.n >= FEWEST_JOBS && row.median !== null)
      .sort((a, b) => (b.median ?? 0) - (a.median ?? 0)).slice(0, SHOWN),
    most_failing: models, failing_positions: positions, most_failing_opening: opening,
    waiting: waitingParts(order.lines),
    cautions: opening === "planned" ? [CAME_IN_CAUTION] : [CAME_IN_CAUTION, COMPLAINT_CAUTION],
  };
}
