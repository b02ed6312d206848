import { holdsRecords, isList, isObject, takeApart, tooDeep } from "./json-values.ts";
import type { Json, JsonObject } from "./json-values.ts";
import type { Typed } from "./number-format.ts";
import { LIMITS, Unreadable, tooManyNames } from "./unreadable.ts";

/** A cell that a record has from the one it lies in. */
interface Carried {
  readonly heading: string;
  readonly value: Typed;
}

export interface JsonRecord {
  readonly record: JsonObject;
  /** Number of the record in its list, or its line, from 1. */
  readonly line: number;
  readonly carried: readonly Carried[];
}

/** A list of records with all headings that any of them has, in their order. */
export interface JsonTable {
  readonly name: string | null;
  readonly headings: readonly string[];
  readonly records: readonly JsonRecord[];
}

const KEY_NAME = /(^|[._\s-])(id|no|nr|num|number|ref|key|code|ticket|job|serial)$|[a-z](Id|No|Nr|Number|Ref|Key|Code)$/i;

/** Headings, inner lists, and which columns tell the records apart, of one list of records. */
class Survey {
  readonly headings = new Set<string>();
  readonly lists = new Map<string, { at: number; list: readonly Json[] }[]>();
  private readonly seen = new Map<string, Set<string>>();
  private readonly count: number;

  constructor(records: readonly JsonRecord[]) {
    this.count = records.length;
    for (const [at, { record, carried }] of records.entries()) {
      for (const { heading, value } of carried) this.value(heading, value);
      takeApart(record, {
        value: (name, value) => this.value(name, value),
        list: (name, list) => this.lists.set(name, [...(this.lists.get(name) ?? []), { at, list }]),
      });
      if (this.headings.size > LIMITS.columns) throw tooManyNames();
    }
  }

  /** Names under which every record has a value of its own: those that sound like a number of it, else the first. */
  keys(): readonly string[] {
    const unique = [...this.seen].filter(([, values]) => values.size === this.count).map(([name]) => name);
    const named = unique.filter((name) => KEY_NAME.test(name));
    return named.length > 0 ? named : unique.slice(0, 1);
  }

  private value(name: string, { text }: Typed): void {
    this.headings.add(name);
    if (text === "") return;
    const values = this.seen.get(name);
    if (values) values.add(text);
    else this.seen.set(name, new Set([text]));
  }
}

/** The cells of one record that the records in it shall have too; its place when nothing tells the records apart. */
function carriedFrom({ record, line, carried }: JsonRecord, keys: readonly string[], own: ReadonlySet<string>, name: string | null): Carried[] {
  const heading = (key: string) => (own.has(key) ? `${name ?? "record"}.${key}` : key);
  if (keys.length === 0) return [{ heading: heading("record"), value: { text: String(line), typed: true } }];
  const found: Carried[] = carried.filter((one) => keys.includes(one.heading)).map(({ heading: key, value }) => ({ heading: heading(key), value }));
  takeApart(record, {
    value: (key, value) => { if (keys.includes(key)) found.push({ heading: heading(key), value }); },
    list: () => undefined,
  });
  return found;
}

const asRecord = (value: Json): JsonObject => (isObject(value) ? value : { value });

/** Headings that the records of a list have themselves. */
function ownNames(lists: readonly { list: readonly Json[] }[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { list } of lists) for (const one of list) takeApart(asRecord(one), { value: (name) => names.add(name), list: () => undefined });
  return names;
}

/** A list of records as a table, followed by the tables of the lists in them. */
export function tablesOf(name: string | null, records: readonly JsonRecord[], depth = 1): JsonTable[] {
  if (depth > LIMITS.depth) throw tooDeep();
  const survey = new Survey(records), keys = survey.lists.size > 0 ? survey.keys() : [];
  const inner = [...survey.lists].flatMap(([inner_name, lists]) => {
    const own = ownNames(lists);
    const items = lists.flatMap(({ at, list }) => {
      const parent = records[at], carried = parent ? carriedFrom(parent, keys, own, name) : [];
      return list.map((one): Omit<JsonRecord, "line"> => ({ record: asRecord(one), carried }));
    });
    return tablesOf(name === null ? inner_name : `${name}.${inner_name}`, items.map((item, at) => ({ ...item, line: at + 1 })), depth + 1);
  });
  const own: JsonTable[] = records.length === 0 ? [] : [{ name, headings: [...survey.headings], records }];
  return [...own, ...inner];
}

export const recordsOf = (list: readonly Json[]): JsonRecord[] => list.map((one, at) => ({ record: asRecord(one), line: at + 1, carried: [] }));

/** The lists of records in an object, however deep they lie in it, by their names. */
function listsIn(object: JsonObject, prefix: string, depth: number): [string, readonly Json[]][] {
  if (depth > LIMITS.depth) return [];
  return Object.entries(object).flatMap(([key, value]): [string, readonly Json[]][] => {
    const name = prefix === "" ? key : `${prefix}.${key}`;
    if (holdsRecords(value)) return [[name, value]];
    return isObject(value) ? listsIn(value, name, depth + 1) : [];
  });
}

/** Objects of one kind under their keys: `{"R-1001": {…}, "R-1002": {…}}`. */
function keyedRecords(object: JsonObject): JsonObject[] | null {
  const entries = Object.entries(object);
  if (entries.length < 2 || !entries.every(([, value]) => isObject(value))) return null;
  return entries.map(([key, value]) => Object.fromEntries([["key", key], ...Object.entries(asRecord(value))]) as JsonObject);
}

/** Columns under their names: `{"ticket_no": […], "model": […]}`. */
function columnRecords(object: JsonObject): JsonObject[] | null {
  const entries = Object.entries(object), [first] = entries;
  if (!first || !isList(first[1]) || !entries.every(([, value]) => isList(value) && isList(first[1]) && value.length === first[1].length)) return null;
  return first[1].map((_value, at) => Object.fromEntries(entries.map(([key, value]) => [key, isList(value) ? value[at] ?? null : null])) as JsonObject);
}

/** The tables of a whole JSON file; `left_out` are names at its top that belong to none. */
export function tablesOfFile(root: Json): { readonly tables: readonly JsonTable[]; readonly left_out: readonly string[] } {
  if (isList(root)) return { tables: tablesOf(null, recordsOf(root)), left_out: [] };
  if (!isObject(root)) return { tables: [], left_out: [] };
  const lists = listsIn(root, "", 1), found = new Set(lists.map(([name]) => name.split(".")[0]));
  if (lists.length > LIMITS.sheets) throw new Unreadable(`This JSON file holds more than ${LIMITS.sheets} lists of records.`);
  const keyed = keyedRecords(root);
  if (lists.length > 0 && keyed === null) {
    return { tables: lists.flatMap(([name, list]) => tablesOf(name, recordsOf(list))), left_out: Object.keys(root).filter((key) => !found.has(key)) };
  }
  return { tables: tablesOf(null, recordsOf(keyed ?? columnRecords(root) ?? [root])), left_out: [] };
}

