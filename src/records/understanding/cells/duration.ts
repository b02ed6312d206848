/** What a number without a unit in the column is: minutes, hours, or whichever fits (small ones hours, others minutes). */
export type TimeUnit = "minutes" | "hours" | "either";

export interface Duration {
  /** One for each part of a sum (`0,5+0,5` is two reels' time); minutes, each above 0. */
  readonly minutes: readonly number[];
  /** The cell or the size of its number says hours where the column says minutes, or the other way round. */
  readonly unit_guessed: boolean;
}

/** A job of under 6 minutes is not written down, so a smaller number is hours (common practice, no source). */
const FEWEST_MINUTES = 6;
/** Nobody spends more than 15 hours on one reel, so a larger number in a column of hours is minutes (common practice, no source). */
const MOST_HOURS = 15;

const HOURS_MINUTES = /^(\d{1,3})\s*h(?:rs?|ours?)?\.?\s*(\d{1,2})\s*(?:m|mins?|minutes)?\.?$/;
const CLOCK = /^(\d{1,3}):(\d\d)(?::\d\d)?$/;
const HOURS = /^(.+?)\s*(?:h|hrs?|hours?|std)\.?$/;
const MINUTES = /^(.+?)\s*(?:m|mins?|minutes|')\.?$/;
const FRACTION = /^(?:(\d{1,2})\s+)?(\d{1,2})\s*\/\s*(\d{1,2})$/;
const DECIMAL = /^(?:\d+(?:[.,]\d+)?|[.,]\d+)$/;
const SIGNS: Readonly<Record<string, string>> = { "½": " 1/2", "¼": " 1/4", "¾": " 3/4" };

function plain(text: string): string {
  return text.toLowerCase().replace(/[½¼¾]/g, (sign) => SIGNS[sign] ?? sign).replace(/^(?:~|ca\.?|about|approx\.?)\s*/, "").replace(/\s*(?:ea|each|approx|total)\.?$/, "").trim();
}

/** A number as decimals or a fraction; null when it is none. */
function amount(text: string): { value: number; fraction: boolean } | null {
  if (DECIMAL.test(text)) return { value: Number(text.replace(",", ".")), fraction: false };
  const fraction = FRACTION.exec(text);
  if (!fraction || Number(fraction[3]) === 0) return null;
  return { value: Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]), fraction: true };
}

function bare(value: number, fraction: boolean, unit: TimeUnit): { minutes: number; guessed: boolean } {
  if (unit === "hours") return value > MOST_HOURS ? { minutes: value, guessed: true } : { minutes: value * 60, guessed: false };
  const hours = fraction || value < FEWEST_MINUTES;
  return { minutes: hours ? value * 60 : value, guessed: hours && unit === "minutes" };
}

function one(text: string, unit: TimeUnit): { minutes: number; guessed: boolean } | null {
  const both = HOURS_MINUTES.exec(text) ?? CLOCK.exec(text);
  if (both) return Number(both[2]) < 60 ? { minutes: Number(both[1]) * 60 + Number(both[2]), guessed: unit === "minutes" } : null;
  const hours = HOURS.exec(text), in_hours = hours && amount(hours[1] ?? "");
  if (in_hours) return { minutes: in_hours.value * 60, guessed: unit === "minutes" };
  const minutes = MINUTES.exec(text), in_minutes = minutes && amount(minutes[1] ?? "");
  if (in_minutes) return { minutes: in_minutes.value, guessed: unit === "hours" };
  const number = amount(text);
  return number && bare(number.value, number.fraction, unit);
}

/**
 * Reads a time at the bench: `55`, `1h40`, `1:40`, `.75 ea`, `1/2 hr`, `2 1/4`, `1,2 h`, `0,5+0,5`.
 *
 * @param text not blank
 * @returns null when it is no time; an empty list for 0, which says that nobody wrote the time
 * @example
 * durationOf("1h40", "minutes")?.minutes // => [100]
 * durationOf("1.20", "hours")?.minutes // => [72]
 * durationOf("2 1/4", "either")?.minutes // => [135]
 */
export function durationOf(text: string, unit: TimeUnit): Duration | null {
  const minutes: number[] = [];
  let unit_guessed = false;
  for (const part of plain(text).split("+")) {
    const read = one(part.trim(), unit);
    if (!read) return null;
    if (read.guessed) unit_guessed = true;
    if (read.minutes > 0) minutes.push(Math.round(read.minutes * 1e6) / 1e6);
  }
  return { minutes, unit_guessed };
}
