const DAY_MS = 86_400_000, MINUTE_S = 60, HOUR_S = 3600;
/** Decimal digits that a number of 64 bits carries; the two behind them only say how 4.6 is stored. */
const DIGITS = 15;

const two = (number: number) => String(number).padStart(2, "0");

/** Moves the point of a number written as `1.5e-7`. */
function withoutExponent(text: string): string {
  const [digits = "", exponent = "0"] = text.split("e"), sign = digits.startsWith("-") ? "-" : "";
  const [whole = "", part = ""] = digits.replace("-", "").split("."), shift = Number(exponent);
  if (shift >= 0) return sign + whole + part.padEnd(shift, "0");
  return `${sign}0.${"0".repeat(-shift - 1)}${whole}${part}`;
}

/**
 * A number with a point and without grouping or exponent; not a number gives an empty text.
 *
 * @example
 * numberText(4.6000000000000005) // => "4.6"
 */
export function numberText(value: number | bigint): string {
  if (typeof value === "bigint") return String(value);
  if (!Number.isFinite(value)) return "";
  const whole = String(value), is_short = whole.length <= DIGITS || Number.isSafeInteger(value);
  const text = is_short ? whole : String(Number(value.toPrecision(DIGITS)));
  return text.includes("e") ? withoutExponent(text) : text;
}

export const yesNoText = (value: boolean): string => (value ? "yes" : "no");

/**
 * A day, with the time of day when it is not midnight, whole minutes.
 *
 * @param ms milliseconds since 1970-01-01T00:00, without any time zone
 * @returns `2025-03-04` or `2025-03-04T19:14`; empty for a moment outside the years 0 to 9999
 */
export function momentText(ms: number): string {
  const moment = new Date(ms);
  if (Number.isNaN(moment.getTime()) || moment.getUTCFullYear() < 0 || moment.getUTCFullYear() > 9999) return "";
  return moment.toISOString().slice(0, ms % DAY_MS === 0 ? 10 : 16);
}

/**
 * A length of time, or a time of day, in hours and minutes.
 *
 * @example
 * durationText(6000) // => "1:40"
 * durationText(95_430) // => "26:30:30"
 */
export function durationText(seconds: number): string {
  const all = Math.round(Math.abs(seconds)), hours = Math.floor(all / HOUR_S), rest = all % MINUTE_S;
  const text = `${hours}:${two(Math.floor((all % HOUR_S) / MINUTE_S))}${rest === 0 ? "" : `:${two(rest)}`}`;
  return seconds < 0 && all > 0 ? `-${text}` : text;
}
