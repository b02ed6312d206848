import type { Engine, Report } from "../../db/engine.ts";
import { TicketClosed, type BenchStore, type BenchTicket, type Entries } from "../../records/bench-log/bench-store.ts";
import { benchFaults, benchFile, finishedRows } from "../../records/bench-log/finished-rows.ts";
import type { NamedFile } from "../../records/formats/sheet.ts";
import type { Imported } from "../../records/importing.ts";
import type { Batch, Ledger } from "../../records/ledger/ledger.ts";
import type { Settlement } from "../../records/looking/remembered.ts";

/** What finishing needs of an open ticket. */
interface AtBench {
  readonly store: BenchStore;
  readonly id: string;
  settled(): Promise<void>;
}

/** What it needs of the records. */
interface Records {
  /** `YYYY-MM-DD` */
  readonly day: string;
  consult<T>(ask: (engine: Engine, ledger: Ledger) => Promise<T>): Promise<T>;
  bringIn(files: readonly NamedFile[], signal: AbortSignal, report: Report, settlement: Settlement): Promise<Imported>;
}

const WRITTEN_MEANWHILE = "Another window wrote on this ticket while you finished it. Look at what it wrote, then finish again.";

const rowsText = (entries: Entries) => JSON.stringify(finishedRows(entries));

/** The import that holds the rows of a ticket: the one just made, else the one they were in already. */
function holding({ kept, id }: Imported, { name }: NamedFile, before: Batch | null, batches: readonly Batch[]): string {
  if (kept) return id;
  return before?.id ?? batches.findLast(({ origin, files }) => origin === "bench" && files.some(({ file }) => file === name))?.id ?? "";
}

/** The ticket as all windows have written it. @throws {TicketClosed} */
async function toFinish({ store, id }: AtBench, today: string): Promise<BenchTicket> {
  const ticket = await store.ticket(id);
  if (!ticket) throw new TicketClosed("This ticket was thrown away in another window. Nothing of it went into the records.");
  if (ticket.finished_at !== null) throw new TicketClosed("Another window finished this ticket just now. It is in the records, once.");
  if (benchFaults(finishedRows(ticket.entries), today).length > 0) throw new TicketClosed(WRITTEN_MEANWHILE);
  return ticket;
}

/** Marks it, unless another window wrote something that is not in the records yet. @throws {TicketClosed} */
async function marked({ store, id }: AtBench, batch_id: string, before: Entries): Promise<void> {
  const went_in = rowsText(before);
  let same: boolean;
  try {
    same = await store.finish(id, batch_id, (now) => rowsText(now) === went_in);
  } catch (error) {
    if (!(error instanceof TicketClosed)) throw error;
    throw new TicketClosed("This ticket was thrown away in another window while you finished it. It is in the records; take it out under Records if it should not be.");
  }
  if (!same) throw new TicketClosed(WRITTEN_MEANWHILE);
}

/**
 * Puts a ticket into the records and marks it as finished. One that was opened again takes the place of its own import.
 * Killed between the two, it is still at the bench, and finishing it again changes nothing in the records. Of several windows
 * that finish it at once one does, with what all have written.
 *
 * @throws what imports throw; {TicketClosed} saying what another window did meanwhile; {Error} when a row came back, which the
 * checks before should have told
 */
export async function finishTicket(bench: AtBench, records: Records, signal: AbortSignal, report: Report): Promise<Imported> {
  await bench.settled();
  return bench.store.alone(bench.id, async () => {
    const { entries, batch_id } = await toFinish(bench, records.day), file = benchFile(finishedRows(entries));
    const batches = await records.consult((_, ledger) => ledger.batches()), before = batches.find(({ id }) => id === batch_id) ?? null;
    const imported = await records.bringIn([file], signal, report, { answers: [], instead_of: before, origin: "bench" });
    const [reject] = imported.rejects;
    if (reject) throw new Error(`The records sent back ${reject.column}: ${reject.reason}. It stands under Records, rows to fix.`);
    await marked(bench, holding(imported, file, before, batches), entries);
    return imported;
  });
}
