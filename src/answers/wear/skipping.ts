import type { Skipping } from "./advice.ts";
import type { AdviceRecords } from "./advice-records.ts";
import type { PositionDue } from "./position-due.ts";
import { counted } from "./wear-words.ts";

/** Fewest visits for a usual year. */
const FEWEST_VISITS = 10;

const NOTE = "Counted at the visit: a reel that comes after two years has more failed parts at once. Whether servicing makes parts last longer, these records do not show.";

/** A part, how many more of it have failed after two years than after one, and what one costs. */
interface More { readonly name: string; readonly parts: number; readonly cost: number | null; readonly minutes: number | null }

/** What the parts that are known come to, and the names of the others; null without any that is known. */
function comesTo(more: readonly More[], each: "cost" | "minutes"): { sum: number | null; without: readonly string[] } {
  const known = more.filter((one) => one[each] !== null);
  return { sum: known.length === 0 ? null : known.reduce((sum, one) => sum + one.parts * (one[each] as number), 0), without: more.filter((one) => one[each] === null).map(({ name }) => name) };
}

/** What a reel of this kind brings along after two years instead of one; null where the records do not reach that far. */
export function skipping(days: readonly PositionDue[], { costs, year, days_clock }: AdviceRecords): Skipping | null {
  const per_year = year.days;
  if (per_year === null || per_year <= 0 || year.reels < FEWEST_VISITS) return null;
  const told = days.flatMap(({ share_by, found }) => (share_by !== null && found.longest !== null && found.longest >= 2 * per_year ? [{ found, one: share_by(per_year), two: share_by(2 * per_year) }] : []));
  if (told.length === 0) return null;
  const more = told.map(({ found: { position, position_name: name }, one, two }): More => {
    const known = costs.find((cost) => cost.position === position);
    return { name, parts: two - one, cost: known?.parts_cost ?? null, minutes: known?.minutes ?? null };
  });
  const money = comesTo(more, "cost"), time = comesTo(more, "minutes"), left = days.length - told.length, total = (of: "one" | "two") => told.reduce((sum, one) => sum + one[of], 0);
  return {
    per_year, clock: days_clock, failed_after_one: total("one"), failed_after_two: total("two"), more_parts: money.sum, without_price: money.without, more_minutes: time.sum, without_minutes: time.without,
    note: left > 0 ? `${NOTE} ${counted(left, "part is", "parts are")} not counted: too few of them, or never seen after so many days.` : NOTE,
  };
}
