import { existsSync } from "node:fs";
import { isDay } from "../answers/days.ts";
import { reportArguments } from "./arguments.ts";
import { recordsFiles } from "./records-folder.ts";
import { report } from "./report.ts";
import { writtenWhole } from "./written-whole.ts";

const NOTHING = 2;

function refuse(line: string): number {
  console.error(line);
  return NOTHING;
}

/**
 * `npm run report -- RECORDS_FOLDER --out OUT_FOLDER [--as-of YYYY-MM-DD]`
 *
 * @returns 0 with the report written, 2 with one line when there is nothing to read or the call is wrong; then nothing is
 * written
 */
export async function main(argv: readonly string[]): Promise<number> {
  const given = reportArguments(argv);
  if (typeof given === "string") return refuse(given);
  const { folder, out, as_of } = given;
  if (as_of !== null && !isDay(as_of)) return refuse(`--as-of needs a day written YYYY-MM-DD, got ${as_of}.`);
  if (!existsSync(folder)) return refuse(`Nothing to read: there is no ${folder}.`);
  const files = await recordsFiles(folder);
  if (files.length === 0) return refuse(`Nothing to read in ${folder}: no tickets.csv, no other table and no sheet (.csv).`);
  const made = await report(files, { as_of, today: new Date().toISOString().slice(0, 10) });
  if ("nothing" in made) return refuse(made.nothing.replaceAll(/\s+/g, " "));
  await writtenWhole(out, made.files);
  console.log(`${made.files.size} files in ${out}, from ${made.tickets} tickets; ${made.rejects} ${made.rejects === 1 ? "cell" : "cells"} to fix${made.conflicts === 0 ? "" : `, ${made.conflicts} ${made.conflicts === 1 ? "ticket number" : "ticket numbers"} with contradicting rows (conflicts in summary.json)`}.`);
  return 0;
}
