import type { Engine } from "./db/engine.ts";
import { thisVersion } from "./offline/this-version.ts";
import type { BenchStore } from "./records/bench-log/bench-store.ts";
import { openBrowserLedger } from "./records/ledger/browser-ledger.ts";
import { LedgerDamaged, LedgerUnavailable } from "./records/ledger/errors.ts";
import type { Ledger } from "./records/ledger/ledger.ts";
import { openMemoryLedger } from "./records/ledger/memory-ledger.ts";
import { askToKeep, type Keeping } from "./records/ledger/persist.ts";
import { lastDay } from "./records/last-day.ts";
import { lookInWorker } from "./records/looking/look-in-worker.ts";
import type { Look } from "./records/looking/look.ts";
import { readAhead } from "./records/read-ahead.ts";
import { readInWorker } from "./records/read-in-worker.ts";
import type { NamedFile, ReadFile } from "./records/reading/read-file.ts";
import { today } from "./records/today.ts";

/** What the session needs of the place it runs in; tests bring their own. */
export interface World {
  openLedger(): Promise<Ledger>;
  /** Tickets at the bench, apart from the records. */
  openBench(): Promise<BenchStore>;
  openEngine(): Promise<Engine>;
  /** Reads a file that comes in, best away from the screen. */
  readonly read: ReadFile;
  /** Looks at a file before it comes in, best away from the screen. */
  readonly look: Look;
  demoFiles(): Promise<readonly NamedFile[]>;
  /** True once, when nobody seems to have been here before: then the demo may be read while the ledger is still being opened. */
  firstTime?(): boolean;
  /** The last morning sheet as text, if it was made from the records so marked, else null, and then it is forgotten. */
  keptSheet?(mark: string): string | null;
  /** Keeps it for the next opening, outside the records and this browser's alone; null forgets it. */
  keepSheet?(kept: { readonly mark: string; readonly text: string } | null): void;
  /** Version of the program; null, or absent, while it runs from its sources. */
  program?(): string | null;
  /** Whether the browser promised to keep the records; `ask` may put the question to the owner. */
  keeping(ask: boolean): Promise<Keeping>;
  /** Does work while no other tab does it. */
  alone<T>(work: () => Promise<T>): Promise<T>;
  /** Today as `YYYY-MM-DD`, where the reader is. */
  day(): string;
}

/**
 * The ledger of this world; where it gives none, one in memory, with the reason in `unkept`.
 *
 * @throws {LedgerNewer} because then nothing may be written
 */
export async function ledgerOf(world: World): Promise<{ ledger: Ledger; unkept: Error | null }> {
  try {
    const ledger = await world.openLedger();
    await ledger.batches();
    return { ledger, unkept: null };
  } catch (error) {
    if (!(error instanceof LedgerUnavailable || error instanceof LedgerDamaged)) throw error;
    return { ledger: openMemoryLedger(), unkept: error };
  }
}

/** What the demo calls itself and its money until the owner says otherwise. */
export const INVENTED = { shop: "Harrow Quay Reel Bench", currency: "cu" };

/** The demo's files, and the way to read them. */
export interface Demo { readonly files: Promise<readonly NamedFile[]>; readonly read: Promise<ReadFile> }

/** At a first visit the demo is read while the engine is still starting. */
export function demoAhead(world: World): Demo {
  const files = world.demoFiles();
  // Fetched meanwhile; whoever needs it hears of a failure.
  import("./records/importing.ts").catch(() => undefined);
  return { files, read: files.then((some) => readAhead(some, lastDay(world.day()), world.read), () => world.read) };
}

const DEMO = import.meta.glob<string>("../data/demo/*.csv", { query: "?url", import: "default", eager: true });

/** A file of our own build. @throws {Error} when the app's own server does not give it */
async function ownFile(name: string, address: string): Promise<NamedFile> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`The file ${name} of the demo is not there (${response.status}).`);
  return { name, blob: await response.blob() };
}

async function keeping(ask: boolean): Promise<Keeping> {
  if (ask) return askToKeep();
  const persisted = await navigator.storage?.persisted?.();
  return persisted === undefined ? "unknown" : persisted ? "kept" : "at risk";
}

/** A browser that forbids it, or has no room for it, keeps no sheet: nothing depends on it. */
function whereAllowed<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

const SEEN = "saltbench:seen";

/** Kept outside the ledger so that it can be asked at once; where the browser forbids it, nothing is done ahead. */
function firstTime(): boolean {
  return whereAllowed(() => {
    if (localStorage.getItem(SEEN) !== null) return false;
    localStorage.setItem(SEEN, "yes");
    return true;
  }) ?? false;
}

const SHEET = "saltbench:sheet";

function keptSheet(mark: string): string | null {
  return whereAllowed(() => {
    const kept = localStorage.getItem(SHEET), head = `${mark}\n`;
    if (kept?.startsWith(head)) return kept.slice(head.length);
    localStorage.removeItem(SHEET);
    return null;
  });
}

const keepSheet = (kept: { readonly mark: string; readonly text: string } | null): void =>
  void whereAllowed(() => (kept ? localStorage.setItem(SHEET, `${kept.mark}\n${kept.text}`) : localStorage.removeItem(SHEET)));

/** The browser this runs in. */
export const browser: World = {
  openLedger: () => openBrowserLedger(),
  keptSheet,
  keepSheet,
  program: thisVersion,
  openBench: async () => (await import("./records/bench-log/open-bench.ts")).openBench(),
  // Its code is large: the frame stands before it is read.
  openEngine: async () => (await import("./db/open-browser.ts")).openBrowserEngine(),
  read: readInWorker,
  look: lookInWorker,
  demoFiles: () => Promise.all(Object.entries(DEMO).map(([path, address]) => ownFile(path.replace(/^.*\//, ""), address))),
  firstTime,
  keeping,
  alone: (work) => (navigator.locks ? navigator.locks.request("saltbench: first visit", work) : work()),
  day: () => today(),
};
