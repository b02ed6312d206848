import type { SqlValue } from "../../db/engine.ts";
import { TABLES } from "../../records/columns.ts";
import type { Conflict, TicketVersion } from "../../records/merging/conflicts.ts";
import { date } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

/** One column in which the rows of a ticket differ. */
export interface Difference {
  readonly column: string;
  readonly meaning: string;
  readonly said: readonly SqlValue[];
}

const COLUMNS = TABLES.find(({ name }) => name === "tickets")?.columns ?? [];
const isDate = (name: string) => COLUMNS.some((column) => column.name === name && column.kind === "date");

function shown(name: string, value: SqlValue): string {
  if (value === null) return "–";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return isDate(name) && typeof value === "string" ? date(value) : String(value);
}

export function differences({ versions, differs }: Conflict): Difference[] {
  return differs.map((name) => ({
    column: name, meaning: COLUMNS.find((column) => column.name === name)?.meaning ?? name, said: versions.map(({ said }) => said[name] ?? null),
  }));
}

/** Where a row stands, short. */
export const place = ({ source_file, source_line }: TicketVersion): string => `${source_file}, line ${source_line}`;

export function differenceColumns({ versions }: Conflict): Column<Difference>[] {
  return [
    { key: "meaning", label: "What differs", wide: true, value: ({ meaning }) => meaning, sortable: false },
    ...versions.map((version, at): Column<Difference> => ({
      key: String(at), label: place(version), wide: true, sortable: false, value: ({ column, said }) => shown(column, said[at] ?? null),
    })),
  ];
}
