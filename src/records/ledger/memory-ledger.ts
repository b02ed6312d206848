import { currentRejects } from "./current-rejects.ts";
import { ImportGone } from "./errors.ts";
import type { Batch, Changed, Ledger, NewBatch, Reject } from "./ledger.ts";
import { manifest } from "./manifest.ts";
import { packed, storedTable, unpacked } from "./packing.ts";

interface Kept {
  readonly batch: Batch;
  readonly contents: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
  readonly rejects: readonly Reject[];
}

/** What several ledgers in memory look at together, as tabs do at one disk. */
export class MemoryShelf {
  readonly kept: Kept[] = [];
  readonly settings = new Map<string, string>();
  readonly listeners = new Map<Ledger, () => void>();
  next_import_no = 1;
  /** The work that is done alone, one after the other. */
  turns: Promise<unknown> = Promise.resolve();
}

async function entry(batch: NewBatch, shelf: MemoryShelf): Promise<Kept> {
  const tables = await packed(batch.payloads);
  const kept = { ...manifest(batch, tables), import_no: shelf.next_import_no++ };
  return { batch: kept, contents: new Map(tables.map(({ table, content }) => [table, content])), rejects: batch.rejects };
}

function putSettings(shelf: MemoryShelf, settings: Changed): void {
  for (const [name, value] of Object.entries(settings)) {
    if (value === null) shelf.settings.delete(name);
    else shelf.settings.set(name, value);
  }
}

/** A ledger that is gone with the process: for the headless report and for tests. It behaves as the browser's does. */
export function openMemoryLedger(shelf = new MemoryShelf()): Ledger {
  const changed = () => shelf.listeners.forEach((callback, ledger) => ledger !== own && callback());
  const own: Ledger = {
    batches: async () => shelf.kept.map(({ batch }) => batch),
    async payload(batch, table) {
      const stored = storedTable(batch, table);
      return unpacked(batch, stored, shelf.kept.find((one) => one.batch.id === batch.id)?.contents.get(table) ?? null);
    },
    rejects: async (without) => currentRejects(shelf.kept.filter(({ batch }) => batch.id !== without).map(({ batch, rejects }) => ({ files: batch.files, rejects }))),
    async append(batch, in_place_of) {
      const kept = await entry(batch, shelf), at = shelf.kept.findIndex((one) => one.batch.id === in_place_of);
      if (in_place_of !== undefined && at < 0) throw new ImportGone();
      if (at >= 0) shelf.kept.splice(at, 1);
      shelf.kept.push(kept);
      changed();
      return kept.batch;
    },
    async replaceAll(batch, settings) {
      const kept = await entry(batch, shelf);
      shelf.kept.splice(0, shelf.kept.length, kept);
      shelf.settings.clear();
      putSettings(shelf, settings);
      changed();
      return kept.batch;
    },
    alone(work) {
      const turn = shelf.turns.then(work);
      shelf.turns = turn.catch(() => undefined);
      return turn;
    },
    remove: (batch_id, settings = {}) => own.alone(async () => {
      const at = shelf.kept.findIndex(({ batch }) => batch.id === batch_id);
      if (at < 0) return false;
      shelf.kept.splice(at, 1);
      putSettings(shelf, settings);
      changed();
      return true;
    }),
    clear: (left = {}) => own.alone(async () => {
      shelf.kept.length = 0;
      shelf.settings.clear();
      putSettings(shelf, left);
      changed();
    }),
    settings: async () => Object.fromEntries(shelf.settings),
    setting: async (name) => shelf.settings.get(name) ?? null,
    async keepSetting(name, value) {
      putSettings(shelf, { [name]: value });
      changed();
    },
    async changeSetting(name, change) {
      const kept = shelf.settings.get(name) ?? null, now = change(kept);
      if (now === kept) return now;
      putSettings(shelf, { [name]: now });
      changed();
      return now;
    },
    onChange(callback) {
      shelf.listeners.set(own, callback);
      return () => void shelf.listeners.delete(own);
    },
    close: () => void shelf.listeners.delete(own),
  };
  return own;
}
