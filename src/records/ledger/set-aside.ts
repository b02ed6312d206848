import type { TableName } from "../columns.ts";
import type { Batch, Ledger } from "./ledger.ts";

/**
 * Takes an import out in a way that can be taken back.
 *
 * @returns puts it back as the newest import; what it held is in memory until then, so a closed page cannot
 */
export async function setAside(ledger: Ledger, batch: Batch): Promise<() => Promise<Batch>> {
  const payloads: { table: TableName; rows: number; stream: Uint8Array }[] = [];
  for (const { table, rows } of batch.tables) payloads.push({ table, rows, stream: await ledger.payload(batch, table) });
  const names = new Set(batch.files.map(({ file }) => file)), rejects = (await ledger.rejects()).filter(({ file }) => names.has(file));
  await ledger.remove(batch.id);
  const { origin, files, imported_at } = batch;
  return () => ledger.append({ origin, files, imported_at, payloads, rejects });
}
