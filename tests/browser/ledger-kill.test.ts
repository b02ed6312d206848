import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type App, closeAll, openApp } from "./harness.ts";
import { builtPage } from "./pages/built.ts";

/** Fewer make a quick check while working; the promise is 20 and 100. */
const KILLS = Number(process.env.SALTBENCH_KILLS ?? 20);
const RELOADS = Number(process.env.SALTBENCH_RELOADS ?? 100);

/** Two payloads and one list of rows to fix belong to each import. */
interface Found { whole: number[]; batches: number; payloads: number; rejects: number }

const home = mkdtempSync(join(tmpdir(), "saltbench-kill-"));
const acknowledged = new Set<number>();
let built: Awaited<ReturnType<typeof builtPage>>;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(async () => {
  await closeAll();
  built.remove();
  rmSync(home, { recursive: true, force: true });
});

/** Writes one import after the other for ever, each of another size, and says which are on the disk. */
async function writeWithoutEnd({ page }: App): Promise<void> {
  await page.exposeFunction("written", (import_no: number) => void acknowledged.add(import_no));
  await page.evaluate(async () => {
    const { written } = globalThis as unknown as { written(import_no: number): Promise<void> };
    const ledger = await trial.openBrowserLedger("trial kill");
    void (async () => {
      for (let seed = 1; ; seed += 1) {
        const { import_no } = await ledger.append(trial.newBatch(seed, 2_000 + (seed * 7_919) % 90_000));
        // Not awaited: the next write begins at once, so that a kill falls into one.
        void written(import_no);
      }
    })();
  });
}

/** Reads every import after `from` to its last byte and counts what lies in the stores. */
const found = ({ page }: App, from: number): Promise<Found> => page.evaluate(async (from) => {
  const ledger = await trial.openBrowserLedger("trial kill"), batches = await ledger.batches(), whole = [];
  for (const batch of batches) {
    for (const { table } of batch.import_no > from ? batch.tables : []) await ledger.payload(batch, table);
    whole.push(batch.import_no);
  }
  const database = await trial.raw("trial kill");
  const transaction = database.transaction(["batches", "payloads", "rejects"]);
  const count = (name: string) => new Promise<number>((resolve) => {
    const request = transaction.objectStore(name).count();
    request.onsuccess = () => resolve(request.result);
  });
  const counts = { whole, batches: await count("batches"), payloads: await count("payloads"), rejects: await count("rejects") };
  database.close();
  ledger.close();
  return counts;
}, from);

function expectAllAndWhole({ whole, batches, payloads, rejects }: Found): void {
  expect([...acknowledged].filter((import_no) => !whole.includes(import_no)), "acknowledged and lost").toEqual([]);
  expect({ batches, payloads, rejects }).toEqual({ batches: whole.length, payloads: 2 * whole.length, rejects: whole.length });
}

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

describe("no import that was acknowledged is lost and none is there by half", () => {
  test(`when the browser is killed ${KILLS} times while it writes`, async () => {
    let last = 0;
    for (let kill = 0; kill < KILLS; kill += 1) {
      const app = await openApp({ folder: built.folder, profileDir: join(home, "killed") });
      const before = acknowledged.size;
      const there = await found(app, last);
      expectAllAndWhole(there);
      last = there.whole.at(-1) ?? 0;
      await writeWithoutEnd(app);
      await expect.poll(() => acknowledged.size, { timeout: 30_000, interval: 5 }).toBeGreaterThan(before);
      await pause((kill * 37) % 211);
      await app.kill();
    }
    expect(acknowledged.size).toBeGreaterThanOrEqual(KILLS);
  }, 300_000);

  test(`when the page is reloaded ${RELOADS} times, in the midst of writing each time`, async () => {
    const app = await openApp({ folder: built.folder, profileDir: join(home, "reloaded") });
    let last = 0;
    acknowledged.clear();
    await writeWithoutEnd(app);
    for (let reload = 0; reload < RELOADS; reload += 1) {
      await app.page.reload();
      const there = await found(app, last);
      expectAllAndWhole(there);
      last = there.whole.at(-1) ?? 0;
      await app.page.evaluate(async () => {
        const ledger = await trial.openBrowserLedger("trial kill");
        const { written } = globalThis as unknown as { written(import_no: number): Promise<void> };
        for (let seed = 1; seed <= 2; seed += 1) void ledger.append(trial.newBatch(seed, 20_000)).then(({ import_no }) => written(import_no));
      });
    }
    await app.close();
  }, 300_000);
});
