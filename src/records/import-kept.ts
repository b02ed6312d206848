import type { Batch } from "./ledger/ledger.ts";

/** The import is written and safe, but the engine could not show it: it has to be filled from the ledger again. */
export class ImportKept extends Error {
  override readonly name = "ImportKept";
  constructor(readonly batch: Batch, options?: ErrorOptions) {
    super("The import was kept, but could not be shown. Reload this page.", options);
  }
}
