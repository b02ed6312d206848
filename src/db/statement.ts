import type { Row, SqlValue } from "./engine.ts";

/** What the heading of a `.sql` file says of the text below it. */
export interface Statement {
  readonly sql: string;
  /** What it answers, in the owner's words. */
  readonly sentence: string;
  /** Name and SQL type of every parameter, in the order of the heading. */
  readonly parameters: ReadonlyMap<string, string>;
  /** Name and SQL type of every column it gives; null where the heading does not promise any. */
  readonly columns: ReadonlyMap<string, string> | null;
}

/** SQL types a parameter may have, and what a value of each must be. */
const FITS: Readonly<Record<string, (value: SqlValue) => boolean>> = {
  varchar: (value) => typeof value === "string",
  date: (value) => typeof value === "string" && /^\d{4}-\d{2}-\d{2}$/.test(value),
  integer: Number.isInteger,
  bigint: Number.isInteger,
  double: Number.isFinite,
  boolean: (value) => typeof value === "boolean",
};

/** `a varchar, b decimal(9, 2)` as name and type; a comma in brackets belongs to the type. */
function typedNames(text: string, sentence: string): Map<string, string> {
  const pairs = text.split(/,(?![^(]*\))/).map((pair) => pair.trim()).filter((pair) => pair !== "");
  return new Map(pairs.map((pair) => {
    const [, name, type] = /^([a-z_][a-z0-9_]*)\s+(\S.*)$/.exec(pair) ?? [];
    if (name === undefined || type === undefined) {
      throw new RangeError(`statement: "${sentence}" needs a name and a type for each parameter and column, got "${pair}"`);
    }
    return [name, type];
  }));
}

/** Lines of the comment that opens the file, without their dashes. */
function heading(sql: string): string[] {
  const lines = sql.trim().split("\n");
  const end = lines.findIndex((line) => !line.startsWith("--"));
  return (end < 0 ? lines : lines.slice(0, end)).map((line) => line.replace(/^--\s?/, "").trim());
}

function readParameters(text: string, sentence: string): Map<string, string> {
  const parameters = typedNames(text, sentence);
  for (const [name, type] of parameters) {
    if (!(type in FITS)) {
      throw new RangeError(`statement: "${sentence}" needs ${Object.keys(FITS).join(", ")} for its parameter ${name}, got ${type}`);
    }
  }
  return parameters;
}

function checkUse({ sql, sentence, parameters }: Statement): void {
  const used = new Set([...sql.matchAll(/getvariable\s*\(\s*'([^']*)'\s*\)/gi)].map(([, name]) => name ?? ""));
  const unnamed = [...used].find((name) => !parameters.has(name));
  if (unnamed !== undefined) throw new RangeError(`statement: "${sentence}" needs ${unnamed} among its parameters, its heading does not name it`);
  const idle = [...parameters.keys()].find((name) => !used.has(name));
  if (idle !== undefined) throw new RangeError(`statement: "${sentence}" needs to use its parameter ${idle}, no getvariable('${idle}') is in it`);
}

function read(sql: string): Statement {
  const sections = { sentence: [] as string[], parameters: [] as string[], columns: null as string[] | null };
  let open: string[] = sections.sentence;
  for (const line of heading(sql)) {
    const [, key, rest] = /^(Parameters|Columns):\s*(.*)$/.exec(line) ?? [];
    if (key === "Parameters") open = sections.parameters;
    if (key === "Columns") open = sections.columns = [];
    open.push(rest ?? line);
  }
  const sentence = sections.sentence.join(" ") || sql.trim().slice(0, 80);
  const found: Statement = {
    sql,
    sentence,
    parameters: readParameters(sections.parameters.join(" "), sentence),
    columns: sections.columns && typedNames(sections.columns.join(" "), sentence),
  };
  checkUse(found);
  return found;
}

const known = new Map<string, Statement>();

/**
 * The heading of a `.sql` file: the comment lines it opens with.
 *
 * The first lines are a sentence. `Parameters:` and `Columns:` name what goes in and what comes out, each as `name type`
 * with commas between, over as many lines as it needs. A text without a heading is called by its first 80 characters.
 *
 * @throws {RangeError} if a pair cannot be read, a parameter has a type no value can be given for, or
 * `getvariable('…')` and the parameters do not name the same things: a variable that is not set reads as null and would
 * silently widen an answer
 * @example
 * statement("-- Days.\n-- Parameters: from_date date\nselect getvariable('from_date')").parameters.get("from_date"); // => "date"
 */
export function statement(sql: string): Statement {
  const found = known.get(sql) ?? read(sql);
  known.set(sql, found);
  return found;
}

/**
 * Checks that `values` hold exactly what the statements ask for.
 *
 * @returns name, type and value of every parameter
 * @throws {RangeError} naming the statement and the parameter
 */
export function bound(statements: readonly Statement[], values: Row): { name: string; type: string; value: SqlValue }[] {
  const asked = new Map<string, { type: string; sentence: string }>();
  for (const { parameters, sentence } of statements) {
    for (const [name, type] of parameters) {
      const other = asked.get(name);
      if (other && other.type !== type) throw new RangeError(`values: "${sentence}" needs ${name} as ${type}, "${other.sentence}" as ${other.type}`);
      asked.set(name, { type, sentence });
    }
  }
  const named = statements.map(({ sentence }) => `"${sentence}"`).join(", ");
  const extra = Object.keys(values).find((name) => !asked.has(name));
  if (extra !== undefined) throw new RangeError(`values: ${named} needs no value named ${extra}, got ${String(values[extra])}`);
  return [...asked].map(([name, { type, sentence }]) => {
    const value = values[name];
    if (value === undefined) throw new RangeError(`values: "${sentence}" needs a value for ${name}, got none`);
    if (value !== null && FITS[type]?.(value) !== true) throw new RangeError(`values: "${sentence}" needs ${name} as ${type} or null, got ${String(value)}`);
    return { name, type, value };
  });
}
