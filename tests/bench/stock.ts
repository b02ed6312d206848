import { join } from "node:path";
import { openApp } from "../browser/harness.ts";
import { builtPage } from "../browser/pages/built.ts";

/** How long the owner waits for the curve of money against jobs, and for the advice to be tried on the past; milliseconds. */
export interface StockTimes {
  readonly groups: number;
  readonly scenarios: number;
  readonly steps: number;
  /** The whole curve, in its worker. */
  readonly curve: number;
  /** The list for another sum. */
  readonly list: number;
  /** From a cancel in the middle of it to its end. */
  readonly cancel: number;
  /** The demo's replay. */
  readonly replay: number;
}

/** @throws {Error} when a cancelled answer came all the same */
export async function stockTimes(groups: number): Promise<StockTimes> {
  const built = await builtPage(join(import.meta.dirname, "stock-page"));
  try {
    const app = await openApp({ folder: built.folder });
    await app.page.waitForFunction(() => "stockTrial" in globalThis);
    const times = await app.page.evaluate(async (wanted) => ({ groups: wanted, ...await stockTrial.budget(wanted), replay: await stockTrial.replay() }), groups);
    app.expectClean();
    await app.close();
    return times;
  } finally {
    built.remove();
  }
}
