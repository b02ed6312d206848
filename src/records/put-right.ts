import type { FileTally, Ledger, Reject } from "./ledger/ledger.ts";
import type { FileRead } from "./reading/read-file.ts";
import { rowsOfRejects } from "./rows-to-fix.ts";

/** The setting that holds, after a restore, which rows were put right before it. */
export const PUT_RIGHT = "rows put right";

const LETTERS = 22;

/** Tells a rejected row by its cells, whatever file and line it stands in. */
async function keyOf(cells: readonly string[]): Promise<string> {
  const text = JSON.stringify(cells.map((cell) => cell.trim())), digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("").slice(0, LETTERS);
}

/** Keys of all rows that were put right in a returned list and have come in. */
export async function putRightKeys(ledger: Ledger): Promise<ReadonlySet<string>> {
  const restored = (await ledger.setting(PUT_RIGHT))?.split(" ") ?? [];
  return new Set([...restored, ...(await ledger.batches()).flatMap(({ files }) => files.flatMap(({ put_right }) => put_right ?? []))]);
}

/**
 * What reading made of a file, without the rows that were put right since: those are known, so that the shop's own file,
 * brought in again as it was, does not list them anew.
 */
export async function withoutPutRight(read: FileRead, keys: ReadonlySet<string>): Promise<FileRead> {
  if (keys.size === 0 || read.rejects.length === 0) return read;
  const known = new Set<number>();
  for (const { line, row } of rowsOfRejects(read.rejects)) if (row && keys.has(await keyOf(row.cells))) known.add(line);
  const rejects = read.rejects.filter(({ line }) => !known.has(line));
  return { ...read, rejects, rows_to_fix: read.rows_to_fix - known.size, rows_known: read.rows_known + known.size };
}

/** Keys of the rows of one file that came back and are no longer to fix. */
export async function nowPutRight(before: readonly Reject[], lines: ReadonlySet<number>, after: readonly Reject[]): Promise<FileTally["put_right"]> {
  const still = new Set(after.map(({ line }) => line));
  const right = rowsOfRejects(before).filter(({ line }) => lines.has(line) && !still.has(line)).flatMap(({ row }) => (row ? [row.cells] : []));
  return Promise.all(right.map(keyOf));
}
