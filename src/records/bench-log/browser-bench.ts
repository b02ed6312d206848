import { answer, openStore, transactedOver } from "../ledger/indexed-db.ts";
import { counted } from "../ledger/write-count.ts";
import type { BenchCopy, BenchStore, BenchTicket, Change, Crossed, Entries, Entry, PhotoNote } from "./bench-store.ts";
import { TicketClosed } from "./bench-store.ts";
import { checkedPicture, photoNote } from "./photo-bytes.ts";
import { crossed, firstEntries, shownTickets, written } from "./written.ts";

type Name = "tickets" | "entries" | "photos" | "pictures";
type Stores = (name: Name) => IDBObjectStore;
/** What is stored of a ticket beside its entries, each of which is a row of its own: a writing touches nothing but its field. */
type Head = Omit<BenchTicket, "entries">;

const NAMES: readonly Name[] = ["tickets", "entries", "photos", "pictures"];
/** Newest shape of what is stored; a higher number is refused, never rewritten. */
const VERSION = 1;

function make(database: IDBDatabase): void {
  database.createObjectStore("tickets", { keyPath: "id" });
  database.createObjectStore("photos", { keyPath: ["ticket", "id"] });
  for (const name of ["entries", "pictures"]) database.createObjectStore(name);
}

/** All entries, or all photos, of one ticket. */
const allOf = (id: string) => IDBKeyRange.bound([id], [id, []]);

async function headAt(store: Stores, id: string, atBench: boolean): Promise<Head> {
  const head = (await answer(store("tickets").get(id))) as Head | undefined;
  if (!head || (atBench && head.finished_at !== null)) throw new TicketClosed();
  return head;
}

async function withEntries(store: Stores, head: Head): Promise<BenchTicket> {
  const [keys, values] = await Promise.all([answer(store("entries").getAllKeys(allOf(head.id))), answer<Entry[]>(store("entries").getAll(allOf(head.id)))]);
  return { ...head, entries: new Map((keys as unknown as [string, string][]).map(([, field], at) => [field, values[at] as Entry])) };
}

/** Tickets with their entries, in the order they were begun. */
async function whole(store: Stores, chosen: (heads: Head[]) => readonly Head[] = (heads) => heads): Promise<BenchTicket[]> {
  const heads = (await answer<Head[]>(store("tickets").getAll())).sort((a, b) => (a.begun_at < b.begun_at ? -1 : 1));
  return Promise.all(chosen(heads).map((head) => withEntries(store, head)));
}

function putWhole(store: Stores, { entries, ...head }: BenchTicket): void {
  store("tickets").put(head);
  for (const [field, entry] of entries) store("entries").put(entry, [head.id, field]);
}

async function changed(store: Stores, id: string, change: Change): Promise<Crossed | null> {
  const key = [id, change.field], before = (await answer(store("entries").get(key))) as Entry | undefined, after = written(change, before);
  if (after) store("entries").put(after, key);
  else store("entries").delete(key);
  return crossed(change, before);
}

class BrowserBench implements BenchStore {
  readonly kept = true;
  readonly #channel: BroadcastChannel;
  readonly #listeners = new Set<() => void>();

  constructor(private readonly name: string, private readonly database: IDBDatabase) {
    this.#channel = new BroadcastChannel(name);
    this.#channel.addEventListener("message", () => this.#tell());
  }

  tickets(): Promise<readonly BenchTicket[]> { return this.#read((store) => whole(store, shownTickets)); }

  ticket(id: string): Promise<BenchTicket | null> {
    return this.#read(async (store) => {
      const head = (await answer(store("tickets").get(id))) as Head | undefined;
      return head ? withEntries(store, head) : null;
    });
  }

  async begin(values: Readonly<Record<string, string | null>>): Promise<BenchTicket> {
    const ticket = { id: crypto.randomUUID(), begun_at: new Date().toISOString(), finished_at: null, batch_id: null, entries: firstEntries(values) };
    await this.#write(async (store) => putWhole(store, ticket));
    return ticket;
  }

  write(id: string, changes: readonly Change[]): Promise<readonly Crossed[]> {
    return this.#write(async (store) => {
      await headAt(store, id, true);
      const met = await Promise.all(changes.map((change) => changed(store, id, change)));
      return met.filter((one) => one !== null);
    });
  }

  finish(id: string, batch_id: string, same: (entries: Entries) => boolean = () => true): Promise<boolean> {
    return this.#write(async (store) => {
      const head = await headAt(store, id, true), done = same((await withEntries(store, head)).entries);
      store("tickets").put({ ...head, batch_id, finished_at: done ? new Date().toISOString() : null });
      return done;
    });
  }

  alone<T>(id: string, work: () => Promise<T>): Promise<T> { return navigator.locks.request(`${this.name}: ${id}`, work) as Promise<T>; }

  reopen(id: string): Promise<void> {
    return this.#write(async (store) => void store("tickets").put({ ...(await headAt(store, id, false)), finished_at: null }));
  }

  remove(id: string): Promise<void> {
    return this.#write(async (store) => {
      for (const photo of await answer<PhotoNote[]>(store("photos").getAll(allOf(id)))) store("pictures").delete(photo.id);
      store("photos").delete(allOf(id));
      store("entries").delete(allOf(id));
      store("tickets").delete(id);
    });
  }

  async addPhoto(ticket: string, group: string, picture: Uint8Array<ArrayBuffer>): Promise<PhotoNote> {
    const note = await photoNote(ticket, group, picture);
    return this.#write(async (store) => {
      await headAt(store, ticket, false);
      store("photos").put(note);
      store("pictures").put(picture, note.id);
      return note;
    });
  }

  async photos(ticket: string): Promise<readonly PhotoNote[]> {
    const all = await this.#read((store) => answer<PhotoNote[]>(store("photos").getAll(allOf(ticket))));
    return all.sort((a, b) => (a.taken_at < b.taken_at ? -1 : 1));
  }

  async picture(photo: PhotoNote): Promise<Uint8Array<ArrayBuffer>> {
    return checkedPicture(photo, await this.#read((store) => answer<Uint8Array<ArrayBuffer>>(store("pictures").get(photo.id))));
  }

  removePhoto({ id, ticket }: PhotoNote): Promise<void> {
    return this.#write(async (store) => {
      store("photos").delete([ticket, id]);
      store("pictures").delete(id);
    });
  }

  copy(): Promise<BenchCopy> {
    return this.#read(async (store) => {
      const [tickets, notes, ids, pictures] = await Promise.all([whole(store), answer<PhotoNote[]>(store("photos").getAll()),
        answer(store("pictures").getAllKeys()), answer<Uint8Array<ArrayBuffer>[]>(store("pictures").getAll())]);
      const of = new Map(ids.map((id, at) => [String(id), pictures[at]]));
      return { tickets, photos: notes.flatMap((note) => { const picture = of.get(note.id); return picture ? [{ ...note, picture }] : []; }) };
    });
  }

  replaceAll({ tickets, photos }: BenchCopy): Promise<void> {
    return this.#write(async (store) => {
      for (const name of NAMES) store(name).clear();
      for (const ticket of tickets) putWhole(store, ticket);
      for (const { picture, ...note } of photos) { store("photos").put(note); store("pictures").put(picture, note.id); }
    });
  }

  clear(): Promise<void> { return this.replaceAll({ tickets: [], photos: [] }); }

  onChange(callback: () => void): () => void {
    this.#listeners.add(callback);
    return () => void this.#listeners.delete(callback);
  }

  #tell(): void { for (const callback of this.#listeners) callback(); }

  #read<T>(work: (store: Stores) => Promise<T>): Promise<T> { return transactedOver(this.database, NAMES, "readonly", work); }

  async #write<T>(work: (store: Stores) => Promise<T>): Promise<T> {
    const done = await counted(() => transactedOver(this.database, NAMES, "readwrite", work));
    this.#channel.postMessage("changed");
    this.#tell();
    return done;
  }
}

/**
 * The bench log in the browser's own store.
 *
 * @param name of the store; another name is another log
 * @throws {LedgerNewer} or {LedgerUnavailable}
 */
export async function openBrowserBench(name = "saltbench bench"): Promise<BenchStore> {
  return new BrowserBench(name, await openStore(name, VERSION, make));
}
