import { grouped } from "../grouped.ts";
import type { AdviceRecords } from "./advice-records.ts";
import { placeOf, turns } from "./all-wear.ts";
import type { WorkMeans } from "../worker-work.ts";
import { positionDue } from "./position-due.ts";
import type { Clock, Limits } from "./wear.ts";

/** How much a reel has been fished since its parts were new or last looked after; null where nobody knows. */
export interface Exposures { readonly days: number | null; readonly months: number | null }

/** Share of such parts failed by that exposure; empty where the records do not reach so far or cannot tell. */
export interface FailedByNow {
  readonly position: string;
  readonly position_name: string;
  readonly clocks: readonly { readonly clock: Clock; readonly share: Limits; readonly n: number; readonly failed: number }[];
}

/**
 * For every position the share that has failed by the exposure told, from records already counted. Plain rows in and out, so it may
 * run in a worker.
 *
 * @throws the signal's reason when called off
 */
export async function failedByNow({ records, exposures }: { readonly records: AdviceRecords; readonly exposures: Exposures }, means: WorkMeans = {}): Promise<readonly FailedByNow[]> {
  const { question, days_clock, places } = records, turn = turns(means, "Working out what has worn");
  const ways = [{ clock: days_clock, lines: records.by_days, at: exposures.days }, { clock: "months" as Clock, lines: records.by_months, at: exposures.months }];
  const found = new Map<string, FailedByNow["clocks"][number][]>();
  for (const [done, { clock, lines, at }] of ways.entries()) {
    await turn(done, ways.length);
    if (at === null || at <= 0) continue;
    for (const [position, some] of grouped(lines, (line) => line.position)) {
      const { found: due, failed_by } = positionDue(some, { question, clock, place: placeOf(places, position) });
      if (failed_by === null || due.status === "no wear" || due.longest === null || at > due.longest) continue;
      const list = found.get(position) ?? found.set(position, []).get(position);
      list?.push({ clock, share: failed_by(at), n: due.n, failed: due.failed });
    }
  }
  return [...found].map(([position, clocks]) => ({ position, position_name: placeOf(places, position).name, clocks }));
}
