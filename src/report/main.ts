import { existsSync, statSync } from "node:fs";
import { isDay } from "../answers/days.ts";
import { today } from "../records/today.ts";
import { reportArguments } from "./arguments.ts";
import type { ReportArguments } from "./arguments.ts";
import { intoFolder } from "./output-folder.ts";
import { recordsFiles } from "./records-folder.ts";
import { report } from "./report.ts";
import { manyShops } from "./shops/many-shops.ts";
import { shopFolders } from "./shops/shop-folders.ts";
import { writtenWhole } from "./written-whole.ts";

const NOTHING = 2;
/** Nothing came of the work: what was written beside the output is to go again. */
class Nothing extends Error {}

function refuse(line: string): number {
  console.error(line);
  return NOTHING;
}

const cells = (n: number) => `${n} ${n === 1 ? "cell" : "cells"} to fix`;

async function oneShop({ folder, out, as_of }: ReportArguments, today: string): Promise<number> {
  const files = await recordsFiles(folder);
  if (files.length === 0) return refuse(`Nothing to read in ${folder}: no tickets.csv, no other table and no sheet (.csv).`);
  const made = await report(files, { as_of, today });
  if ("nothing" in made) return refuse(made.nothing.replaceAll(/\s+/g, " "));
  await writtenWhole(out, made.files);
  console.log(`${made.files.size} files in ${out}, from ${made.tickets} tickets; ${cells(made.rejects)}${made.conflicts === 0 ? "" : `, ${made.conflicts} ${made.conflicts === 1 ? "ticket number" : "ticket numbers"} with contradicting rows (conflicts in summary.json)`}.`);
  return 0;
}

async function shops(given: ReportArguments, today: string): Promise<number> {
  const { folder, out } = given, found = await shopFolders(folder);
  if (typeof found === "string") return refuse(found);
  try {
    const made = await intoFolder(out, async (files, beside) => {
      const done = await manyShops(found, files, beside, { ...given, today }, (step) => console.error(step));
      if ("nothing" in done) throw new Nothing(done.nothing.replaceAll(/\s+/g, " "));
      return done;
    });
    console.log(`${made.shops} shops with ${made.tickets} tickets and ${made.inspections} inspections in ${out}; ${cells(made.rejects)}; ${made.engine === "native" ? "native DuckDB" : "the browser's engine"}.`);
    return 0;
  } catch (error) {
    if (error instanceof Nothing) return refuse(error.message);
    throw error;
  }
}

/**
 * `npm run report -- RECORDS_FOLDER --out OUT_FOLDER [--as-of YYYY-MM-DD]`, or with `--shops FOLDER_OF_SHOPS` for many shops
 *
 * @returns 0 with the report written, 2 with one line when there is nothing to read or the call is wrong; then nothing is
 * written
 */
export async function main(argv: readonly string[]): Promise<number> {
  const given = reportArguments(argv);
  if (typeof given === "string") return refuse(given);
  const { folder, as_of, many } = given;
  if (as_of !== null && !isDay(as_of)) return refuse(`--as-of needs a day written YYYY-MM-DD, got ${as_of}.`);
  if (!existsSync(folder)) return refuse(`Nothing to read: there is no ${folder}.`);
  if (many && !statSync(folder).isDirectory()) return refuse(`--shops needs a folder with a folder for each shop, got ${folder}.`);
  return many ? shops(given, today()) : oneShop(given, today());
}
