import { jsonText } from "./json-values.ts";
import type { Json } from "./json-values.ts";
import type { Typed } from "./number-format.ts";
import { durationText, momentText, numberText, yesNoText } from "./typed-text.ts";

const NOTHING: Typed = { text: "", typed: false };
const typed = (text: string): Typed => ({ text, typed: text !== "" });

/** The text of a moment given in milliseconds since 1970. */
export const momentOf = (value: unknown): Typed => (value === null || value === undefined ? NOTHING : typed(momentText(Number(value))));

/** The text of a length of time or a time of day, counted in parts of a second. */
export const durationOf = (value: unknown, per_second: number): Typed =>
  (value === null || value === undefined ? NOTHING : typed(durationText(Number(value) / per_second)));

/** A decimal number, exactly: its digits as a whole number and how many of them stand behind the point. */
export function decimalText(digits: bigint, scale: number): string {
  const sign = digits < 0n ? "-" : "", all = String(digits < 0n ? -digits : digits).padStart(scale + 1, "0");
  const whole = all.slice(0, all.length - scale), part = scale === 0 ? "" : all.slice(-scale).replace(/0+$/, "");
  return `${sign}${whole}${part === "" ? "" : `.${part}`}`;
}

function plainJson(value: unknown): Json {
  if (typeof value !== "object" && typeof value !== "string" && typeof value !== "number" && typeof value !== "boolean" && typeof value !== "bigint") return null;
  if (value === null) return null;
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
  if (typeof value === "bigint") return Number.isSafeInteger(Number(value)) ? Number(value) : String(value);
  if (value instanceof Date) return momentText(value.getTime());
  if (value instanceof Uint8Array) return hexText(value);
  const plain: unknown = hasJson(value) ? value.toJSON() : value;
  if (Array.isArray(plain)) return plain.map(plainJson);
  return Object.fromEntries(Object.entries(plain as object).map(([key, one]) => [key, plainJson(one)])) as Json;
}

/** Lists and records of Arrow tell their plain form. */
const hasJson = (value: object): value is { toJSON: () => unknown } => "toJSON" in value && typeof value.toJSON === "function";

const hexText = (bytes: Uint8Array) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** The text of a value as a library for columns gives it: lists are joined, records within a cell stay as JSON. */
export function valueText(value: unknown): Typed {
  if (value === null || value === undefined) return NOTHING;
  if (typeof value === "string") return { text: value, typed: false };
  if (typeof value === "number" || typeof value === "bigint") return typed(numberText(value));
  if (typeof value === "boolean") return typed(yesNoText(value));
  if (value instanceof Date) return momentOf(value);
  return jsonText(plainJson(value));
}
