import type { Column } from "../columns.ts";
import { Wrong, quoted } from "./wrong.ts";

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;
/** Groups of three with a blank, a thin blank or an apostrophe between them; then a point or a comma. */
const SPACED = /^([+-]?\d{1,3}(?:[ \u00A0\u2009\u202F'’]\d{3})+)(?:[.,](\d+))?$/;
const COMMA_GROUPS = /^[+-]?\d{1,3}(?:,\d{3})+\.\d+$|^[+-]?\d{1,3}(?:,\d{3}){2,}$/;
const POINT_GROUPS = /^[+-]?\d{1,3}(?:\.\d{3})+,\d+$|^[+-]?\d{1,3}(?:\.\d{3}){2,}$/;
/** One comma is a decimal sign unless three digits follow it; a group of thousands never begins with 0. */
const COMMA_DECIMAL = /^[+-]?(?:\d*,(?:\d{1,2}|\d{4,})|0,\d+)$/;
const ONE_COMMA = /^[+-]?\d{1,3},\d{3}$/;
const CODES = "EUR|GBP|USD|AUD|NZD|CAD|JPY|CHF|SEK|NOK|DKK|ZAR|PLN|kr\\.?";
const CURRENCY = new RegExp(`^(?:\\p{Sc}|${CODES})\\s*|\\s*(?:\\p{Sc}|${CODES})$`, "giu");

function parsed(text: string): number | Wrong {
  if (PLAIN.test(text)) return Number(text);
  const spaced = SPACED.exec(text);
  if (spaced) return Number(`${(spaced[1] ?? "").replace(/[^\d+-]/g, "")}.${spaced[2] ?? "0"}`);
  if (COMMA_GROUPS.test(text)) return Number(text.replaceAll(",", ""));
  if (POINT_GROUPS.test(text)) return Number(text.replaceAll(".", "").replace(",", "."));
  if (COMMA_DECIMAL.test(text)) return Number(text.replace(",", "."));
  if (ONE_COMMA.test(text)) {
    const thousands = text.replace(",", ""), decimal = text.replace(",", ".");
    return new Wrong(`${quoted(text)} could be ${thousands} or ${decimal}; write it with a point and without thousands signs`);
  }
  return new Wrong(`${quoted(text)} is not a number; write figures alone, such as 12.5`);
}

function bounded(value: number, { min, max, above }: Column): number | Wrong {
  if (!Number.isFinite(value)) return new Wrong(`${value} is not a number that can be kept`);
  if (above !== undefined && value <= above) return new Wrong(`${value} must be more than ${above}`);
  if (min !== undefined && value < min) return new Wrong(`${value} is less than ${min}`);
  if (max !== undefined && value > max) return new Wrong(`${value} is more than ${max}`);
  return value === 0 ? 0 : value;
}

/**
 * Reads a number: with a decimal point, or a decimal comma and signs for thousands where they leave one reading.
 *
 * @example
 * numberCell("1 240,50", { name: "x", kind: "number", meaning: "" }) // => 1240.5
 */
export function numberCell(text: string, column: Column): number | Wrong {
  const value = parsed(text);
  return typeof value === "number" ? bounded(value, column) : value;
}

/** Reads a number without a fraction. */
export function wholeCell(text: string, column: Column): number | Wrong {
  const value = numberCell(text, column);
  if (typeof value === "number" && !Number.isInteger(value)) return new Wrong(`${value} is not a whole number`);
  return value;
}

/** Reads an amount; one currency sign or code in front or behind is left out, nothing is converted. */
export function moneyCell(text: string, column: Column): number | Wrong {
  const bare = text.replace(CURRENCY, "").trim();
  const value = numberCell(bare, column);
  return value instanceof Wrong && bare !== text && value.reason.includes("is not a number;") ? new Wrong(`${quoted(text)} is not an amount; write figures alone, such as 12.50`) : value;
}
