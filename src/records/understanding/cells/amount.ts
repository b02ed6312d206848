import { numberCell } from "../../checking/number-cell.ts";
import { Wrong } from "../../checking/wrong.ts";

export interface Amount {
  readonly value: number;
  /** As written, signs as their code (`€` is `EUR`); null when the cell names none. */
  readonly currency: string | null;
  /** The amount is for a pack, not for a piece. */
  readonly per_pack: boolean;
}

const SIGNS: Readonly<Record<string, string>> = { "£": "GBP", "€": "EUR", "$": "$", "¥": "JPY" };
const CODE = /(?:^|[\s\d])([A-Z]{3}|cu|kr)\.?(?=$|[\s\d/])/;
const SIGN = /[£€$¥]/;
const PER_PACK = /\s*\/\s*(?:pk|pack|pkt|box|bag)\.?$/i, PER_PIECE = /\s*\/\s*(?:pc|pcs|ea|each|piece)\.?$|\s+(?:ea|each)\.?$/i;
const COMMA = /^-?\d{1,3}(?:\.\d{3})*(?:,\d+)?$|^-?\d*,\d+$/, POINT = /^-?\d{1,3}(?:,\d{3})*(?:\.\d+)?$|^-?\d*\.\d+$/;
const COLUMN = { name: "amount", kind: "number", meaning: "" } as const;

/**
 * Reads a number with the file's decimal sign where the number alone leaves two readings (`1,240`).
 *
 * @example
 * numberOf("1 240,50", null) // => 1240.5
 * numberOf("1,240", "point") // => 1240
 */
export function numberOf(text: string, decimal: "point" | "comma" | null): number | null {
  const whole = text.replace(/[\s\u00A0\u202F'’](?=\d{3}(?:\D|$))/g, "");
  if (decimal === "comma" && COMMA.test(whole)) return Number(whole.replaceAll(".", "").replace(",", "."));
  if (decimal === "point" && POINT.test(whole)) return Number(whole.replaceAll(",", ""));
  const read = numberCell(whole, COLUMN);
  return read instanceof Wrong ? null : read;
}

/** The currency a cell names; null when it names none. */
export function currencyOf(text: string): string | null {
  const sign = SIGN.exec(text)?.[0];
  return sign === undefined ? CODE.exec(text)?.[1] ?? null : SIGNS[sign] ?? sign;
}

/**
 * Reads an amount of money; nothing is converted.
 *
 * @example
 * amountOf("EUR 11,50", null) // => { value: 11.5, currency: "EUR", per_pack: false }
 */
export function amountOf(text: string, decimal: "point" | "comma" | null): Amount | null {
  const per_pack = PER_PACK.test(text), currency = currencyOf(text);
  const bare = text.replace(PER_PACK, "").replace(PER_PIECE, "").replace(SIGN, "").replace(CODE, (found, code: string) => found.replace(code, "")).replace(/\.?\s*$/, "").trim();
  const value = numberOf(bare, decimal);
  return value === null ? null : { value, currency, per_pack };
}
