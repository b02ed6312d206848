import { LedgerUnavailable } from "../ledger/errors.ts";
import { openBrowserBench } from "./browser-bench.ts";
import type { BenchStore } from "./bench-store.ts";
import { openMemoryBench } from "./memory-bench.ts";

let opened: Promise<BenchStore> | null = null;

async function open(): Promise<BenchStore> {
  try {
    return await openBrowserBench();
  } catch (error) {
    if (!(error instanceof LedgerUnavailable)) throw error;
    return openMemoryBench();
  }
}

/**
 * The bench log of this browser, opened once; where it gives no storage, one in memory (`kept` is false).
 *
 * @throws {LedgerNewer} because then nothing may be written
 */
export function openBench(): Promise<BenchStore> {
  opened ??= open().catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}
