import { compareRates } from "../../stats/compare-rates.ts";
import { dayAfter, daysFrom } from "../days.ts";

const YEAR = 365;
/** A change of use is believed when chance alone would make it once in a hundred lines, and it is half as much again. */
const CHANGE_P = 0.01;
const CHANGE_FOLD = 1.5;

/** Days of records from which use is taken: two whole years, else one, else all; whole years, so that no season counts twice. */
export interface UseWindow {
  readonly from: string;
  readonly to: string;
  readonly days: number;
  /** First day of the last year, where two years are looked at, else the same as `from`. */
  readonly recent_from: string;
}

/** @param first first day of the records, @param to last day that counts */
export function useWindow(first: string, to: string): UseWindow {
  const all = daysFrom(first, to) + 1;
  const days = all >= 2 * YEAR ? 2 * YEAR : all >= YEAR ? YEAR : all;
  const from = dayAfter(to, 1 - days);
  return { from, to, days, recent_from: days === 2 * YEAR ? dayAfter(to, 1 - YEAR) : from };
}

/** Pieces used in so many days; `changed` when the last year was so different that only it counts. */
export interface Use {
  readonly pieces: number;
  readonly days: number;
  readonly changed: { readonly now: number; readonly before: number } | null;
}

/** Use of one group: of the whole window, or of its last year when that differs beyond chance. */
export function useOf(pieces: number, recent: number, window: UseWindow): Use {
  const days = daysFrom(window.recent_from, window.to) + 1, earlier = window.days - days, before = pieces - recent;
  const same = { pieces, days: window.days, changed: null };
  if (earlier <= 0 || pieces === 0) return same;
  const ratio = (recent * earlier) / (before * days), fold = Math.max(ratio, 1 / ratio);
  if (fold < CHANGE_FOLD) return same;
  const { pMid } = compareRates({ events: recent, exposure: days }, { events: before, exposure: earlier });
  return pMid < CHANGE_P ? { pieces: recent, days, changed: { now: recent, before } } : same;
}
