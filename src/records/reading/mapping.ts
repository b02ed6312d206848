import { TABLES } from "../columns.ts";
import { plainHeading } from "./heading-words.ts";
import { Unreadable } from "../formats/unreadable.ts";

/** What a `mapping.json` beside a file says about it. Keys are plain: headings by `plainHeading`, values in lower case. */
export interface Mapping {
  /** Heading of the file → our column, or null to leave the column out. */
  readonly columns: ReadonlyMap<string, string | null>;
  /** Our column → word of the file → our word. */
  readonly values: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** Our column → the value of every row, where the file has no such column. */
  readonly constants: ReadonlyMap<string, string>;
}

/** Pieces of a mapping that name no column of ours but one we can convert. */
const CONVERTED = new Set(["labour_hours", "failed"]);
const OURS = new Set(TABLES.flatMap(({ columns }) => columns.map(({ name }) => name)));

function entriesOf(json: Record<string, unknown>, part: string): [string, unknown][] {
  const value = json[part];
  if (value === undefined) return [];
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new Unreadable(`In mapping.json, “${part}” is not a list of names and values.`);
  return Object.entries(value);
}

function ours(column: string): string {
  if (!OURS.has(column)) throw new Unreadable(`mapping.json names the column “${column}”, which none of our tables has.`);
  return column;
}

function plainText(value: unknown, where: string): string {
  if (typeof value !== "string" && typeof value !== "number" && typeof value !== "boolean") throw new Unreadable(`In mapping.json, ${where} is not a text.`);
  return String(value);
}

function target(heading: string, value: unknown): string | null {
  if (value === null || value === "") return null;
  const column = plainText(value, `the column for “${heading}”`);
  return CONVERTED.has(column) ? column : ours(column);
}

function parsed(text: string): Record<string, unknown> {
  try {
    const json: unknown = JSON.parse(text);
    if (typeof json === "object" && json !== null && !Array.isArray(json)) return json as Record<string, unknown>;
  } catch (cause) {
    throw new Unreadable("mapping.json is not valid JSON.", { cause });
  }
  throw new Unreadable("mapping.json does not hold an object with columns, values and constants.");
}

/**
 * Reads `{ "columns": { heading: column }, "values": { column: { word: ours } }, "constants": { column: value } }`.
 *
 * @throws {Unreadable} when it is no such object, or names a column that no table has
 */
export function mappingFrom(text: string): Mapping {
  const json = parsed(text.replace(/^\uFEFF/, ""));
  const unknown = Object.keys(json).find((part) => !["columns", "values", "constants"].includes(part));
  if (unknown !== undefined) throw new Unreadable(`mapping.json holds “${unknown}”, which is neither columns, values nor constants.`);
  return {
    columns: new Map(entriesOf(json, "columns").map(([heading, column]) => [plainHeading(heading), target(heading, column)])),
    values: new Map(entriesOf(json, "values").map(([column]) => [
      ours(column),
      new Map(entriesOf(json["values"] as Record<string, unknown>, column).map(([word, value]) =>
        [word.trim().toLowerCase(), plainText(value, `the word for “${word}”`)])),
    ])),
    constants: new Map(entriesOf(json, "constants").map(([column, value]) => [ours(column), plainText(value, `the constant “${column}”`)])),
  };
}
