import { appendFileSync, statSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import { table } from "../../src/records/columns.ts";
import { writeArrow } from "./arrow-file.ts";
import { grownRounds } from "./grown-files.ts";
import type { Text } from "./grown-files.ts";
import { writeWorkbook } from "./workbook-file.ts";

export const FORMATS = ["CSV", "XLSX", "Arrow"] as const;
export type Format = (typeof FORMATS)[number];

const BOTH = ["tickets", "findings"] as const;
const columnsOf = (name: (typeof BOTH)[number]) => table(name).columns.filter(({ made }) => !made);

function* piecesOf(name: (typeof BOTH)[number], findings: number): Generator<readonly Text[]> {
  for (const round of grownRounds(findings)) yield round[name];
}

function writeCsv(path: string, names: string[], pieces: Iterable<readonly Text[]>): number {
  appendFileSync(path, `${names.join(",")}\r\n`);
  for (const rows of pieces) appendFileSync(path, `${Papa.unparse([...rows], { columns: names, header: false })}\r\n`);
  return statSync(path).size;
}

export interface FilesOfSize { readonly paths: readonly string[]; readonly bytes: number; readonly findings: number }

/**
 * Writes the tickets and findings of a grown shop: two files of CSV or Arrow, or one workbook with a sheet each.
 *
 * @returns where they lie, their bytes together, and how many findings they hold
 */
export function importFilesOf(folder: string, format: Format, enough: number): FilesOfSize {
  const findings = [...piecesOf("findings", enough)].reduce((sum, { length }) => sum + length, 0);
  const files = BOTH.map((name) => ({ name, columns: columnsOf(name), pieces: () => piecesOf(name, enough) }));
  if (format === "XLSX") {
    const path = join(folder, `shop-${findings}.xlsx`);
    return { paths: [path], bytes: writeWorkbook(path, files), findings };
  }
  const paths = files.map(({ name }) => join(folder, `${name}-${findings}.${format.toLowerCase()}`));
  const bytes = files.map(({ columns, pieces }, at) => {
    const path = paths[at] as string;
    return format === "CSV" ? writeCsv(path, columns.map(({ name }) => name), pieces()) : writeArrow(path, columns, pieces());
  });
  return { paths, bytes: bytes.reduce((sum, one) => sum + one, 0), findings };
}
