import type { Batch, NewBatch } from "./ledger.ts";
import { LEDGER_VERSION } from "./ledger.ts";
import { LedgerDamaged, LedgerNewer } from "./errors.ts";
import type { Packed } from "./packing.ts";

/** What is kept of an import beside its rows; its number is given when it is stored. */
export function manifest(batch: NewBatch, tables: readonly Packed[]): Omit<Batch, "import_no"> {
  return {
    id: crypto.randomUUID(),
    imported_at: batch.imported_at,
    origin: batch.origin,
    ledger_version: LEDGER_VERSION,
    files: batch.files,
    tables: tables.map(({ table, rows, bytes, sha256 }) => ({ table, rows, bytes, sha256 })),
  };
}

const isBatch = (value: Partial<Batch>): value is Batch =>
  typeof value.id === "string" && Number.isInteger(value.import_no) && typeof value.imported_at === "string"
  && Array.isArray(value.files) && Array.isArray(value.tables)
  && value.tables.every(({ table, rows, bytes, sha256 }) =>
    typeof table === "string" && Number.isInteger(rows) && Number.isInteger(bytes) && typeof sha256 === "string");

/**
 * Stored manifests, read.
 *
 * @throws {LedgerNewer} if one was written by a later version
 * @throws {LedgerDamaged} if one is not a manifest
 */
export function readManifests(stored: readonly unknown[]): Batch[] {
  return stored.map((value) => {
    const found: Partial<Batch> = typeof value === "object" && value !== null ? value : {};
    if (typeof found.ledger_version === "number" && found.ledger_version > LEDGER_VERSION) throw new LedgerNewer();
    if (!isBatch(found)) throw new LedgerDamaged(found.import_no ?? null, "the note of what it holds has changed on the disk");
    return found;
  });
}
