import { ascending, sortedQuantile } from "../../stats/quantile.ts";
import { groupsOf } from "../grouped.ts";

/** Minutes under this look like hours where the job usually takes more than `USUAL`. */
const HOURS_BELOW = 6;
const USUAL = 15;
/** Minutes over this, and over so many times the usual, look as if waiting were in them. */
const WAITING_ABOVE = 600;
const WAITING_TIMES = 4;

export type Slip = "typed as hours" | "with waiting";

interface Timed {
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly labour_min: number | null;
}

/** What the minutes look like when they cannot be bench minutes, next to the median of the same job on the same kind of reel. */
export function slip(minutes: number, usual: number): Slip | null {
  if (minutes < HOURS_BELOW && usual > USUAL) return "typed as hours";
  return minutes > WAITING_ABOVE && minutes > WAITING_TIMES * usual ? "with waiting" : null;
}

/**
 * Sorts out typing slips: nothing is changed and nothing is lost, each row comes back with its reason or null.
 *
 * The limits are common practice, no source: under 6 minutes for a job that usually takes over 15 is a number of hours; over
 * ten hours and four times the usual has waiting in it. The median they are held against is hardly moved by the slips.
 */
export function withSlips<Row extends Timed>(rows: readonly Row[]): { row: Row; slip: Slip | null }[] {
  const slips = new Map<Row, Slip>();
  for (const group of groupsOf(rows, ({ job }) => job, ({ reel_kind }) => reel_kind)) {
    const minutes = group.flatMap(({ labour_min }) => labour_min ?? []), usual = minutes.length === 0 ? 0 : sortedQuantile(ascending(minutes), 0.5);
    for (const row of group) {
      const found = row.labour_min === null ? null : slip(row.labour_min, usual);
      if (found !== null) slips.set(row, found);
    }
  }
  return rows.map((row) => ({ row, slip: slips.get(row) ?? null }));
}
