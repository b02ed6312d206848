import type { Engine } from "../../db/engine.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import { TABLES } from "../columns.ts";
import type { TableName } from "../columns.ts";
import type { FileTally, NewBatch, Reject } from "../ledger/ledger.ts";
import type { FileRead } from "../reading/read-file.ts";
import fates from "./fates.sql?raw";
import findings from "./findings.sql?raw";
import fits from "./fits.sql?raw";
import leave from "./leave.sql?raw";
import movingLines from "./move-lines.sql?raw";
import numbersAgain from "./numbers-again.sql?raw";
import models from "./models.sql?raw";
import { newRows, newRowsFromBackup } from "./new-rows.ts";
import ofVersion from "./of-version.sql?raw";
import orders from "./orders.sql?raw";
import parts from "./parts.sql?raw";
import suppliers from "./suppliers.sql?raw";
import tickets from "./tickets.sql?raw";
import toFix from "./to-fix.sql?raw";
import voidFile from "./void-file.sql?raw";
import waitingRoom from "./waiting-room.sql?raw";

/** Judges the waiting rows of one table; findings after the tickets they belong to. */
const JUDGING: Record<TableName, string> = { tickets, findings, models, parts, fits, suppliers, orders };

type Fate = { file_no: number; fate: "new" | "known" | "to fix" | "replaced"; rows: number };
type Lonely = { file_no: number; source_line: number; ticket_no: string };

/** What is to be written of an import, and what became of every row. */
export interface Settled {
  readonly files: FileTally[];
  readonly rejects: Reject[];
  readonly payloads: NewBatch["payloads"][number][];
}

export async function openWaitingRoom(engine: Engine): Promise<void> {
  await engine.run([waitingRoom]);
}

/** Takes out what a file left behind that could not be read to its end. */
export async function voidRows(engine: Engine, file_no: number): Promise<void> {
  await engine.run([voidFile], { file_no });
}

/** Gives the waiting rows of a file the lines they had elsewhere: line here → line there. */
export async function moveLines(engine: Engine, file_no: number, lines: ReadonlyMap<number, number>): Promise<void> {
  const rows = [...lines].map(([source_line, from_line]) => ({ file_no, source_line, from_line }));
  await engine.load("staging.moved_lines", rowsStream({ file_no: "integer", source_line: "integer", from_line: "integer" }, rows), rows.length);
  await engine.run([movingLines]);
}

export async function leaveWaitingRoom(engine: Engine): Promise<void> {
  await engine.run([leave]);
}

const byPlace = (a: Reject, b: Reject) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line);

const rowsOf = (count: number) => `${count} ${count === 1 ? "row" : "rows"}`;

/** What settling found of a file, in sentences. */
function remarks(replaced: number, again: number): string[] {
  const found = [];
  if (replaced > 0) found.push(`${rowsOf(replaced)}: dropped, because a later row says something else of the same thing.`);
  if (again > 0) found.push(`${rowsOf(again)}: another row has the same ticket number with other content; both are kept and the ticket counts once.`);
  return found;
}

function tally({ rejects: _, ...read }: FileRead, counts: ReadonlyMap<Fate["fate"], number>, again: number): FileTally {
  const replaced = counts.get("replaced") ?? 0;
  const file: FileTally = {
    ...read,
    rows_new: counts.get("new") ?? 0,
    rows_known: read.rows_known + (counts.get("known") ?? 0),
    rows_to_fix: read.rows_to_fix + (counts.get("to fix") ?? 0),
    rows_dropped: read.rows_dropped + replaced,
    remarks: [...read.remarks, ...remarks(replaced, again)],
  };
  const ends = file.rows_new + file.rows_known + file.rows_to_fix + file.rows_dropped;
  if (ends !== file.rows_read) throw new RangeError(`settle: needs an end for each of the ${file.rows_read} rows of ${file.file}, found ${ends}`);
  return file;
}

async function tallies(engine: Engine, reads: readonly FileRead[], signal: AbortSignal): Promise<FileTally[]> {
  const counted = await engine.rows<Fate>(fates, {}, signal);
  const again = await engine.rows<{ file_no: number; rows: number }>(numbersAgain, {}, signal);
  return reads.map((read, at) => tally(read,
    new Map(counted.filter(({ file_no }) => file_no === at + 1).map(({ fate, rows }) => [fate, rows])),
    again.find(({ file_no }) => file_no === at + 1)?.rows ?? 0));
}

/** Findings whose ticket is not there. */
async function lonely(engine: Engine, reads: readonly FileRead[], signal: AbortSignal): Promise<Reject[]> {
  const found = await engine.rows<Lonely>(toFix, {}, signal);
  return found.map(({ file_no, source_line, ticket_no }) => ({
    file: reads[file_no - 1]?.file ?? "", line: source_line, column: "ticket_no", value: ticket_no, reason: `ticket ${ticket_no} is not in the records; bring its ticket in, or put the number right`,
  }));
}

/**
 * Decides for every waiting row whether it is new, known or to fix, and counts that none is lost.
 *
 * @param reads what reading made of the files; file number 1 first
 * @param from_backup beside the waiting rows stands where they came from
 */
export async function settle(engine: Engine, reads: readonly FileRead[], signal: AbortSignal, from_backup = false): Promise<Settled> {
  const waiting = TABLES.map(({ name }) => name).filter((name) => reads.some((read) => read.tables.includes(name)));
  const both = reads.some(({ tables }) => tables.includes("tickets") && tables.includes("findings"));
  await engine.run([...(both ? [ofVersion] : []), ...waiting.map((name) => JUDGING[name])], {}, signal);
  const files = await tallies(engine, reads, signal);
  const late = await lonely(engine, reads, signal);
  const payloads: NewBatch["payloads"][number][] = [];
  for (const name of waiting) {
    signal.throwIfAborted();
    const { stream, rows } = await engine.stream(from_backup ? newRowsFromBackup(name) : newRows(name));
    if (rows > 0) payloads.push({ table: name, rows, stream });
  }
  return { files, rejects: [...reads.flatMap(({ rejects }) => rejects), ...late].sort(byPlace), payloads };
}
