import type { Engine } from "../../db/engine.ts";
import { TABLES } from "../columns.ts";
import type { TableName } from "../columns.ts";
import type { FileTally, NewBatch, Reject } from "../ledger/ledger.ts";
import type { FileRead } from "../reading/read-file.ts";
import fates from "./fates.sql?raw";
import findings from "./findings.sql?raw";
import fits from "./fits.sql?raw";
import leave from "./leave.sql?raw";
import models from "./models.sql?raw";
import { newRows } from "./new-rows.ts";
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
type Contradiction = {
  file_no: number; source_line: number; ticket_no: string; why: "contradicts" | "no ticket";
  other_file: string | null; other_line: number | null;
};

/** What is to be written of an import, and what became of every row. */
export interface Settled {
  readonly files: FileTally[];
  readonly rejects: Reject[];
  readonly payloads: NewBatch["payloads"];
}

export async function openWaitingRoom(engine: Engine): Promise<void> {
  await engine.run([waitingRoom]);
}

/** Takes out what a file left behind that could not be read to its end. */
export async function voidRows(engine: Engine, file_no: number): Promise<void> {
  await engine.run([voidFile], { file_no });
}

export async function leaveWaitingRoom(engine: Engine): Promise<void> {
  await engine.run([leave]);
}

/** The same sentence whether the other row is kept already or comes in now, so that a second import finds nothing changed. */
function reason({ ticket_no, why, other_file, other_line }: Contradiction): string {
  if (why === "no ticket") return `ticket ${ticket_no} is not in the records`;
  return `ticket ${ticket_no} is already in the records with other content (imported from ${other_file} line ${other_line})`;
}

const byPlace = (a: Reject, b: Reject) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line);

function tally({ rejects: _, ...read }: FileRead, counts: ReadonlyMap<Fate["fate"], number>): FileTally {
  const replaced = counts.get("replaced") ?? 0;
  const file: FileTally = {
    ...read,
    rows_new: counts.get("new") ?? 0,
    rows_known: read.rows_known + (counts.get("known") ?? 0),
    rows_to_fix: read.rows_to_fix + (counts.get("to fix") ?? 0),
    rows_dropped: read.rows_dropped + replaced,
    remarks: replaced === 0 ? read.remarks : [...read.remarks, `${replaced} ${replaced === 1 ? "row" : "rows"}: dropped, because a later row says something else of the same thing.`],
  };
  const ends = file.rows_new + file.rows_known + file.rows_to_fix + file.rows_dropped;
  if (ends !== file.rows_read) throw new RangeError(`settle: needs an end for each of the ${file.rows_read} rows of ${file.file}, found ${ends}`);
  return file;
}

/**
 * Decides for every waiting row whether it is new, known or to fix, and counts that none is lost.
 *
 * @param reads what reading made of the files; file number 1 first
 */
export async function settle(engine: Engine, reads: readonly FileRead[], signal: AbortSignal): Promise<Settled> {
  const waiting = TABLES.map(({ name }) => name).filter((name) => reads.some((read) => read.tables.includes(name)));
  await engine.run(waiting.map((name) => JUDGING[name]), {}, signal);
  const counted = await engine.rows<Fate>(fates, {}, signal);
  const files = reads.map((read, at) =>
    tally(read, new Map(counted.filter(({ file_no }) => file_no === at + 1).map(({ fate, rows }) => [fate, rows]))));
  const contradictions = await engine.rows<Contradiction>(toFix, {}, signal);
  const late = contradictions.map((row): Reject => ({
    file: reads[row.file_no - 1]?.file ?? "", line: row.source_line, column: "ticket_no", value: row.ticket_no, reason: reason(row),
  }));
  const payloads: NewBatch["payloads"][number][] = [];
  for (const name of waiting) {
    signal.throwIfAborted();
    const { stream, rows } = await engine.stream(newRows(name));
    if (rows > 0) payloads.push({ table: name, rows, stream });
  }
  return { files, rejects: [...reads.flatMap(({ rejects }) => rejects), ...late].sort(byPlace), payloads };
}
