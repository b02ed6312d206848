import { DASH, FEWEST_FOR_PERCENT, number, percent } from "./format.ts";

/**
 * A plausible range of a share in words.
 *
 * @example
 * likely(0.042, 0.09, "en-GB"); // => "between 4 and 9\u00a0%"
 * likely(0, 0.03, "en-GB"); // => "under 3\u00a0%"
 */
export function likely(low: number | null, high: number | null, locale?: string): string {
  if (low === null || high === null) return DASH;
  const from = percent(low, locale), to = percent(high, locale);
  const words = from === percent(0, locale) ? `under ${to}` : high >= 1 ? `over ${from}` : from === to ? `about ${to}`
    : `between ${from.replace(/\s*%$/, "")} and ${to}`;
  return words.replaceAll(" %", "\u00a0%");
}

/** A share by its counts, with the range in which it plausibly lies. */
export interface CountedShare {
  readonly failed: number;
  readonly inspected: number;
  readonly rate_low: number | null;
  readonly rate_high: number | null;
}

/**
 * Counts in words, with the plausible range from ten on.
 *
 * @example
 * countsInWords({ failed: 12, inspected: 340, rate_low: 0.02, rate_high: 0.06 }, "en-GB"); // => "12 of 340, likely between 2 and 6\u00a0%"
 * countsInWords({ failed: 2, inspected: 3, rate_low: 0.2, rate_high: 0.9 }, "en-GB"); // => "2 of 3, too few for a share"
 */
export function countsInWords(row: CountedShare, locale?: string): string {
  const counts = `${number(row.failed, 0, locale)} of ${number(row.inspected, 0, locale)}`;
  if (row.inspected < FEWEST_FOR_PERCENT || row.rate_low === null || row.rate_high === null) return `${counts}, too few for a share`;
  return `${counts}, likely ${likely(row.rate_low, row.rate_high, locale)}`;
}
