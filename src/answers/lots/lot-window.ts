import type { Scan } from "../../stats/window-scan.ts";
import { windowEnds } from "../../stats/window-ends.ts";
import { dayAfter } from "../days.ts";
import { likeOf, placeOf } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";

/** One row of `names-written.sql`. */
export type NameRow = { readonly size_or_part: string; readonly supplier: string | null; readonly month: number; readonly name: string; readonly count: number };

/** Months counted from the year 0. */
export interface Months { readonly from: number; readonly to: number }
export interface LotWindow extends Months {
  /** Months in which each end plausibly lies; null where only the worst months are known. */
  readonly began: Months | null;
  readonly ended: Months | null;
}

export const firstDay = (month: number): string => `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, "0")}-01`;
export const lastDay = (month: number): string => dayAfter(firstDay(month + 1), -1);

/** Names as numbers, equal names alike. */
export function numbered(names: readonly string[]): number[] {
  const known = new Map([...new Set(names)].map((name, i) => [name, i]));
  return names.map((name) => known.get(name) ?? 0);
}

/** The worst months as the scan has them. */
export function worstMonths(scan: Scan | null, start: number, end: number): LotWindow {
  const { first, last } = scan?.window ?? { first: 0, last: end - start };
  return { from: start + first, to: start + last, began: null, ended: null };
}

/**
 * The months of a batch that is known to be bad, from all looks at its fittings, however late, and from the lots written
 * beside them.
 *
 * @param rows of one size (or part) and supplier
 */
export function batchMonths(rows: readonly RefittedRow[], names: readonly NameRow[], longest: number): LotWindow | null {
  const start = Math.min(...[...rows, ...names].map(({ month }) => month)), like = numbered(rows.map(likeOf)), group = numbered(rows.map(placeOf));
  const looks = rows.map(({ month, failed, fitted }, i) => ({ stretch: month - start, like: like[i] ?? 0, group: group[i] ?? 0, failed, count: fitted }));
  const ends = windowEnds(looks, names.map(({ month, name, count }) => ({ stretch: month - start, name, count })), longest);
  if (ends === null) return null;
  const { first, last } = ends;
  return {
    from: start + first.middle, to: start + last.middle,
    began: { from: start + first.low, to: start + first.high }, ended: { from: start + last.low, to: start + last.high },
  };
}
