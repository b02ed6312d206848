import { Unreadable } from "../formats/unreadable.ts";
import { readingFault, type OwnReading } from "../notes/own-readings.ts";
import type { Answers, DateOrder, SheetAnswers, SheetKind } from "./answers.ts";
import { positionNamed } from "../vocabulary.ts";
import { meaningNamed } from "./meanings.ts";

const KINDS: readonly SheetKind[] = ["jobs", "till", "stock", "table", "left out"];
const ORDERS: readonly DateOrder[] = ["day first", "month first", "year first"];
type Json = Record<string, unknown>;

/** Answers as text, for a setting of the ledger or a `mapping.json`. */
export const answersText = (answers: Answers): string => `${JSON.stringify(answers, null, 2)}\n`;

function refuse(what: string): never {
  throw new Unreadable(`The answers kept for this sheet cannot be used: ${what}.`);
}

const isObject = (value: unknown): value is Json => typeof value === "object" && value !== null && !Array.isArray(value);
const list = (json: Json, part: string): Json[] => {
  const value = json[part] ?? [];
  return Array.isArray(value) && value.every(isObject) ? value : refuse(`“${part}” is no list`);
};
const textOf = (value: unknown, part: string): string => (typeof value === "string" ? value : refuse(`“${part}” is no text`));
const oneOf = <Word extends string>(value: unknown, words: readonly Word[], part: string): Word | null =>
  value === null || value === undefined ? null : words.find((word) => word === value) ?? refuse(`“${part}” is none of ${words.join(", ")}`);

function year(value: unknown): number | null {
  if (value === null || value === undefined) return null;
  return typeof value === "number" && Number.isInteger(value) && value >= 1950 && value <= 2200 ? value : refuse("“year” is no year");
}

function meansOf(value: unknown, kind: SheetKind): string | null {
  if (value === null || value === undefined) return null;
  const means = textOf(value, "means");
  return meaningNamed(means, kind) ? means : refuse(`a column cannot be “${means}” in a sheet of ${kind}`);
}

function routineParts(json: Json): NonNullable<SheetAnswers["routine_parts"]> | null {
  if (json["routine_parts"] === null || json["routine_parts"] === undefined) return null;
  return list(json, "routine_parts").map((one) => {
    const place = textOf(one["position"], "position"), changed = oneOf(one["changed"], ["as routine", "when worn"] as const, "changed");
    return positionNamed(place) === place && changed ? { position: place, changed } : refuse("“routine_parts” holds no place, or not how it is changed");
  });
}

function sheetFrom(json: Json): SheetAnswers {
  const kind = oneOf(json["kind"], KINDS, "kind") ?? "jobs";
  return {
    sheet: json["sheet"] === null || json["sheet"] === undefined ? null : textOf(json["sheet"], "sheet"), kind,
    columns: list(json, "columns").map((one) => ({ column: textOf(one["column"], "column"), means: meansOf(one["means"], kind) })),
    dates: oneOf(json["dates"], ORDERS, "dates"), decimal: oneOf(json["decimal"], ["point", "comma"] as const, "decimal"), year: year(json["year"]),
    currency: json["currency"] === null || json["currency"] === undefined ? null : textOf(json["currency"], "currency"),
    mixed_water: oneOf(json["mixed_water"], ["saltiest", "left empty"] as const, "mixed_water"),
    routine_parts: routineParts(json),
    values: list(json, "values").map((one) => ({ column: textOf(one["column"], "column"), word: textOf(one["word"], "word"), ours: textOf(one["ours"], "ours") })),
    constants: list(json, "constants").map((one) => ({ column: textOf(one["column"], "column"), value: textOf(one["value"], "value") })),
  };
}

function notesFrom(json: Json): OwnReading[] {
  return list(json, "notes").map((line) => {
    const fault = readingFault(line);
    return fault === null ? line as unknown as OwnReading : refuse(`a line of “notes” ${fault}`);
  });
}

/** True for a text that holds answers, as against the short form of a `mapping.json`. */
export function isAnswersJson(json: unknown): json is Json {
  return isObject(json) && Array.isArray(json["sheets"]);
}

/** @throws {Unreadable} when a part of it is not as `answersText` writes it */
export function answersFromJson(json: Json): Answers {
  if (json["version"] !== undefined && json["version"] !== 1) refuse("they were written by a newer version");
  const notes = notesFrom(json), sheets = list(json, "sheets").map(sheetFrom);
  return notes.length === 0 ? { version: 1, sheets } : { version: 1, sheets, notes };
}

/**
 * What `answersText` wrote.
 *
 * @throws {Unreadable} when it is something else
 */
export function answersFrom(text: string): Answers {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (cause) {
    throw new Unreadable("The answers kept for this sheet are not valid JSON.", { cause });
  }
  return isAnswersJson(json) ? answersFromJson(json) : refuse("they hold no sheets");
}
