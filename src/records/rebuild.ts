import type { Engine, Report } from "../db/engine.ts";
import { DamagedRows } from "../db/errors.ts";
import { rowsStream } from "../db/rows-stream.ts";
import { clearImported } from "../db/prepare.ts";
import { LedgerDamaged } from "./ledger/errors.ts";
import type { Batch, Ledger } from "./ledger/ledger.ts";
import { brokenReason } from "./ledger/manifest.ts";
import { putTogether } from "./merging/put-together.ts";

/** An import that could not be read back; nothing of it is in the tables. `reason` is for the owner. */
export interface DamagedBatch {
  readonly batch: Batch;
  readonly reason: string;
}

export interface Rebuilt {
  /** The imports whose rows are in the tables now, in import order. */
  readonly batches: readonly Batch[];
  readonly damaged: readonly DamagedBatch[];
  readonly rows: number;
}

/** Notes which imports the engine knows of, so that it can be told whether another tab has changed them. */
export async function noteImports(inside: Engine, batches: readonly Pick<Batch, "id">[]): Promise<void> {
  await inside.load("ledger.imports", rowsStream({ id: "varchar" }, batches.map(({ id }) => ({ id }))), batches.length);
}

const KNOWN_IMPORTS = `-- Imports the engine knows of.
-- Columns: id varchar
select id
from ledger.imports
order by id`;

/** True when the engine holds what the ledger holds; false once another tab has added or taken out an import. */
export async function isInStep(engine: Engine, ledger: Ledger): Promise<boolean> {
  const known = (await engine.rows<{ id: string }>(KNOWN_IMPORTS)).map(({ id }) => id);
  const kept = (await ledger.batches()).map(({ id }) => id).sort();
  return known.length === kept.length && kept.every((id) => known.includes(id));
}

const rowsOf = (batch: Batch) => batch.tables.reduce((sum, { rows }) => sum + rows, 0);

/** All tables of one import, or nothing of it. */
async function payloads(ledger: Ledger, batch: Batch): Promise<{ table: string; rows: number; stream: Uint8Array }[]> {
  const found = [];
  for (const { table, rows } of batch.tables) found.push({ table, rows, stream: await ledger.payload(batch, table) });
  return found;
}

/** A stream whose checksum is right and whose rows are not: the transaction is lost, the import is left out next time. */
class BadBatch extends Error {
  constructor(readonly batch: Batch, override readonly cause: DamagedRows) {
    super(cause.message);
  }
}

async function loadBatch(inside: Engine, batch: Batch, tables: Awaited<ReturnType<typeof payloads>>): Promise<void> {
  try {
    for (const { table, rows, stream } of tables) await inside.load(`ledger.${table}`, stream, rows, { import_no: batch.import_no });
  } catch (error) {
    throw error instanceof DamagedRows ? new BadBatch(batch, error) : error;
  }
}

interface Pass { ledger: Ledger; batches: readonly Batch[]; bad: ReadonlyMap<string, DamagedBatch>; report: Report; signal: AbortSignal | undefined }

/** Another window took an import out while it was being read. */
class BatchGone extends Error {}

/** One attempt, all in one transaction of the engine. */
async function fill(inside: Engine, { ledger, batches, bad, report, signal }: Pass): Promise<DamagedBatch[]> {
  const total = batches.reduce((sum, batch) => sum + rowsOf(batch), 0);
  const damaged: DamagedBatch[] = [];
  let done = 0;
  await clearImported(inside);
  for (const batch of batches) {
    signal?.throwIfAborted();
    report({ step: "Reading your records", done, total });
    const known = batch.broken ? { batch, reason: brokenReason(batch.import_no) } : bad.get(batch.id);
    try {
      if (known) damaged.push(known);
      else await loadBatch(inside, batch, await payloads(ledger, batch));
    } catch (error) {
      if (!(error instanceof LedgerDamaged)) throw error;
      if ((await ledger.batches()).every(({ id }) => id !== batch.id)) throw new BatchGone("", { cause: error });
      damaged.push({ batch, reason: error.message });
    }
    done += rowsOf(batch);
  }
  await noteImports(inside, batches);
  report({ step: "Putting them together", done, total });
  await putTogether(inside, ledger);
  return damaged;
}

/**
 * Fills the engine's tables from the ledger and derives the rest, all or nothing: until it is done, other questions wait.
 *
 * An import that cannot be read back is left out whole and told in `damaged`; it does not stop the others.
 *
 * @throws {LedgerNewer} {LedgerUnavailable} when the list of imports itself cannot be read
 */
export async function rebuild(engine: Engine, ledger: Ledger, report: Report = () => undefined, signal?: AbortSignal): Promise<Rebuilt> {
  const bad = new Map<string, DamagedBatch>();
  for (;;) {
    const batches = await ledger.batches();
    try {
      const damaged = await engine.transaction((inside) => fill(inside, { ledger, batches, bad, report, signal }), signal);
      const left = new Set(damaged.map(({ batch }) => batch.id));
      const taken = batches.filter(({ id }) => !left.has(id));
      return { batches: taken, damaged, rows: taken.reduce((sum, batch) => sum + rowsOf(batch), 0) };
    } catch (error) {
      if (error instanceof BatchGone) continue;
      if (!(error instanceof BadBatch)) throw error;
      const { message } = new LedgerDamaged(error.batch.import_no, "its rows are not what was written", { cause: error.cause });
      bad.set(error.batch.id, { batch: error.batch, reason: message });
    }
  }
}
