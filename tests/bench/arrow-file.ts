import { writeFileSync } from "node:fs";
import { Bool, DateDay, Float64, Int32, RecordBatchFileWriter, Table, Utf8, vectorFromArray } from "apache-arrow";
import type { DataType, Vector } from "apache-arrow";
import type { Column } from "../../src/records/columns.ts";
import type { Text } from "./grown-files.ts";

/** What a program that knows its columns writes them as. */
const WRITTEN: Readonly<Record<"date" | "whole" | "number" | "yes_no" | "text", { type: () => DataType; cell: (value: string) => unknown }>> = {
  date: { type: () => new DateDay(), cell: (value) => Date.parse(value) },
  whole: { type: () => new Int32(), cell: Number },
  number: { type: () => new Float64(), cell: Number },
  yes_no: { type: () => new Bool(), cell: (value) => value === "yes" },
  text: { type: () => new Utf8(), cell: (value) => value },
};

const writtenAs = ({ kind }: Column) => WRITTEN[kind === "money" ? "number" : kind === "date" || kind === "whole" || kind === "number" || kind === "yes_no" ? kind : "text"];

/** Writes an Arrow file (not packed), a batch for each piece of rows. @returns its bytes on the disk */
export function writeArrow(path: string, columns: readonly Column[], pieces: Iterable<readonly Text[]>): number {
  const writer = new RecordBatchFileWriter();
  for (const rows of pieces) {
    const vectors = columns.map((column): [string, Vector] => {
      const { type, cell } = writtenAs(column);
      return [column.name, vectorFromArray(rows.map((row) => (row[column.name] ? cell(row[column.name] as string) : null)), type())];
    });
    for (const batch of new Table(Object.fromEntries(vectors)).batches) writer.write(batch);
  }
  writer.finish();
  const bytes = writer.toUint8Array(true);
  writeFileSync(path, bytes);
  return bytes.byteLength;
}
