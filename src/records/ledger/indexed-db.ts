import { LEDGER_VERSION } from "./ledger.ts";
import { LedgerFull, LedgerNewer, LedgerUnavailable } from "./errors.ts";

export type Store = "batches" | "payloads" | "rejects" | "settings";
export const STORES: readonly Store[] = ["batches", "payloads", "rejects", "settings"];

/** What the storage says, in the owner's words. */
export function ledgerError(cause: unknown): Error {
  const name = cause instanceof DOMException ? cause.name : "";
  if (name === "QuotaExceededError") return new LedgerFull({ cause });
  if (name === "VersionError") return new LedgerNewer({ cause });
  if (name === "InvalidStateError") {
    return new LedgerUnavailable("another tab opened a newer Saltbench, or the browser cleared its store. Reload this page.", { cause });
  }
  if (cause instanceof DOMException) return new LedgerUnavailable(`the browser's store does not answer (${cause.message}).`, { cause });
  return cause instanceof Error ? cause : new LedgerUnavailable("the browser's store failed.", { cause });
}

/** The answer to one request inside a transaction. Await nothing else there, or the transaction closes. */
export function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Resolves once the transaction is on the disk. */
function committed(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new DOMException("the step was taken back", "AbortError"));
  });
}

/** Numbers of imports come from the store's own counter, so that a number is never used for two imports. */
function makeStores(database: IDBDatabase): void {
  database.createObjectStore("batches", { keyPath: "import_no", autoIncrement: true });
  for (const name of ["payloads", "rejects", "settings"]) database.createObjectStore(name);
}

/**
 * Opens a store of the browser.
 *
 * @param make fills one that is not there yet
 * @throws {LedgerNewer} when a later version wrote it; {LedgerUnavailable}
 */
export function openStore(name: string, version: number, make: (database: IDBDatabase) => void): Promise<IDBDatabase> {
  if (!globalThis.indexedDB) throw new LedgerUnavailable("this browser has no store, or forbids it in a private window.");
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.onupgradeneeded = () => make(request.result);
    request.onblocked = () => reject(new LedgerUnavailable("an older Saltbench is open in another tab. Close it, then reload this page."));
    request.onerror = () => reject(ledgerError(request.error));
    request.onsuccess = () => {
      request.result.onversionchange = () => request.result.close();
      resolve(request.result);
    };
  });
}

/** @throws {LedgerNewer} or {LedgerUnavailable} */
export const openDatabase = (name: string): Promise<IDBDatabase> => openStore(name, LEDGER_VERSION, makeStores);

/** What one transaction over all stores of the ledger does. */
export const transacted = <T>(database: IDBDatabase, mode: "readonly" | "readwrite", work: (store: (name: Store) => IDBObjectStore) => Promise<T>): Promise<T> =>
  transactedOver(database, STORES, mode, work);

/** What one transaction over these stores does; `strict` waits for the disk itself, not for its cache. */
export async function transactedOver<T, Name extends string>(
  database: IDBDatabase, stores: readonly Name[], mode: "readonly" | "readwrite", work: (store: (name: Name) => IDBObjectStore) => Promise<T>,
): Promise<T> {
  try {
    const transaction = database.transaction(stores, mode, { durability: "strict" });
    const [result] = await Promise.all([work((name) => transaction.objectStore(name)), committed(transaction)]);
    return result;
  } catch (error) {
    throw ledgerError(error);
  }
}
