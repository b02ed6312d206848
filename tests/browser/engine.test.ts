import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type App, closeAll, openApp } from "./harness.ts";
import { builtPage } from "./pages/built.ts";

let app: App, built: Awaited<ReturnType<typeof builtPage>>;
beforeAll(async () => {
  built = await builtPage();
  app = await openApp({ folder: built.folder });
});
afterAll(async () => {
  await closeAll();
  built.remove();
});

describe("the engine in a real browser, under the app's own policy", () => {
  test("starts, answers, refuses what reaches outside, cancels, and says nothing on the console", async () => {
    const told = await app.page.evaluate(async () => {
      const engine = await trial.openBrowserEngine();
      await trial.prepareSchema(engine);
      await trial.loadVocabulary(engine);
      const cancel = new AbortController();
      setTimeout(() => cancel.abort("enough"), 100);
      const failed = (error: unknown) => (error instanceof Error ? error.name : error);
      const answers = [
        await engine.rows("select date '2026-03-14' as day, [1]::bigint[] as list, 2::decimal(4, 1) as money"),
        await engine.rows("select count(*) > 50 as enough from position_list"),
        await engine.rows("select * from 'https://example.org/a.csv'").catch(failed),
        await engine.rows("select current_date as today").catch(failed),
        await engine.rows("select nothing").catch(failed),
        await engine.rows("select count(*) as n from range(1000000) a(i), range(1000000) b(j) where i * j % 7 = 3", {}, cancel.signal).catch(failed),
        await engine.rows("select 1 as one"),
      ];
      await engine.close();
      return [...answers, await engine.rows("select 1").catch(failed)];
    });
    expect(told).toEqual([
      [{ day: "2026-03-14", list: [1], money: 2 }], [{ enough: true }], "QueryFailed", "QueryFailed", "QueryFailed", "enough", [{ one: 1 }],
      "EngineGone",
    ]);
    app.expectClean();
  });

  test("takes a damaged stream for what it is, in a worker too", async () => {
    const told = await app.page.evaluate(async () => {
      const engine = await trial.openBrowserEngine();
      await trial.prepareSchema(engine);
      const stream = trial.rowsStream({ ticket_no: "varchar" }, [{ ticket_no: "T1" }]);
      const cut = await engine.load("ledger.tickets", stream.slice(0, -16), 1).catch((error: Error) => error.name);
      await engine.load("ledger.tickets", stream, 1);
      const rows = await engine.rows("select ticket_no from ledger.tickets");
      await engine.close();
      return [cut, rows];
    });
    expect(told).toEqual(["DamagedRows", [{ ticket_no: "T1" }]]);
  });

  test("rebuilds from the browser's own ledger, also in a second engine after the first has died", async () => {
    const told = await app.page.evaluate(async () => {
      const ledger = await trial.openBrowserLedger("trial rebuild");
      const rows = [{ ticket_no: "T1", received_on: "2026-03-14", model: "M" }];
      const stream = trial.rowsStream({ ticket_no: "varchar", received_on: "date", model: "varchar" }, rows);
      await ledger.append({ ...trial.newBatch(1), payloads: [{ table: "tickets", rows: 1, stream }] });
      const seen = [];
      for (let time = 0; time < 2; time += 1) {
        const engine = await trial.openBrowserEngine();
        await trial.prepareSchema(engine);
        await trial.rebuild(engine, ledger);
        seen.push(await engine.rows("select ticket_no, received_on, import_no from visits"));
        await engine.close();
      }
      return seen;
    });
    const visit = [{ ticket_no: "T1", received_on: "2026-03-14", import_no: 1 }];
    expect(told).toEqual([visit, visit]);
  });

  test("whose code cannot be had is told in words within seconds, not by silence", async () => {
    const other = await openApp({ folder: built.folder });
    await other.context.route("**/*.wasm", (route) => route.fulfill({ status: 404, body: "" }));
    const told = await other.page.evaluate(() => trial.openBrowserEngine().then(() => "started", (error: Error) => [error.name, error.message]));
    expect(told).toEqual(["EngineNotStarted", expect.stringContaining("did not start")]);
    await other.close();
  });

  test("whose worker cannot be had is told in the same way", async () => {
    const other = await openApp({ folder: built.folder });
    await other.context.route("**/workers/**", (route) => route.fulfill({ status: 404, body: "" }));
    const told = await other.page.evaluate(() => trial.openBrowserEngine().then(() => "started", (error: Error) => error.name));
    expect(told).toBe("EngineNotStarted");
    await other.close();
  });
});
