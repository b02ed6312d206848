import { SURE } from "./lot-scan.ts";
import type { LotScan } from "./lot-scan.ts";
import { byModel, expectedShare, failedIn, fittedIn } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";
import { firstDay, lastDay } from "./lot-window.ts";
import type { Months } from "./lot-window.ts";
import type { LotMonths, LotRow } from "./lot.ts";

/** A batch is called bad from so many fittings in its months, when it fails so many times as often as is to be expected. */
const INSIDE = 8, FAR = 1.25;

export const isSuspected = ({ verdict }: Pick<LotRow, "verdict">): boolean => verdict === "bad batch" || verdict === "perhaps, not yet sure";
const monthsOf = (months: Months | null): LotMonths | null => (months === null ? null : { earliest: firstDay(months.from), latest: firstDay(months.to) });

/** What is known of a lot before it is asked who fitted it and what still carries it. */
export type JudgedLot = Omit<LotRow, "reasons" | "carriers" | "lots_written" | "technicians">;
/** Looked at again soon: fitted in the window, and outside it where a window was looked for. */
export interface Sides { readonly inside: readonly RefittedRow[]; readonly outside: readonly RefittedRow[] }

export function sidesOf(all: readonly RefittedRow[], { scan, window }: LotScan): Sides {
  const within = ({ month }: RefittedRow) => month >= window.from && month <= window.to, rows = all.filter(({ soon }) => soon);
  return { inside: rows.filter(within), outside: scan?.window ? rows.filter((row) => !within(row)) : [] };
}

/** @param q_value share of false alarms when all lots are called bad that look as bad as this one */
export function judgedLot({ size_or_part, supplier }: Pick<LotRow, "size_or_part" | "supplier">, { inside, outside }: Sides, { scan, window }: LotScan, q_value: number | null): JudgedLot {
  const fitted = fittedIn(inside), failed_early = failedIn(inside), share = fitted === 0 ? null : failed_early / fitted, expected_share = expectedShare(inside, outside);
  const far = share !== null && expected_share !== null && share > FAR * expected_share && fitted >= INSIDE;
  const verdict = scan === null ? "too few" : !far || scan.p === null || scan.p >= SURE ? "no different" : q_value !== null && q_value < SURE ? "bad batch" : "perhaps, not yet sure";
  const ends = isSuspected({ verdict }) ? window : { began: null, ended: null };
  return {
    size_or_part, supplier, from: firstDay(window.from), to: lastDay(window.to), began: monthsOf(ends.began), ended: monthsOf(ends.ended),
    fitted, failed_early, share, expected_share, p_value: scan?.p ?? null, q_value, verdict, models: byModel(inside, outside),
  };
}

const ORDER = ["bad batch", "perhaps, not yet sure", "no different", "too few"] as const;
/** Worst first. */
export const byWorst = (a: JudgedLot, b: JudgedLot): number => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict) || (a.p_value ?? 1) - (b.p_value ?? 1) || b.fitted - a.fitted;
