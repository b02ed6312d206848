import type { Engine } from "../../db/engine.ts";
import type { RecordsFilter } from "../filter.ts";
import minutes from "./minutes.sql?raw";

/** Bench minutes of single jobs of one kind on one kind of reel, shortest first. */
export interface MinutesTicks {
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly ticks: readonly number[];
}

/** Strokes drawn for one kind of job; more would only blacken the strip. */
export const MOST_TICKS = 120;

/**
 * An even sample of sorted values, its ends among them; all of them while there are no more than `most`.
 *
 * @throws {RangeError} when `most` is under two
 * @example
 * evenSample([1, 2, 3, 4, 5], 3); // => [1, 3, 5]
 */
export function evenSample(sorted: readonly number[], most: number): readonly number[] {
  if (!(most >= 2)) throw new RangeError(`evenSample: most needs to be two or more, got ${most}`);
  if (sorted.length <= most) return sorted;
  return Array.from({ length: most }, (_, at) => sorted[Math.round((at * (sorted.length - 1)) / (most - 1))] ?? NaN);
}

/** Single jobs to draw, by job and kind of reel, without the tickets whose minutes were set aside. */
export async function minutesTicks(
  engine: Engine, filter: RecordsFilter, set_aside: ReadonlySet<string>, signal?: AbortSignal,
): Promise<readonly MinutesTicks[]> {
  const { from, to, ...rest } = filter;
  const rows = await engine.columns(minutes, { ...rest, from_date: from, to_date: to }, signal);
  const groups = new Map<string, { job: string | null; reel_kind: string | null; all: number[] }>();
  const tickets = rows["ticket_no"] ?? [];
  tickets.forEach((ticket, at) => {
    const labour_min = rows["labour_min"]?.[at];
    if (typeof labour_min !== "number" || set_aside.has(String(ticket))) return;
    const job = rows["job"]?.[at] as string | null, reel_kind = rows["reel_kind"]?.[at] as string | null;
    const key = JSON.stringify([job, reel_kind]);
    const group = groups.get(key) ?? { job, reel_kind, all: [] };
    group.all.push(labour_min);
    groups.set(key, group);
  });
  return [...groups.values()].map(({ job, reel_kind, all }) =>
    ({ job, reel_kind, ticks: evenSample(all.sort((a, b) => a - b), MOST_TICKS) }));
}
