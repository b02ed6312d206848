import { openBrowserEngine } from "../../../src/db/open-browser.ts";
import { prepareSchema } from "../../../src/db/prepare.ts";
import { rowsStream } from "../../../src/db/rows-stream.ts";
import { openBrowserBench } from "../../../src/records/bench-log/browser-bench.ts";
import { openBrowserLedger } from "../../../src/records/ledger/browser-ledger.ts";
import { askToKeep } from "../../../src/records/ledger/persist.ts";
import { loadVocabulary } from "../../../src/records/load-vocabulary.ts";
import { rebuild } from "../../../src/records/rebuild.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";
import { BENCH_CONTRACT } from "../../records/bench-log/contract.ts";
import { bytes, CONTRACT, newBatch, refused, same } from "../../records/ledger/contract.ts";

/** The store below the ledger, to do what only a broken disk or another version does. */
function raw(name: string, version?: number): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function change(name: string, store: string, work: (store: IDBObjectStore) => void): Promise<void> {
  const database = await raw(name), transaction = database.transaction(store, "readwrite");
  work(transaction.objectStore(store));
  await new Promise((done) => (transaction.oncomplete = done));
  database.close();
}

async function check(claim: string): Promise<void> {
  const name = `trial ${claim}`;
  await CONTRACT.find((one) => one.claim === claim)?.check(() => openBrowserLedger(name));
}

async function benchCheck(claim: string): Promise<void> {
  await BENCH_CONTRACT.find((one) => one.claim === claim)?.check(() => openBrowserBench(`trial bench ${claim}`));
}

const trial = {
  openBrowserEngine, prepareSchema, rowsStream, openBrowserLedger, askToKeep, loadVocabulary, rebuild, bytes, newBatch, refused, same,
  raw, change, check, benchCheck, openBrowserBench,
};
guardScripts();
Object.assign(globalThis, { trial });

declare global {
  var trial: Trial;
}
export type Trial = typeof trial;
