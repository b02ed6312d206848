import { currentRejects } from "./current-rejects.ts";
import { answer, openDatabase, STORES, transacted, type Store } from "./indexed-db.ts";
import { ImportGone } from "./errors.ts";
import type { Batch, Changed, Ledger, NewBatch, Reject } from "./ledger.ts";
import { manifest, readManifests } from "./manifest.ts";
import { packed, storedTable, unpacked, type Packed } from "./packing.ts";
import { counted } from "./write-count.ts";

type Stores = (name: Store) => IDBObjectStore;

/** All that is stored of one import under its number, whatever follows the number in the key. */
const allOf = (import_no: number) => IDBKeyRange.bound([import_no], [import_no, []]);

async function added(store: Stores, batch: NewBatch, tables: readonly Packed[]): Promise<Batch> {
  const kept = manifest(batch, tables), import_no = (await answer(store("batches").add(kept))) as number;
  for (const { table, content } of tables) store("payloads").add(content, [import_no, table]);
  store("rejects").add(batch.rejects, import_no);
  return { ...kept, import_no };
}

function takenOut(store: Stores, import_no: number): void {
  store("batches").delete(import_no);
  store("rejects").delete(import_no);
  store("payloads").delete(allOf(import_no));
}

function putSettings(store: Stores, settings: Changed): void {
  for (const [name, value] of Object.entries(settings)) {
    if (value === null) store("settings").delete(name);
    else store("settings").put(value, name);
  }
}

const isThere = async (store: Stores, import_no: number): Promise<boolean> => (await answer(store("batches").count(import_no))) > 0;

/** What a step gives when it changed nothing, so that nobody need be told. */
class Unchanged<T> { constructor(readonly value: T) {} }

class BrowserLedger implements Ledger {
  readonly #channel: BroadcastChannel;
  #read = false;

  constructor(private readonly name: string, private readonly database: IDBDatabase) {
    this.#channel = new BroadcastChannel(name);
  }

  async batches(): Promise<readonly Batch[]> {
    const [found, numbers] = await transacted(this.database, "readonly", (store) =>
      Promise.all([answer<unknown[]>(store("batches").getAll()), answer(store("batches").getAllKeys())]));
    const batches = readManifests(found, numbers as number[]);
    this.#read = true;
    return batches;
  }

  async payload(batch: Batch, table: string): Promise<Uint8Array> {
    const stored = storedTable(batch, table);
    const content: unknown = await transacted(this.database, "readonly", (store) =>
      answer(store("payloads").get([batch.import_no, table])));
    return unpacked(batch, stored, content instanceof Uint8Array ? (content as Uint8Array<ArrayBuffer>) : null);
  }

  async rejects(without?: string): Promise<readonly Reject[]> {
    const batches = (await this.batches()).filter(({ id }) => id !== without);
    const [numbers, lists] = await transacted(this.database, "readonly", (store) =>
      Promise.all([answer(store("rejects").getAllKeys()), answer<Reject[][]>(store("rejects").getAll())]));
    const of = new Map(numbers.map((number, at) => [number, lists[at] ?? []]));
    return currentRejects(batches.map(({ files, import_no }) => ({ files, rejects: of.get(import_no) ?? [] })));
  }

  async append(batch: NewBatch, in_place_of?: string): Promise<Batch> {
    const tables = await packed(batch.payloads);
    if (in_place_of === undefined) return this.#write((store) => added(store, batch, tables));
    const gone = await this.#numberOf(in_place_of);
    return this.#write(async (store) => {
      if (gone === undefined || !(await isThere(store, gone))) throw new ImportGone();
      takenOut(store, gone);
      return added(store, batch, tables);
    });
  }

  async replaceAll(batch: NewBatch, settings: Readonly<Record<string, string>>): Promise<Batch> {
    const tables = await packed(batch.payloads);
    await this.#checked();
    return this.#change(async (store) => {
      for (const name of STORES) store(name).clear();
      putSettings(store, settings);
      return added(store, batch, tables);
    });
  }

  alone<T>(work: () => Promise<T>): Promise<T> {
    return navigator.locks.request(`${this.name}: import`, work) as Promise<T>;
  }

  async remove(batch_id: string, settings: Changed = {}): Promise<boolean> {
    const import_no = await this.#numberOf(batch_id);
    if (import_no === undefined) return false;
    return this.alone(() => this.#write(async (store) => {
      if (!(await isThere(store, import_no))) return new Unchanged(false);
      takenOut(store, import_no);
      putSettings(store, settings);
      return true;
    }));
  }

  async #numberOf(batch_id: string): Promise<number | undefined> {
    return (await this.batches()).find(({ id }) => id === batch_id)?.import_no;
  }

  async clear(left: Readonly<Record<string, string>> = {}): Promise<void> {
    await this.alone(() => this.#write(async (store) => {
      for (const name of STORES) store(name).clear();
      putSettings(store, left);
    }));
  }

  async settings(): Promise<Readonly<Record<string, string>>> {
    const [names, values] = await transacted(this.database, "readonly", (store) =>
      Promise.all([answer(store("settings").getAllKeys()), answer<unknown[]>(store("settings").getAll())]));
    return Object.fromEntries(names.map((name, at) => [String(name), String(values[at])]));
  }

  async setting(name: string): Promise<string | null> {
    const value: unknown = await transacted(this.database, "readonly", (store) => answer(store("settings").get(name)));
    return typeof value === "string" ? value : null;
  }

  async keepSetting(name: string, value: string | null): Promise<void> {
    await this.#write(async (store) => putSettings(store, { [name]: value }));
  }

  changeSetting(name: string, change: (kept: string | null) => string | null): Promise<string | null> {
    return this.#write(async (store) => {
      const found: unknown = await answer(store("settings").get(name)), kept = typeof found === "string" ? found : null, now = change(kept);
      if (now === kept) return new Unchanged(now);
      putSettings(store, { [name]: now });
      return now;
    });
  }

  onChange(callback: () => void): () => void {
    const listener = () => callback();
    this.#channel.addEventListener("message", listener);
    return () => this.#channel.removeEventListener("message", listener);
  }

  close(): void {
    this.#channel.close();
    this.database.close();
  }

  async #checked(): Promise<void> {
    if (!this.#read) await this.batches();
  }

  /** Nothing is changed where a newer version wrote. */
  #write<T>(work: (store: Stores) => Promise<T | Unchanged<T>>): Promise<T> {
    return counted(async () => {
      await this.#checked();
      return this.#change(work);
    });
  }

  async #change<T>(work: (store: Stores) => Promise<T | Unchanged<T>>): Promise<T> {
    const done = await navigator.locks.request(this.name, () => transacted(this.database, "readwrite", work));
    if (done instanceof Unchanged) return done.value;
    this.#channel.postMessage("changed");
    return done;
  }
}

/**
 * The ledger in the browser's own store.
 *
 * @param name of the store; another name is another ledger
 * @throws {LedgerNewer} or {LedgerUnavailable}
 */
export async function openBrowserLedger(name = "saltbench"): Promise<Ledger> {
  return new BrowserLedger(name, await openDatabase(name));
}
