/** Locale by which numbers and dates are written now; null where nobody reads along, as in the headless report. */
let locale_now: () => string | null = () => null;

/**
 * Says by which locale all sentences, tables and charts write numbers and dates from now on.
 *
 * @param locale asked each time something is written, so that a change shows at once; null for the neutral way
 */
export function writeBy(locale: () => string | null): void {
  locale_now = locale;
}

/** The locale by which numbers and dates are written; null for the neutral way (a thin space between thousands, a point). */
export const writtenBy = (): string | null => locale_now();

/** Name of the ledger's setting that keeps the locale the shop writes by. */
export const WRITING_SETTING = "way of writing";

/** The locale as it was kept; null is the browser's, which is also what counts where the one kept is none. */
export function readWriting(kept: string | null): { locale: string | null; faults: readonly string[] } {
  if (kept === null || kept === "") return { locale: null, faults: [] };
  try {
    return { locale: Intl.getCanonicalLocales(kept)[0] ?? null, faults: [] };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { locale: null, faults: [`How dates and numbers are written was kept as “${kept}”, which no browser knows; your browser's own way is used.`] };
  }
}

/** The language the browser asks for; British English where there is no browser. Its date fields may follow another, that of its windows. */
export const browserLocale = (): string => (typeof navigator === "undefined" || !navigator.language ? "en-GB" : navigator.language);

const kept = new Map<string, Intl.NumberFormat>();

/** How a locale writes a number with at least and at most so many decimals; made once, as making one is slow. What rounds to nought has no minus. */
export function numberFormat(locale: string, least: number, most: number): Intl.NumberFormat {
  const key = `${locale} ${least} ${most}`;
  const made = kept.get(key) ?? new Intl.NumberFormat(locale, { minimumFractionDigits: least, maximumFractionDigits: most, signDisplay: "negative" });
  kept.set(key, made);
  return made;
}

/** A number in the way of writing, with at least and at most so many decimals. */
export function writtenNumber(value: number, least: number, most: number): string {
  const locale = writtenBy();
  if (locale !== null) return numberFormat(locale, least, most).format(value);
  const [whole = "", part = ""] = value.toFixed(most).split(".");
  const tail = part.slice(0, least) + part.slice(least).replace(/0+$/, "");
  return whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") + (tail ? `.${tail}` : "");
}

const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

/** A day (`YYYY-MM-DD`) in the way of writing, the month as a whole word. */
export function writtenDay(day: string): string {
  const locale = writtenBy(), [year, month, date] = day.split("-").map(Number);
  if (locale === null) return `${Number(date)} ${MONTHS[Number(month) - 1] ?? ""} ${day.slice(0, 4)}`;
  return new Intl.DateTimeFormat(locale, { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" }).format(Date.UTC(Number(year), Number(month) - 1, Number(date)));
}
