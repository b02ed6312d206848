import { openAsBlob } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { TABLES } from "../records/columns.ts";
import type { NamedFile } from "../records/reading/read-file.ts";

const TABLE = new RegExp(`^(${TABLES.map((table) => table.name).join("|")})\\.(csv(\\.gz)?|parquet)$`, "i");
const SHEET = /\.(csv|tsv|txt|xlsx|xlsm|xls|ods|json|jsonl|ndjson|parquet|arrow|feather)(\.gz)?$/i;
const MAPPING = "mapping.json";
/** What a report wrote into the same folder is not read again. */
const OURS = /^(rejected|failure-rates|verdicts|wear|wear-effects|wear-curve|recurrences|comebacks|lots|restock|stock-curve|advice-score|labour|workload|forecast-score|shops)\.csv$|^summary\.json$|^roll-up\.arrow$/i;

/**
 * Files to read: the tables where any is there by its name, else every sheet; a mapping beside them comes along.
 *
 * A folder with tables often holds exports of the same jobs beside them, and reading both would count jobs twice.
 *
 * @param path a folder, or one sheet
 * @returns in the order of their names; empty when there is nothing to read
 * @throws what the file system throws, when the path is not there
 */
export async function recordsFiles(path: string): Promise<NamedFile[]> {
  const folder = (await stat(path)).isDirectory() ? path : dirname(path);
  const names = folder === path ? (await readdir(folder)).sort() : [basename(path)];
  const tables = names.filter((name) => TABLE.test(name)), read = tables.length > 0 ? tables : names.filter((name) => SHEET.test(name) && name !== MAPPING && !OURS.test(name));
  const wanted = read.length > 0 && names.includes(MAPPING) ? [...read, MAPPING] : read;
  return Promise.all(wanted.map(async (name) => ({ name, blob: await openAsBlob(join(folder, name)) })));
}
