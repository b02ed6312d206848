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
  const written = { tickets: 0, findings: 0 };
  function* piecesOf(name: (typeof BOTH)[number]): Generator<readonly Text[]> {
    for (const round of grownRounds(enough)) {
      const rows = round[name];
      written[name] += rows.length;
      yield rows;
    }
  }
  const files = BOTH.map((name) => ({ name, columns: columnsOf(name), pieces: () => piecesOf(name) }));
  if (format === "XLSX") {
    const path = join(folder, "shop.xlsx"), bytes = writeWorkbook(path, files);
    return { paths: [path], bytes, findings: written.findings };
  }
  const paths = BOTH.map((name) => join(folder, `${name}.${format.toLowerCase()}`));
  const bytes = files.map(({ columns, pieces }, at) => {
    const path = paths[at] as string;
    return format === "CSV" ? writeCsv(path, columns.map(({ name }) => name), pieces()) : writeArrow(path, columns, pieces());
  });
  return { paths, bytes: bytes.reduce((sum, one) => sum + one, 0), findings: written.findings };
}
