import type { Row, SqlValue } from "./engine.ts";

/** A variable for a column that every row of a load has alike. */
export interface Constant { name: string; type: string; value: SqlValue; column: string }

/** @throws {RangeError} if a name is not that of a column */
export function sameInEveryRow(same: Row): Constant[] {
  return Object.entries(same).map(([column, value]) => {
    if (!/^[a-z_]+$/.test(column)) throw new RangeError(`load: needs names of columns, got ${column}`);
    const type = typeof value === "string" ? "varchar" : typeof value === "boolean" ? "boolean" : "double";
    return { name: `same_${column}`, type, value, column };
  });
}

/** The statements that add the waiting rows to a table and take them out of the waiting one. */
export function insertedBy(table: string, incoming: string, columns: readonly string[], constants: readonly Constant[]): string {
  const own = columns.filter((name) => !constants.some(({ column }) => column === name)).map((name) => `"${name.replaceAll('"', '""')}"`);
  const added = constants.map(({ name, column }) => `getvariable('${name}') as ${column}`);
  return `insert into ${table} by name select ${[...own, ...added].join(", ")} from ${incoming}; drop table ${incoming}`;
}
