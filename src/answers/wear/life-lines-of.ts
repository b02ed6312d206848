import { groupLines } from "../../stats/life-lines.ts";
import type { LifeLine } from "../../stats/life-lines.ts";
import type { WearLine } from "./wear-records.ts";

/** Parts that say something of the life. */
export const telling = (lines: readonly WearLine[]): readonly WearLine[] => lines.filter(({ left_out }) => left_out === null);

/** Lines for a fit, those alike put together. */
export function lifeLinesOf(lines: readonly WearLine[], x: (line: WearLine) => readonly number[] = () => []): LifeLine[] {
  return groupLines(telling(lines).map((line) => ({ low: line.low, high: line.high ?? Infinity, count: line.parts, x: x(line) })));
}

export const partsOf = (lines: readonly WearLine[]): number => lines.reduce((sum, { parts }) => sum + parts, 0);
export const failedOf = (lines: readonly WearLine[]): number => partsOf(lines.filter(({ high }) => high !== null));
/** Parts seen good at some exposure, whether they failed later or not. */
export const goodOf = (lines: readonly WearLine[]): number => partsOf(lines.filter(({ low }) => low > 0));
/** Longest exposure at which anything was seen; null without any. */
export function longestOf(lines: readonly WearLine[]): number | null {
  let longest = 0;
  for (const { low, high } of telling(lines)) longest = Math.max(longest, high ?? low);
  return longest > 0 ? longest : null;
}
