import { columnsOf } from "../db/arrow-columns.ts";
import { zipped } from "./backup/zip.ts";
import { csvLine, csvText } from "./csv-out.ts";
import { LedgerDamaged } from "./ledger/errors.ts";
import type { Batch, Ledger } from "./ledger/ledger.ts";

/** One table as CSV; null when its bytes are no longer what was written. */
async function readable(ledger: Ledger, batch: Batch, table: Batch["tables"][number]["table"]): Promise<string | null> {
  try {
    const columns = columnsOf(await ledger.payload(batch, table)), names = Object.keys(columns), length = columns[names[0] ?? ""]?.length ?? 0;
    return csvText(names, []) + Array.from({ length }, (_, row) => csvLine(names.map((name) => columns[name]?.[row] ?? null))).join("");
  } catch (error) {
    if (error instanceof LedgerDamaged) return null;
    throw error;
  }
}

/**
 * What can still be read of a damaged import, as a zip file of CSV tables with the file and line of every row.
 *
 * @param today `YYYY-MM-DD`, the date of the files in it
 * @returns null when nothing can be read
 */
export async function readableRows(ledger: Ledger, batch: Batch, today: string): Promise<Blob | null> {
  const files = new Map<string, Uint8Array>();
  for (const { table } of batch.tables) {
    const text = await readable(ledger, batch, table);
    if (text !== null) files.set(`${table}.csv`, new TextEncoder().encode(text));
  }
  return files.size === 0 ? null : new Blob([zipped(files, today)], { type: "application/zip" });
}
