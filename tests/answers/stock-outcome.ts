import { dayAfter, daysFrom } from "../../src/answers/days.ts";
import { grouped } from "../../src/answers/grouped.ts";
import { orderAdvice } from "../../src/answers/stock/order-advice.ts";
import type { StockNow, StockPast } from "../../src/answers/stock/order-advice.ts";
import { RESTOCK_DEFAULTS } from "../../src/answers/stock/restock.ts";
import type { PartClass, RestockLine } from "../../src/answers/stock/restock-line.ts";

/** One advice and what became of it: the chance promised, and the share of deliveries for which the level lasted. */
export interface Outcome { readonly part_class: PartClass; readonly pieces: number; readonly promised: number | null; readonly lasted: number }

const EMPTY: StockNow = { on_hand: new Map(), on_order: new Map(), waiting: new Map() };
const LONGEST_DAYS = 105;

/** Every delivery time of its supplier, known then or not, could have come: the level has to last over each and the time between two orders. */
function outcome(line: RestockLine, as_of: string, uses: readonly { day: string; pieces: number }[], taken: readonly number[]): Outcome {
  const level = line.reorder_point ?? 0, coming = uses.filter((use) => use.day > as_of).map((use) => ({ after: daysFrom(as_of, use.day), pieces: use.pieces }));
  const lasted = taken.filter((days) => coming.reduce((sum, use) => (use.after <= days + line.review_days ? sum + use.pieces : sum), 0) <= level);
  return { part_class: line.part_class, pieces: line.used, promised: line.level_chance, lasted: lasted.length / taken.length };
}

/**
 * The advice of a day every `step` days of a shop's past, from one year of records on, with only what was known that day,
 * against what was used afterwards.
 */
export function outcomes(past: StockPast, step: number): Outcome[] {
  const first = past.intake[0]?.day ?? "", last = past.intake.at(-1)?.day ?? "", found: Outcome[] = [];
  const uses = grouped(past.use, (use) => use.interchange), deliveries = grouped(past.deliveries, (one) => one.supplier);
  for (let as_of = dayAfter(first, 365); as_of <= dayAfter(last, -LONGEST_DAYS); as_of = dayAfter(as_of, step)) {
    for (const line of orderAdvice(past, EMPTY, { ...RESTOCK_DEFAULTS, as_of })) {
      const taken = (deliveries.get(line.supplier ?? "") ?? []).map(({ days }) => days);
      if (line.status === "refused" || line.reorder_point === null || taken.length === 0) continue;
      found.push(outcome(line, as_of, uses.get(line.interchange) ?? [], taken));
    }
  }
  return found;
}

/** Mean of a list that is not empty. */
export const meanOf = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
