import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CONTRACT } from "../records/ledger/contract.ts";
import { type App, closeAll, openApp } from "./harness.ts";
import { builtPage } from "./pages/built.ts";

let app: App, built: Awaited<ReturnType<typeof builtPage>>;
beforeAll(async () => {
  built = await builtPage();
  app = await openApp({ folder: built.folder });
});
afterAll(async () => {
  app.expectClean();
  await closeAll();
  built.remove();
});

describe("the ledger in a real browser", () => {
  test.each(CONTRACT)("$claim", async ({ claim }) => {
    await expect(app.page.evaluate((name) => trial.check(name), claim)).resolves.toBeUndefined();
  });

  test("says at once in a second tab that the first has changed it", async () => {
    const second = await app.context.newPage();
    await second.goto(app.url);
    const told = second.evaluate(async () => {
      const ledger = await trial.openBrowserLedger("trial tabs");
      const changed = new Promise<void>((resolve) => ledger.onChange(resolve));
      document.title = "listening";
      await changed;
      return (await ledger.batches()).length;
    });
    await second.waitForFunction(() => document.title === "listening");
    await app.page.evaluate(async () => { await (await trial.openBrowserLedger("trial tabs")).append(trial.newBatch(1)); });
    expect(await told).toBe(1);
    await second.close();
  });

  test("answers whether the browser will keep the records", async () => {
    expect(["kept", "at risk"]).toContain(await app.page.evaluate(() => trial.askToKeep()));
  });
});

describe("a ledger that is not as it was", () => {
  test("with one flipped bit is damaged in that import alone, and a rebuild goes on without it", async () => {
    const told = await app.page.evaluate(async () => {
      const ledger = await trial.openBrowserLedger("trial bit");
      const payload = (ticket_no: string) =>
        ({ table: "tickets" as const, rows: 1, stream: trial.rowsStream({ ticket_no: "varchar" }, [{ ticket_no }]) });
      const first = await ledger.append({ ...trial.newBatch(1), payloads: [payload("T1")] });
      await ledger.append({ ...trial.newBatch(2), payloads: [payload("T2")] });
      await trial.change("trial bit", "payloads", (store) => {
        const request = store.get([1, "tickets"]);
        request.onsuccess = () => {
          const content: Uint8Array = request.result;
          content[50] = (content[50] ?? 0) ^ 8;
          store.put(content, [1, "tickets"]);
        };
      });
      const { message } = await trial.refused(ledger.payload(first, "tickets"), "LedgerDamaged");
      const engine = await trial.openBrowserEngine();
      await trial.prepareSchema(engine);
      const { damaged } = await trial.rebuild(engine, ledger);
      const rows = await engine.rows("select ticket_no, import_no from ledger.tickets");
      await engine.close();
      return { message, damaged: damaged.map(({ batch }) => batch.import_no), rows };
    });
    expect(told).toEqual({
      message: "Import 1 can no longer be read: its tickets have changed on the disk. Import its files again or restore a backup.",
      damaged: [1], rows: [{ ticket_no: "T2", import_no: 2 }],
    });
  });

  test("with a payload missing is damaged in that import; with a note that is none only that import is broken, and can be taken out", async () => {
    await app.page.evaluate(async () => {
      const ledger = await trial.openBrowserLedger("trial holes");
      const first = await ledger.append(trial.newBatch(1));
      await trial.change("trial holes", "payloads", (store) => store.delete([1, "tickets"]));
      await trial.refused(ledger.payload(first, "tickets"), "LedgerDamaged");
      await trial.change("trial holes", "batches", (store) => store.put({ import_no: 1, id: "x" }));
      const later = await trial.openBrowserLedger("trial holes");
      await later.append(trial.newBatch(2));
      const batches = await later.batches(), [broken] = batches;
      trial.same(batches.map(({ import_no, broken: is }) => [import_no, is ?? false]), [[1, true], [2, false]]);
      trial.same((await later.rejects()).map(({ line }) => line), [1, 2], "rejects");
      await later.remove(broken?.id ?? "");
      trial.same((await later.batches()).map(({ import_no }) => import_no), [2]);
      const database = await trial.raw("trial holes"), keys = database.transaction("payloads").objectStore("payloads").getAllKeys();
      await new Promise((done) => (keys.onsuccess = done));
      trial.same(keys.result, [[2, "findings"], [2, "tickets"]]);
      database.close();
    });
  });

  test("written by a newer version is refused and left untouched, be it the whole store or one import in it", async () => {
    await app.page.evaluate(async () => {
      await (await trial.openBrowserLedger("trial newer")).append(trial.newBatch(1));
      await trial.change("trial newer", "batches", (store) => store.put({ import_no: 7, ledger_version: 2, novel: true }));
      const ledger = await trial.openBrowserLedger("trial newer");
      await trial.refused(ledger.batches(), "LedgerNewer");
      await trial.refused(ledger.append(trial.newBatch(2)), "LedgerNewer");
      await trial.refused(ledger.clear(), "LedgerNewer");
      ledger.close();
      (await trial.raw("trial newer", 2)).close();
      await trial.refused(trial.openBrowserLedger("trial newer"), "LedgerNewer");
      const database = await trial.raw("trial newer");
      trial.same(database.version, 2);
      const all = database.transaction("batches").objectStore("batches").getAllKeys();
      await new Promise((done) => (all.onsuccess = done));
      trial.same(all.result, [1, 7]);
      database.close();
    });
  });

  test("taken over by a newer Saltbench in another tab says so instead of writing", async () => {
    const message = await app.page.evaluate(async () => {
      const ledger = await trial.openBrowserLedger("trial taken");
      await ledger.append(trial.newBatch(1));
      (await trial.raw("trial taken", 2)).close();
      return (await trial.refused(ledger.append(trial.newBatch(2)), "LedgerUnavailable")).message;
    });
    expect(message).toMatch(/another tab opened a newer Saltbench/);
  });
});

test("a full disk takes nothing of an import, keeps all before it, and writes again once there is room", async () => {
  const small = await openApp({ folder: built.folder });
  const session = await small.context.newCDPSession(small.page), origin = new URL(small.url).origin;
  // The browser remembers for half a minute how much room there was: it has to be little before the first write.
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1_000_000 });
  const message = await small.page.evaluate(async () => {
    const ledger = await trial.openBrowserLedger("trial full");
    await ledger.append(trial.newBatch(1));
    await ledger.keepSetting("a", "b");
    const { message } = await trial.refused(ledger.append(trial.newBatch(2, 5_000_000)), "LedgerFull");
    await trial.refused(ledger.replaceAll(trial.newBatch(3, 5_000_000), { a: "c" }), "LedgerFull");
    trial.same(await ledger.setting("a"), "b");
    trial.same((await ledger.batches()).map(({ import_no }) => import_no), [1]);
    trial.same((await ledger.rejects()).length, 1);
    return message;
  });
  expect(message).toMatch(/no room left .* everything before it is safe/);
  await session.send("Storage.overrideQuotaForOrigin", { origin });
  await small.page.evaluate(async () => {
    const ledger = await trial.openBrowserLedger("trial full");
    const [first] = await ledger.batches();
    trial.same(first && (await ledger.payload(first, "tickets")).length, 200);
    await ledger.append(trial.newBatch(2, 5_000_000));
    trial.same((await ledger.batches()).length, 2);
  });
  await small.close();
});
