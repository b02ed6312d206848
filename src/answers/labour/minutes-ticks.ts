import { groupsOf } from "../grouped.ts";
import type { TimedWork } from "./work.ts";

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

/** Single jobs to draw, by job and kind of reel. */
export function minutesTicks(work: readonly TimedWork[]): readonly MinutesTicks[] {
  return groupsOf(work, ({ job }) => job, ({ reel_kind }) => reel_kind).flatMap((some) => {
    const [first] = some, all = Float64Array.from(some, ({ labour_min }) => labour_min).sort();
    return first ? [{ job: first.job, reel_kind: first.reel_kind, ticks: evenSample(Array.from(all), MOST_TICKS) }] : [];
  });
}
