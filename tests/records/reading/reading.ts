import { layoutOf } from "../../../src/records/reading/headings.ts";
import { csvRows, shapeOf } from "../../../src/records/formats/csv.ts";
import type { CsvRow } from "../../../src/records/formats/csv.ts";
import { isKnownHeading } from "../../../src/records/reading/headings.ts";
import type { Mapping } from "../../../src/records/reading/mapping.ts";
import { readHere } from "../../../src/records/read-here.ts";
import type { FileRead, ReadOptions } from "../../../src/records/reading/read-file.ts";
import type { StagedRows } from "../../../src/records/reading/filling.ts";
import { tableFromIPC } from "apache-arrow";

/** Rows of a text that comes in pieces of `size` characters. */
export async function rowsOf(text: string, size = text.length): Promise<CsvRow[]> {
  async function* pieces() {
    for (let at = 0; at < text.length; at += Math.max(1, size)) yield text.slice(at, at + Math.max(1, size));
  }
  const rows: CsvRow[] = [];
  for await (const some of csvRows(pieces(), shapeOf(text, (heading) => isKnownHeading(heading, null)))) rows.push(...some);
  return rows;
}

export const cellsOf = async (text: string, size?: number) => (await rowsOf(text, size)).map(({ cells }) => cells);

/** Table and columns found for a heading row: `{ ticket_no: 0, … }`. */
export function found(headings: string[], file = "records.csv", mapping: Mapping | null = null) {
  const { plans, left_out } = layoutOf(headings, file, mapping);
  const columns = Object.fromEntries(plans.flatMap(({ fields }) => fields.flatMap(({ column, at }) => (at === null ? [] : [[column.name, at]]))));
  return { tables: plans.map(({ table }) => table.name), columns, left_out };
}

export interface Read extends FileRead {
  /** Rows that passed, by table, as plain objects. */
  readonly staged: Record<string, Record<string, unknown>[]>;
  readonly pieces: number;
}

export async function read(content: BlobPart | Blob, name = "tickets.csv", more: Partial<ReadOptions> = {}): Promise<Read> {
  const staged: Read["staged"] = {};
  let pieces = 0;
  const take = async ({ table, stream }: StagedRows) => {
    pieces += 1;
    (staged[table] ??= []).push(...tableFromIPC(stream).toArray().map((row) => row.toJSON() as Record<string, unknown>));
  };
  const options = { file_no: 1, mapping: null, last_day: "2027-06-01", signal: new AbortController().signal, report: () => undefined, take, ...more };
  const [done] = await readHere({ name, blob: content instanceof Blob ? content : new Blob([content]) }, options);
  if (!done) throw new RangeError("read: needs a file with a sheet that is not left out");
  return { ...done, staged, pieces };
}
