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

/** What is left of an import whose note cannot be read: its number, under which it can be taken out. */
const broken = (import_no: number): Batch =>
  ({ id: `broken-${import_no}`, import_no, imported_at: "", origin: "files", ledger_version: LEDGER_VERSION, files: [], tables: [], broken: true });

/** Why a broken import cannot be shown, for the owner. */
export const brokenReason = (import_no: number): string =>
  new LedgerDamaged(import_no, "the note of what it holds has changed on the disk").message;

/**
 * Stored manifests, read; one that is none comes as broken and stops no other.
 *
 * @param numbers under which each is stored
 * @throws {LedgerNewer} if one was written by a later version
 */
export function readManifests(stored: readonly unknown[], numbers: readonly number[]): Batch[] {
  return stored.map((value, at) => {
    const found: Partial<Batch> = typeof value === "object" && value !== null ? value : {}, import_no = numbers[at] ?? 0;
    if (typeof found.ledger_version === "number" && found.ledger_version > LEDGER_VERSION) throw new LedgerNewer();
    return isBatch(found) && found.import_no === import_no ? found : broken(import_no);
  });
}
