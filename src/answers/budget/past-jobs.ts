import { daysFrom } from "../days.ts";
import { grouped } from "../grouped.ts";

/** Pieces of one interchange group that one job used or wanted; in the order of the days. */
export type JobPart = { readonly ticket_no: string; readonly day: string; readonly interchange: string; readonly pieces: number };

/** A job of the past: the day it came in (days since 1970) and what it needed, by the index of the group. */
export interface PastJob {
  readonly day: number;
  readonly parts: readonly (readonly [group: number, pieces: number])[];
}

const EPOCH = "1970-01-01";
/** Days since 1970, so that days can be counted with. */
export const dayNumber = (day: string): number => daysFrom(EPOCH, day);

/** Jobs as they came in, with those of their parts that are among `names`; jobs that need none of these are left out. */
export function pastJobs(parts: readonly JobPart[], names: readonly string[]): PastJob[] {
  const at = new Map(names.map((name, index) => [name, index]));
  return [...grouped(parts, ({ ticket_no, day }) => `${day} ${ticket_no}`).values()].flatMap((lines) => {
    const [first] = lines, own = lines.flatMap(({ interchange, pieces }) => {
      const group = at.get(interchange);
      return group === undefined || pieces <= 0 ? [] : [[group, pieces] as const];
    });
    return first === undefined || own.length === 0 ? [] : [{ day: dayNumber(first.day), parts: own }];
  });
}
