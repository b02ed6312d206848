import { number } from "../wording.ts";
import { grouped } from "../grouped.ts";
import { takingTurns } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import { partsOf } from "./life-lines-of.ts";
import { lifeRow } from "./life-row.ts";
import type { PlaceName, WearRecords } from "./wear-records.ts";
import type { Wear, WearRow } from "./wear.ts";
import { CLOCK_WORDS, counted } from "./wear-words.ts";

/** Family of what is not a part and has no life. */
const USED_UP = "lubricant";

/** Gives others a turn and tells how far one step is; rejects when called off. */
export function turns(means: WorkMeans, step: string): (done: number, total: number) => Promise<void> {
  const turn = takingTurns(means);
  return (done, total) => turn(step, done, total);
}

export const placeOf = (places: readonly PlaceName[], position: string): PlaceName =>
  places.find((one) => one.position === position) ?? { position, name: position, group_code: null, group_name: null, family: null };

/** Soonest B10 first, then those whose B10 lies over the records, then the rest by failures; what does not wear with the clock comes last. */
function inOrder(a: WearRow, b: WearRow): number {
  const rank = (row: WearRow) => (row.wears === "no" || row.wears === "not plain" ? 3e9 : row.b10.value ?? (row.b10.beyond ? 1e9 : 2e9));
  return rank(a) - rank(b) || b.failed - a.failed || (a.position < b.position ? -1 : 1);
}

function remarksOf({ filter, visits, linked_visits, contradicting_months }: WearRecords, mates: number, all: number): string[] {
  return [
    visits > linked_visits ? `${counted(visits - linked_visits, "visit")} of ${visits} have no serial or tag: their parts cannot be followed from visit to visit.` : "",
    contradicting_months > 0 ? `On ${counted(contradicting_months, "visit")} the months written contradict the visit before; where far fewer are written, a service elsewhere is assumed.` : "",
    mates > 0 ? `${number(mates)} of ${number(all)} parts sit on reels that came together with others; each counts as if it had come alone.` : "",
    filter.clock === "salt_days" ? "Reels fished in fresh water only are not counted here; look at them by months." : "",
    filter.first_sights === "planned" ? "Parts count only where the reel came for planned work when they were first looked at; those already there when it first came count from the service before." : "",
    `How much a reel was fished is what the customers say: ${CLOCK_WORDS[filter.clock]} are a guess, and guesses make every curve look flatter than it is.`,
  ].filter((remark) => remark !== "");
}

/**
 * How long every position lasts, from records already counted. Plain rows in and out, so it may run in a worker.
 *
 * @throws the signal's reason when called off
 */
export async function wearOf(records: WearRecords, means: WorkMeans = {}): Promise<Wear> {
  const used_up = new Set(records.places.filter(({ family }) => family === USED_UP).map(({ position }) => position));
  const by = [...grouped(records.lines, ({ position }) => position)].filter(([position]) => !used_up.has(position)), turn = turns(means, "Fitting how parts wear"), rows: WearRow[] = [];
  for (const [done, [position, lines]] of by.entries()) {
    rows.push(lifeRow(lines, { place: placeOf(records.places, position), clock: records.filter.clock }).row);
    await turn(done + 1, by.length);
  }
  const batch_mates = records.lines.reduce((sum, { mates }) => sum + mates, 0), { visits, linked_visits, contradicting_months } = records;
  return {
    rows: rows.sort(inOrder), clock: records.filter.clock, linked_share: visits === 0 ? null : linked_visits / visits, batch_mates, contradicting_months,
    remarks: remarksOf(records, batch_mates, partsOf(records.lines)),
  };
}
