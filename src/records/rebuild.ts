import type { Engine, Report } from "../db/engine.ts";
import { DamagedRows } from "../db/errors.ts";
import { rowsStream } from "../db/rows-stream.ts";
import { clearImported } from "../db/prepare.ts";
import { LedgerDamaged } from "./ledger/errors.ts";
import type { Batch, Ledger } from "./ledger/ledger.ts";
import { brokenReason } from "./ledger/manifest.ts";
import { putTogether } from "./merging/put-together.ts";
import { TablesAhead } from "./tables-ahead.ts";

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

/** An import of which some stands already and the rest cannot be had: the transaction is lost, the import is left out next time. */
class BadBatch extends Error {
  constructor(readonly damaged: DamagedBatch) {
    super(damaged.reason);
  }
}

const isNotWhatWasWritten = ({ import_no }: Batch, cause: DamagedRows): string => new LedgerDamaged(import_no, "its rows are not what was written", { cause }).message;

/** Another window took an import out while it was being read. */
class BatchGone extends Error {}

/** All tables of one import, or nothing of it. @returns why it is left out, null when it stands */
async function loadBatch(inside: Engine, batch: Batch, { ledger, tables }: Pick<Pass, "ledger" | "tables">): Promise<DamagedBatch | null> {
  let begun = false;
  try {
    for (const { table, rows } of batch.tables) {
      const stream = await tables.take(batch, table);
      begun = true;
      await inside.load(`ledger.${table}`, stream, rows, { import_no: batch.import_no });
    }
    return null;
  } catch (error) {
    if (!(error instanceof DamagedRows || error instanceof LedgerDamaged)) throw error;
    if (error instanceof LedgerDamaged && (await ledger.batches()).every(({ id }) => id !== batch.id)) throw new BatchGone("", { cause: error });
    const damaged = { batch, reason: error instanceof DamagedRows ? isNotWhatWasWritten(batch, error) : error.message };
    if (begun) throw new BadBatch(damaged);
    return damaged;
  }
}

interface Pass {
  readonly ledger: Ledger;
  readonly batches: readonly Batch[];
  readonly tables: TablesAhead;
  readonly bad: ReadonlyMap<string, DamagedBatch>;
  readonly report: Report;
  readonly signal: AbortSignal | undefined;
  readonly derive: "whole" | "first";
}

/** One attempt, all in one transaction of the engine. */
async function fill(inside: Engine, { ledger, batches, tables, bad, report, signal, derive }: Pass): Promise<DamagedBatch[]> {
  const total = batches.reduce((sum, batch) => sum + rowsOf(batch), 0);
  const damaged: DamagedBatch[] = [];
  let done = 0;
  await clearImported(inside);
  for (const batch of batches) {
    signal?.throwIfAborted();
    report({ step: "Reading your records", done, total });
    const known = batch.broken ? { batch, reason: brokenReason(batch.import_no) } : bad.get(batch.id), left_out = known ?? await loadBatch(inside, batch, { ledger, tables });
    if (left_out) damaged.push(left_out);
    done += rowsOf(batch);
  }
  await noteImports(inside, batches);
  report({ step: "Putting them together", done, total });
  await putTogether(inside, ledger, derive);
  return damaged;
}

/** How an engine is filled. */
export interface Filling {
  readonly report?: Report;
  readonly signal?: AbortSignal | undefined;
  /** "first" puts off what the orders of the day do not need (`deriveFirst`). */
  readonly derive?: "whole" | "first";
  /** Tables that are being read from the disk already. */
  readonly tables?: TablesAhead | undefined;
}

/**
 * Fills the engine's tables from the ledger and derives the rest, all or nothing: until it is done, other questions wait.
 *
 * An import that cannot be read back is left out whole and told in `damaged`; it does not stop the others.
 *
 * @throws {LedgerNewer} {LedgerUnavailable} when the list of imports itself cannot be read
 */
export async function rebuild(engine: Engine, ledger: Ledger, { report = () => undefined, signal, derive = "whole", tables: ahead }: Filling = {}): Promise<Rebuilt> {
  const bad = new Map<string, DamagedBatch>();
  let begun = ahead;
  for (;;) {
    const batches = await ledger.batches(), tables = begun ?? new TablesAhead(ledger, batches.filter(({ id }) => !bad.has(id)));
    begun = undefined;
    try {
      const damaged = await engine.transaction((inside) => fill(inside, { ledger, batches, tables, bad, report, signal, derive }), signal);
      const left = new Set(damaged.map(({ batch }) => batch.id));
      const taken = batches.filter(({ id }) => !left.has(id));
      return { batches: taken, damaged, rows: taken.reduce((sum, batch) => sum + rowsOf(batch), 0) };
    } catch (error) {
      if (error instanceof BatchGone) continue;
      if (!(error instanceof BadBatch)) throw error;
      bad.set(error.damaged.batch.id, error.damaged);
    }
  }
}
