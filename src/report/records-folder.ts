import { readdir } from "node:fs/promises";
import { openAsBlob } from "node:fs";
import { basename, dirname, join } from "node:path";
import { stat } from "node:fs/promises";
import { TABLES } from "../records/columns.ts";

/** A file as the importer takes it. */
export interface RecordsFile {
  readonly name: string;
  readonly blob: Blob;
}

const TABLE = new RegExp(`^(${TABLES.map((table) => table.name).join("|")})\\.csv(\\.gz)?$`, "i");
const SHEET = /\.(csv|tsv|txt|xlsx)(\.gz)?$/i;
const MAPPING = "mapping.json";

/**
 * Files to read: the tables where any is there by its name, else every sheet; a mapping beside them comes along.
 *
 * A folder with tables often holds exports of the same jobs beside them, and reading both would count jobs twice.
 *
 * @param path a folder, or one sheet
 * @returns in the order of their names; empty when there is nothing to read
 */
export async function recordsFiles(path: string): Promise<RecordsFile[]> {
  const folder = (await stat(path)).isDirectory() ? path : dirname(path);
  const names = folder === path ? (await readdir(folder)).sort() : [basename(path)];
  const tables = names.filter((name) => TABLE.test(name)), read = tables.length > 0 ? tables : names.filter((name) => SHEET.test(name));
  const wanted = read.length > 0 && names.includes(MAPPING) ? [...read, MAPPING] : read;
  return Promise.all(wanted.map(async (name) => ({ name, blob: await openAsBlob(join(folder, name)) })));
}
