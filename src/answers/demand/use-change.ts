import type { Counts, UseBlocks } from "./demand-blocks.ts";
import { between } from "./four-weeks.ts";

/** Use that became another: from block `before` on (older) it was of the old kind. Pieces a usual day. */
export interface UseChange {
  readonly before: number;
  readonly was: number;
  readonly is: number;
}

/** The new kind must have lasted eight weeks, the old one half a year. */
const FEWEST_AFTER = 2, FEWEST_BEFORE = 6;
/** Log-likelihood gained by telling two kinds of use apart; chance alone gains 7 about once in 300 lines. */
const ENOUGH_GAIN = 7;
const ENOUGH_FOLD = 1.6;
/** Four weeks differ more than chance and clumps alone make them. */
const UNEVEN = 1.3;

const surprise = (pieces: number, days: number): number => (pieces === 0 ? 0 : pieces * Math.log(pieces / days));

/** Pieces a day of the blocks `from` up to `end`, the fullest block left out: one rush is no new kind of use. */
function withoutRush(use: Counts, days: Counts, from: number, end: number): number {
  let fullest = from;
  for (let block = from; block < end; block += 1) if ((use[block] ?? 0) > (use[fullest] ?? 0)) fullest = block;
  return (between(use, from, end) - (use[fullest] ?? 0)) / (between(days, from, end) - (days[fullest] ?? 0));
}

interface Scan { readonly use: Counts; readonly days: Counts; readonly from: number; readonly clump: number }

function best({ use, days, from, clump }: Scan, end: number): UseChange | null {
  const all = between(use, from, end), length = between(days, from, end);
  let found: UseChange | null = null, most = ENOUGH_GAIN, pieces = 0, lasted = 0;
  for (let before = from + 1; before <= end - FEWEST_BEFORE; before += 1) {
    pieces += use[before - 1] ?? 0;
    lasted += days[before - 1] ?? 0;
    if (before - from < FEWEST_AFTER) continue;
    const gain = (surprise(pieces, lasted) + surprise(all - pieces, length - lasted) - surprise(all, length)) / (clump * UNEVEN);
    const fold = ((pieces + 0.5) * (length - lasted)) / (lasted * (all - pieces + 0.5));
    if (gain <= most || Math.max(fold, 1 / fold) < ENOUGH_FOLD) continue;
    const is = pieces / lasted, was = (all - pieces) / (length - lasted);
    if (fold > 1 ? withoutRush(use, days, from, before) < ENOUGH_FOLD * was : withoutRush(use, days, before, end) < ENOUGH_FOLD * is) continue;
    most = gain;
    found = { before, was, is };
  }
  return found;
}

/**
 * Since when a group's use is of another kind: a new habit, a model that went, a part that took over; null when it is not.
 *
 * Scans for the step that tells two Poisson rates best apart (generalised likelihood ratio, as in Hawkins 1977, JASA
 * 72:180-186), each block weighed by its season, pieces that go together counted as one. What is newer than the step
 * is looked at again, so that the newest of several counts.
 *
 * @param usual_days usual days of each block, those before `origin` not looked at
 * @param clump pieces that go at once
 */
export function useChange(use: UseBlocks, usual_days: Counts, origin: number, clump: number): UseChange | null {
  const scan = { use: use.pieces, days: usual_days, from: origin, clump };
  let found = best(scan, usual_days.length);
  for (let newer = found; newer !== null; newer = best(scan, newer.before)) found = newer;
  return found;
}
