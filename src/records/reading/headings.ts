import { TABLES, table } from "../columns.ts";
import type { Column, Table, TableName } from "../columns.ts";
import { HEADING_WORDS, plainHeading } from "./heading-words.ts";
import type { Convert, HeadingWord } from "./heading-words.ts";
import type { Mapping } from "./mapping.ts";
import { LIMITS, Unreadable } from "../formats/unreadable.ts";

/** Where the cells of one of our columns come from. */
export interface Field {
  readonly column: Column;
  /** Place of the cell in the file's rows, from 0; null for a constant or when the file has no such column. */
  readonly at: number | null;
  readonly constant: string | null;
  readonly convert: Convert | null;
  /** As the file writes it; our own name when the file has no such column. */
  readonly heading: string;
  /** The file's words for ours, by their lower-case form. */
  readonly values: ReadonlyMap<string, string> | null;
}

export interface Plan {
  readonly table: Table;
  /** One for each column of the table, in its order. */
  readonly fields: readonly Field[];
}

export interface Layout {
  readonly headings: readonly string[];
  /** One plan; two, tickets and findings, for a sheet with one row a finding. */
  readonly plans: readonly Plan[];
  /** Headings whose cells are not taken over. */
  readonly left_out: readonly string[];
  /** Columns every row needs and the file does not have: none of its rows can be taken. */
  readonly missing: readonly string[];
}

/** What a heading in its plain form stands for in a table. */
function meaning(plain: string, name: TableName, mapping: Mapping | null): HeadingWord | null {
  const mapped = mapping?.columns.get(plain);
  if (mapped === null) return null;
  return HEADING_WORDS.get(name)?.get(mapped === undefined ? plain : plainHeading(mapped)) ?? null;
}

/** True when any table knows the heading. */
export function isKnownHeading(heading: string, mapping: Mapping | null): boolean {
  const plain = plainHeading(heading);
  return TABLES.some(({ name }) => meaning(plain, name, mapping) !== null);
}

function planOf(one: Table, headings: readonly string[], mapping: Mapping | null): Plan {
  const plain = headings.map(plainHeading), meanings = plain.map((heading) => meaning(heading, one.name, mapping));
  const fields = one.columns.map((column): Field => {
    const name = plainHeading(column.name), own = meanings.findIndex((word, at) => word?.column === column.name && plain[at] === name);
    const at = own === -1 ? meanings.findIndex((word) => word?.column === column.name) : own;
    const values = mapping?.values.get(column.name) ?? null;
    if (at !== -1) return { column, at, constant: null, convert: meanings[at]?.convert ?? null, heading: headings[at] ?? column.name, values };
    return { column, at: null, constant: mapping?.constants.get(column.name) ?? null, convert: null, heading: column.name, values };
  });
  return { table: one, fields };
}

const found = ({ fields }: Plan) => fields.filter(({ at }) => at !== null).length;
const has = (plan: Plan, name: string) => plan.fields.some(({ column, at, constant }) => column.name === name && (at !== null || constant !== null));
const complete = (plan: Plan) => plan.fields.every(({ column }) => !column.required || has(plan, column.name));

/** Rows that name a ticket, its day, its model and a position hold a ticket and a finding each. */
function isOneRowAFinding(tickets: Plan, findings: Plan): boolean {
  return complete(findings) && complete(tickets) && tickets.fields.some(({ column, at }) => column.name === "received_on" && at !== null);
}

/** The file itself is called after the table; its folders do not count. */
const isNamed = ({ table: { name } }: Plan, file: string) =>
  file.slice(file.lastIndexOf("/") + 1).toLowerCase().includes(name.replace(/s$/, ""));

/** The table most of whose columns are there; the file's name decides only between equals. */
function best(plans: readonly Plan[], file: string): Plan {
  const rank = (plan: Plan) => Number(complete(plan)) * 1000 + found(plan) * 2 + Number(isNamed(plan, file));
  return plans.reduce((a, b) => (rank(b) > rank(a) ? b : a));
}

/** In a sheet of findings, a column that both tables have belongs to the finding, except the number that joins them. */
function withoutShared(tickets: Plan, findings: Plan): Plan {
  const taken = new Set(findings.fields.filter(({ column, at }) => at !== null && column.name !== "ticket_no").map(({ at }) => at));
  return { ...tickets, fields: tickets.fields.map((field) => (taken.has(field.at) ? { ...field, at: null } : field)) };
}

/** In a sheet of findings, "mins" are the whole job's unless the column is called as ours is. */
function withoutJobMinutes(findings: Plan): Plan {
  const isJobs = ({ column, heading }: Field) => column.name === "minutes" && plainHeading(heading) !== "minutes";
  return { ...findings, fields: findings.fields.map((field) => (isJobs(field) ? { ...field, at: null } : field)) };
}

function plansOf(headings: readonly string[], file: string, mapping: Mapping | null): readonly Plan[] {
  const plans = TABLES.map((one) => planOf(one, headings, mapping));
  const plan = (name: TableName) => plans.find((one) => one.table.name === name) ?? planOf(table(name), headings, mapping);
  const tickets = plan("tickets"), findings = withoutJobMinutes(plan("findings"));
  if (isOneRowAFinding(tickets, findings)) return [withoutShared(tickets, findings), findings];
  return [best(plans, file)];
}

/** A till's sales have part numbers and prices too; with most headings unknown they must not pass for a price list. */
function isDoubtful(plan: Plan, headings: readonly string[], file: string): boolean {
  const required = plan.fields.filter(({ column }) => column.required).length;
  return required < 2 && !isNamed(plan, file) && found(plan) * 2 < headings.filter((heading) => heading.trim() !== "").length;
}

const listed = (headings: readonly string[]) => headings.slice(0, 6).join(", ") + (headings.length > 6 ? " …" : "");

/**
 * Which table or tables the headings of a file mean, and where each of our columns comes from.
 *
 * @param headings cells of the heading row, as they stand in the file
 * @param file the file's name, asked only when the headings fit two tables equally
 * @throws {Unreadable} when no heading is known, too few to tell a catalogue, or there are more columns than the limit
 */
export function layoutOf(headings: readonly string[], file: string, mapping: Mapping | null): Layout {
  if (headings.length > LIMITS.columns) throw new Unreadable(`This file has ${headings.length} columns; no shop's table is that wide.`);
  if (!headings.some((heading) => isKnownHeading(heading, mapping))) {
    throw new Unreadable(`No heading row with names we know was found; the first row reads: ${listed(headings).slice(0, 200)}`);
  }
  const plans = plansOf(headings, file, mapping), [only] = plans;
  if (only && isDoubtful(only, headings, file)) {
    throw new Unreadable(`Most of its headings are not known, so it cannot be told what table this is: ${listed(headings).slice(0, 200)}`);
  }
  const used = new Set(plans.flatMap(({ fields }) => fields.map(({ at }) => at)));
  const left_out = headings.filter((heading, at) => heading.trim() !== "" && !used.has(at));
  const missing = plans.flatMap((plan) => plan.fields.filter(({ column }) => column.required && !has(plan, column.name)).map(({ column }) => column.name));
  return { headings, plans, left_out, missing };
}
