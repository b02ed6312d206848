import { browserLocale, numberFormat, writtenBy } from "../way-of-writing.ts";

/** What stands where nothing is known. */
export const DASH = "–";

/** The way the shop chose to write, else the reader's own language, or British English where there is no browser. */
export function readerLocale(): string {
  return writtenBy() ?? browserLocale();
}

const known = (value: number | null | undefined): value is number => typeof value === "number" && Number.isFinite(value);

/**
 * A number with exactly `digits` decimals, grouped as the reader's language groups.
 *
 * @example
 * number(1234.5, 1, "en-GB"); // => "1,234.5"
 */
export function number(value: number | null | undefined, digits = 0, locale = readerLocale()): string {
  return known(value) ? numberFormat(locale, digits, digits).format(value) : DASH;
}

/**
 * A count with its word in the right number.
 *
 * @example
 * count(1, "row", "rows", "en-GB"); // => "1 row"
 */
export function count(value: number | null | undefined, one: string, many: string, locale = readerLocale()): string {
  return `${number(value, 0, locale)} ${value === 1 ? one : many}`;
}

/** Decimals of a percentage: one below one per cent, so that few does not read as none. */
const shareDigits = (share: number): number => (share > 0 && share < 0.0095 ? 1 : 0);

/**
 * A share between 0 and 1 in per cent.
 *
 * @example
 * percent(0.0353, "en-GB"); // => "4 %"
 */
export function percent(share: number | null | undefined, locale = readerLocale()): string {
  return known(share) ? `${number(share * 100, shareDigits(share), locale)} %` : DASH;
}

/** Below this many a percentage says more than the counts do, so the counts stand alone. */
export const FEWEST_FOR_PERCENT = 10;

/**
 * A share as its counts, with the percentage only from ten on.
 *
 * @example
 * share(12, 340, "en-GB"); // => "12 of 340 (4 %)"
 * share(2, 3, "en-GB"); // => "2 of 3"
 */
export function share(part: number | null | undefined, whole: number | null | undefined, locale = readerLocale()): string {
  if (!known(part) || !known(whole)) return DASH;
  const counts = `${number(part, 0, locale)} of ${number(whole, 0, locale)}`;
  return whole < FEWEST_FOR_PERCENT ? counts : `${counts} (${percent(part / whole, locale)})`;
}

/**
 * Two shares between 0 and 1 as a range in per cent.
 *
 * @example
 * percentRange(0.0202, 0.0607, "en-GB"); // => "2–6 %"
 */
export function percentRange(low: number | null | undefined, high: number | null | undefined, locale = readerLocale()): string {
  if (!known(low) || !known(high)) return DASH;
  return `${number(low * 100, shareDigits(low), locale)}–${number(high * 100, shareDigits(high), locale)} %`;
}

/**
 * Two numbers as a range.
 *
 * @example
 * range(3, 12.4, 0, "en-GB"); // => "3–12"
 */
export function range(low: number | null | undefined, high: number | null | undefined, digits = 0, locale = readerLocale()): string {
  return known(low) && known(high) ? `${number(low, digits, locale)}–${number(high, digits, locale)}` : DASH;
}

/**
 * Money with the shop's own word for its currency.
 *
 * @example
 * money(1840.5, "cu", 2, "en-GB"); // => "1,840.50 cu"
 */
export function money(value: number | null | undefined, currency: string, digits = 0, locale = readerLocale()): string {
  return known(value) ? `${number(value, digits, locale)}\u00a0${currency}`.trim() : DASH;
}

/**
 * Minutes as hours and minutes.
 *
 * @example
 * minutes(72, "en-GB"); // => "1 h 12"
 * minutes(45, "en-GB"); // => "45 min"
 */
export function minutes(value: number | null | undefined, locale = readerLocale()): string {
  if (!known(value)) return DASH;
  const whole = Math.round(value);
  if (whole < 60) return `${number(whole, 0, locale)}\u00a0min`;
  return `${number(Math.floor(whole / 60), 0, locale)}\u00a0h\u00a0${String(whole % 60).padStart(2, "0")}`;
}

/**
 * A day (`YYYY-MM-DD`, or the start of a longer ISO time) in the reader's way of writing dates.
 *
 * @example
 * date("2026-03-14", "en-GB"); // => "14 Mar 2026"
 */
export function date(iso: string | null | undefined, locale = readerLocale()): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso ?? "");
  if (!found) return DASH;
  const day = new Date(Date.UTC(Number(found[1]), Number(found[2]) - 1, Number(found[3])));
  return new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }).format(day);
}

/**
 * A day with its day of the week, as it is said at the counter.
 *
 * @example
 * longDay("2026-12-10", "en-GB"); // => "Thursday 10 December"
 */
export function longDay(iso: string | null, locale = readerLocale()): string {
  if (iso === null) return DASH;
  return new Intl.DateTimeFormat(locale, { weekday: "long", day: "numeric", month: "long", timeZone: "UTC" }).format(new Date(`${iso}T00:00:00Z`));
}

/**
 * The day of a moment (as `toISOString` writes it) on the calendar where the reader is, which at some hours is not Greenwich's.
 *
 * @param zone name of another place than the reader's own
 * @example
 * momentDay("2026-03-13T21:30:00.000Z", "en-GB", "Pacific/Auckland"); // => "14 Mar 2026"
 */
export function momentDay(moment: string | null | undefined, locale = readerLocale(), zone?: string): string {
  const at = Date.parse(moment ?? "");
  if (Number.isNaN(at)) return DASH;
  return new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", year: "numeric", ...(zone !== undefined && { timeZone: zone }) }).format(at);
}

/** Bytes as kB or MB. */
export function bytes(value: number | null | undefined, locale = readerLocale()): string {
  if (!known(value)) return DASH;
  return value < 1e6 ? `${number(Math.max(1, Math.round(value / 1000)), 0, locale)} kB` : `${number(value / 1e6, 1, locale)} MB`;
}
