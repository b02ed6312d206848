import type { Engine } from "../../db/engine.ts";
import type { FailureRate } from "../failures/failure-rate.ts";
import { ALL_FAILURES, failureCounts } from "../failures/failure-rates.ts";
import { EVERYTHING } from "../filter.ts";
import { labour } from "../labour/labour.ts";
import type { LabourRow } from "../labour/labour.ts";
import { CAME_IN_CAUTION } from "./came-in-caution.ts";
import { mostFailing } from "./most-failing.ts";
import { orderToday } from "./order-today.ts";
import type { OrderSettings, OrderToday } from "./order-today.ts";

/** What to do this week, on one page, from the records alone: for the report. The room adds what takes longer to work out. */
export interface Morning extends OrderToday {
  /** Rows the import could not take; counted by the caller. */
  readonly rows_to_fix: number;
  /** Jobs (all models) by median minutes, longest first; ten jobs or more each. */
  readonly slowest: readonly LabourRow[];
  /** Position on one model with the highest sure share (its lower limit), twenty inspected or more; planned openings wherever they suffice. */
  readonly most_failing: readonly FailureRate[];
  /** The same for positions over all models. */
  readonly failing_positions: readonly FailureRate[];
  readonly most_failing_opening: "planned" | "*";
  readonly cautions: readonly string[];
}

export type MorningSettings = OrderSettings & { readonly rows_to_fix: number };

const SHOWN = 5;
const FEWEST_JOBS = 10;

const COMPLAINT_CAUTION =
  "Too few planned openings to rank: complaints are counted in, so a model that comes in only when broken looks worse than it is.";

/**
 * The morning sheet.
 *
 * @throws {RangeError} when `as_of` is not a day
 */
export async function morning(engine: Engine, { rows_to_fix, ...settings }: MorningSettings, signal?: AbortSignal): Promise<Morning> {
  const [order, times, planned, all] = await Promise.all([
    orderToday(engine, settings, signal),
    labour(engine, EVERYTHING, signal),
    failureCounts(engine, { ...ALL_FAILURES, opening: "planned" }, signal),
    failureCounts(engine, ALL_FAILURES, signal),
  ]);
  const { models, positions, opening } = mostFailing(planned, all, SHOWN);
  return {
    ...order, rows_to_fix,
    slowest: times.rows.filter((row) => row.model === "*" && row.job !== null && row.n >= FEWEST_JOBS && row.median !== null)
      .sort((a, b) => (b.median ?? 0) - (a.median ?? 0)).slice(0, SHOWN),
    most_failing: models, failing_positions: positions, most_failing_opening: opening,
    cautions: opening === "planned" ? [CAME_IN_CAUTION] : [CAME_IN_CAUTION, COMPLAINT_CAUTION],
  };
}
