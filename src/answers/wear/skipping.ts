import type { Skipping } from "./advice.ts";
import type { AdviceRecords } from "./advice-records.ts";
import type { PositionDue } from "./position-due.ts";

/** Fewest visits for a usual year. */
const FEWEST_VISITS = 10;

const NOTE = "Counted at the visit: a reel that comes after two years has more failed parts at once. Whether servicing makes parts last longer, these records do not show.";

/** What a reel of this kind brings along after two years instead of one; null where the records do not reach that far. */
export function skipping(days: readonly PositionDue[], { costs, year, days_clock }: AdviceRecords): Skipping | null {
  const per_year = year.days;
  if (per_year === null || per_year <= 0 || year.reels < FEWEST_VISITS) return null;
  const told = days.filter(({ failed_by, found: { longest } }) => failed_by !== null && longest !== null && longest >= 2 * per_year);
  if (told.length === 0) return null;
  let one = 0, two = 0, parts: number | null = 0, minutes: number | null = 0;
  for (const { failed_by, found } of told) {
    const first = failed_by?.(per_year) ?? 0, second = failed_by?.(2 * per_year) ?? 0, cost = costs.find(({ position }) => position === found.position);
    one += first;
    two += second;
    parts = parts === null || !cost || cost.parts_cost === null ? null : parts + (second - first) * cost.parts_cost;
    minutes = minutes === null || !cost || cost.minutes === null ? null : minutes + (second - first) * cost.minutes;
  }
  const left = days.length - told.length;
  return { per_year, clock: days_clock, failed_after_one: one, failed_after_two: two, more_parts: parts, more_minutes: minutes, note: left > 0 ? `${NOTE} ${left} positions are not counted: too few of them, or never seen after so many days.` : NOTE };
}
