import { TABLES } from "../columns.ts";
import type { Answers } from "../understanding/answers.ts";
import { answersFromJson, isAnswersJson } from "../understanding/answers-text.ts";
import { meaningNamed } from "../understanding/meanings.ts";
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
  /** What it says beyond that, for sheets that are no table of ours; null when it says no more. */
  readonly answers: Answers | null;
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
  if (meaningNamed(column, "jobs")) return column;
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

/** How values are written, and what kind of sheet it is; beside `columns`, `values` and `constants`. */
const MORE = ["kind", "dates", "decimal", "year", "currency", "mixed_water", "routine_parts", "notes"] as const;

/** The short form as answers, when it says more than which of our columns a heading is. */
function moreThanColumns(json: Record<string, unknown>): Answers | null {
  const columns = entriesOf(json, "columns").map(([column, means]) => ({ column, means: means === "" ? null : means }));
  const special = columns.some(({ means }) => typeof means === "string" && !OURS.has(means) && !CONVERTED.has(means));
  if (!special && !MORE.some((part) => json[part] !== undefined)) return null;
  const values = entriesOf(json, "values").flatMap(([column, words]) => Object.entries(words as object).map(([word, ours]) => ({ column, word, ours: String(ours) })));
  const constants = entriesOf(json, "constants").map(([column, value]) => ({ column, value: String(value) }));
  const { kind, dates, decimal, year, currency, mixed_water, routine_parts, notes } = json;
  return answersFromJson({ notes, sheets: [{ sheet: null, kind, dates, decimal, year, currency, mixed_water, routine_parts, columns, values, constants }] });
}

/**
 * Reads `{ "columns": { heading: column }, "values": { column: { word: ours } }, "constants": { column: value } }`, with
 * `kind`, `dates`, `decimal`, `year`, `currency`, `mixed_water`, `routine_parts` and `notes` beside them where needed, or answers as `answersText` writes them.
 *
 * @throws {Unreadable} when it is no such object, or names a column that no table has
 */
export function mappingFrom(text: string): Mapping {
  const json = parsed(text.replace(/^\uFEFF/, ""));
  if (isAnswersJson(json)) return { columns: new Map(), values: new Map(), constants: new Map(), answers: answersFromJson(json) };
  const unknown = Object.keys(json).find((part) => !["columns", "values", "constants", ...MORE].includes(part));
  if (unknown !== undefined) throw new Unreadable(`mapping.json holds “${unknown}”, which is neither columns, values nor constants.`);
  return {
    columns: new Map(entriesOf(json, "columns").map(([heading, column]) => [plainHeading(heading), target(heading, column)])),
    values: new Map(entriesOf(json, "values").map(([column]) => [
      ours(column),
      new Map(entriesOf(json["values"] as Record<string, unknown>, column).map(([word, value]) =>
        [word.trim().toLowerCase(), plainText(value, `the word for “${word}”`)])),
    ])),
    constants: new Map(entriesOf(json, "constants").map(([column, value]) => [ours(column), plainText(value, `the constant “${column}”`)])),
    answers: moreThanColumns(json),
  };
}
