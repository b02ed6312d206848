import { requireDay } from "../days.ts";
import { endedNumbers } from "../interchange/replacement-chains.ts";
import { groupFacts } from "./group-facts.ts";
import type { Around } from "./order-terms.ts";
import { planLine } from "./plan-line.ts";
import type { StockRecords } from "./restock-facts.ts";
import type { RestockLine, RestockSettings } from "./restock-line.ts";

/** @throws {RangeError} when a setting cannot be planned with */
export function checked(settings: RestockSettings): RestockSettings {
  requireDay("restock", "as_of", settings.as_of);
  for (const name of ["review_days", "lead_days"] as const) {
    if (!(settings[name] > 0 && settings[name] < Infinity)) throw new RangeError(`restock: ${name} must be a number of days above 0, got ${settings[name]}`);
  }
  for (const [name, target] of Object.entries(settings.targets)) {
    if (!(target > 0 && target < 1)) throw new RangeError(`restock: target ${name} must lie between 0 and 1, both excluded, got ${target}`);
  }
  return settings;
}

const STATUS = ["order", "cannot tell", "refused", "enough"] as const;
const place = (line: RestockLine) => STATUS.indexOf(line.status);

function inOrder(a: RestockLine, b: RestockLine): number {
  const worth = a.status === "order" ? (b.cost ?? Infinity) - (a.cost ?? Infinity) : 0;
  return place(a) - place(b) || (Number.isNaN(worth) ? 0 : worth) || b.used - a.used || (a.interchange < b.interchange ? -1 : 1);
}

/**
 * One line an interchange group: what to order first (dearest first), then what cannot be told, what is refused, and the rest by use.
 *
 * @throws {RangeError} when `as_of` is not a day, days are not above zero, or a target is not within 0…1
 */
export function adviseLines(records: StockRecords, settings: RestockSettings): RestockLine[] {
  const around: Around = { settings: checked(settings), ended: endedNumbers(records.shelf), deliveries: records.deliveries };
  return groupFacts(records, around).facts.map((facts) => planLine(facts, around, records.newest)).sort(inOrder);
}
