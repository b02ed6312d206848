import type { Report } from "../../db/engine.ts";
import type { BenchStore, BenchTicket } from "../../records/bench-log/bench-store.ts";
import type { NamedFile } from "../../records/formats/sheet.ts";
import type { Imported } from "../../records/importing.ts";
import type { Batch } from "../../records/ledger/ledger.ts";
import type { Settlement } from "../../records/looking/remembered.ts";

/** What finishing needs of an open ticket. */
interface AtBench {
  readonly store: BenchStore;
  readonly id: string;
  readonly ticket: BenchTicket | null;
  settled(): Promise<void>;
}

/** What it needs of the records. */
interface Records {
  readonly batches: readonly Batch[];
  bringIn(files: readonly NamedFile[], signal: AbortSignal, report: Report, settlement: Settlement): Promise<Imported>;
}

/**
 * Puts a ticket into the records and marks it as finished. One that was opened again takes the place of its own import.
 * Killed between the two, it is still at the bench, and finishing it again changes nothing in the records.
 *
 * @throws what imports throw; {Error} when a row came back, which the checks before should have told
 */
export async function finishTicket(bench: AtBench, file: NamedFile, records: Records, signal: AbortSignal, report: Report): Promise<Imported> {
  await bench.settled();
  const { store, id, ticket } = bench, before = records.batches.find((batch) => batch.id === ticket?.batch_id) ?? null;
  const imported = await records.bringIn([file], signal, report, { answers: [], instead_of: before, origin: "bench" });
  const [reject] = imported.rejects;
  if (reject) throw new Error(`The records sent back ${reject.column}: ${reject.reason}. It stands under Records, rows to fix.`);
  await store.finish(id, imported.kept ? imported.id : before?.id ?? ticket?.batch_id ?? "");
  return imported;
}
