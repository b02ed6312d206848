import { numberText, yesNoText } from "./typed-text.ts";
import type { Typed } from "./number-format.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

export const isList = (value: Json | undefined): value is readonly Json[] => Array.isArray(value);
export const isObject = (value: Json | undefined): value is JsonObject => typeof value === "object" && value !== null && !Array.isArray(value);
const isScalar = (value: Json): value is null | boolean | number | string => typeof value !== "object" || value === null;

/** A list of records, or of records among other things. */
export const holdsRecords = (value: Json | undefined): value is readonly Json[] => isList(value) && value.some((one) => isObject(one));

/** The text of a single value; lists of single values are joined, anything deeper stays as JSON. */
export function jsonText(value: Json): Typed {
  if (value === null) return { text: "", typed: false };
  if (typeof value === "number") return { text: numberText(value), typed: true };
  if (typeof value === "boolean") return { text: yesNoText(value), typed: true };
  if (typeof value === "string") return { text: value, typed: false };
  if (isList(value) && value.every(isScalar)) return { text: value.map((one) => jsonText(one).text).filter((one) => one !== "").join("; "), typed: false };
  return { text: JSON.stringify(value), typed: false };
}

/** Lists and objects in each other, of which records are only a part; text of deeper ones cannot be made. */
const NESTED = 3 * LIMITS.depth;

const isDeep = (value: Json, left: number): boolean =>
  typeof value === "object" && value !== null && (left === 0 || (isList(value) ? value : Object.values(value)).some((one) => isDeep(one, left - 1)));

export const tooDeep = () => new Unreadable(`In this JSON file records lie more than ${LIMITS.depth} deep in each other; no export of a shop does.`);

/** Told the parts of a record: its single values, and the lists of records in it, by their names joined with points. */
export interface PartTaker {
  value(name: string, value: Typed): void;
  list(name: string, list: readonly Json[]): void;
}

/**
 * Takes a record apart; an object in it gives `outer.inner`.
 *
 * @throws {Unreadable} when objects lie deeper in each other than the limit
 */
export function takeApart(record: JsonObject, taker: PartTaker, prefix = "", depth = 1): void {
  if (depth > LIMITS.depth) throw tooDeep();
  for (const [key, value] of Object.entries(record)) {
    const name = prefix === "" ? key : `${prefix}.${key}`;
    if (isObject(value)) takeApart(value, taker, name, depth + 1);
    else if (holdsRecords(value)) taker.list(name, value);
    else taker.value(name, jsonText(value));
  }
}

const LONG_NUMBER = /"(?:[^"\\]|\\.)*"|-?\d{16,}(?![\d.eE])/g;

/**
 * The value of a JSON text; whole numbers too long for the computer's own keep all their digits, as text.
 *
 * @returns undefined when the text is not JSON
 * @throws {Unreadable} when lists and objects lie too deep in each other
 */
export function parsedJson(text: string): Json | undefined {
  const safe = /\d{16}/.test(text) ? text.replace(LONG_NUMBER, (found) => (found.startsWith('"') ? found : `"${found}"`)) : text;
  try {
    const value = JSON.parse(safe) as Json;
    if (isDeep(value, NESTED)) throw tooDeep();
    return value;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
