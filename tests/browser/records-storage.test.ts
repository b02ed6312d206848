import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { closeAll, csvFile } from "./harness.ts";
import type { App } from "./harness.ts";
import { empty, facts, openRecords } from "./import-page.ts";

const sheet = (name: string, rows: number, note = "fine") => csvFile(name, ["ticket_no,received_on,model,note",
  ...Array.from({ length: rows }, (_, n) => `${name}-${n},2026-01-05,Withy 5,${note === "" ? noise(n) : note}`), ""].join("\n"));
/** Text that does not compress, so that the disk fills up. */
const noise = (seed: number) => Array.from({ length: 60 }, (_, n) => ((seed + 1) * 7919 * (n + 3) ** 2 % 1_000_003).toString(36)).join(" ");

let app: App;
let page: Page;
const shown = (text: string | RegExp) => page.getByText(text).first().waitFor();
const choose = (...files: ReturnType<typeof sheet>[]) => page.getByLabel("Choose files").setInputFiles(files);
const reloaded = async () => {
  await page.reload();
  await page.getByRole("heading", { level: 1 }).first().waitFor();
};

beforeAll(async () => {
  app = await openRecords();
  page = app.page;
  // Some browsers give a private window no store at all; the mark lasts as long as the tab.
  await app.context.addInitScript(() => {
    if (sessionStorage.getItem("no store") === "yes") Object.defineProperty(globalThis, "indexedDB", { value: undefined });
  });
});
beforeEach(() => empty(page));
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("where the browser keeps nothing", () => {
  test("the owner is told, files come in all the same, and what was kept before is there again in an ordinary window", async () => {
    await choose(sheet("kept.csv", 2));
    await shown("2 new rows came in.");
    await page.evaluate(() => sessionStorage.setItem("no store", "yes"));
    await reloaded();
    await shown("Your records cannot be kept or read at the moment: this browser has no store, or forbids it in a private window.");
    await shown("This window keeps nothing: what you bring in is gone when you close it.");
    await choose(sheet("passing.csv", 3));
    await page.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await shown("3 new rows came in.");
    await page.evaluate(() => sessionStorage.removeItem("no store"));
    await reloaded();
    await shown("kept.csv");
    expect(await facts(page)).toEqual(["2", "1", "0"]);
  });
});

describe("a full disk", () => {
  test("takes nothing of the import, says so, keeps what was there, and takes it when there is room again", async () => {
    const small = await openRecords(), own = small.page, session = await small.context.newCDPSession(own), origin = new URL(small.url).origin;
    await empty(own);
    // The browser remembers for half a minute how much room there was when it last wrote.
    const forgotten = () => own.waitForTimeout(35_000);
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1_000_000 });
    await forgotten();
    const take = (file: ReturnType<typeof sheet>) => own.getByLabel("Choose files").setInputFiles(file);
    await take(sheet("first.csv", 2));
    await own.getByText("2 new rows came in.").first().waitFor();
    const large = sheet("large.csv", 20_000, "");
    await take(large);
    await own.getByText("There is no room left to keep your records. Nothing of this last step was saved; everything before it is safe.").first().waitFor();
    expect(await facts(own)).toEqual(["2", "1", "0"]);
    await own.reload();
    await own.getByText("first.csv").first().waitFor();
    expect(await facts(own)).toEqual(["2", "1", "0"]);
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    await forgotten();
    await take(large);
    await own.getByText(/20,000 new rows came in\./).first().waitFor();
    expect(await facts(own)).toEqual(["20,002", "2", "0"]);
    await small.close();
  });
});

describe("records of a newer version", () => {
  test("are not touched: the page says which version to open them with and offers nothing that writes", async () => {
    const later = await openRecords(), own = later.page;
    await own.getByLabel("Choose files").setInputFiles(sheet("kept.csv", 2));
    await own.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await own.getByText("2 new rows came in.").first().waitFor();
    const kept = () => own.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((done) => { const open = indexedDB.open("saltbench"); open.onsuccess = () => done(open.result); });
      const all = database.transaction(["batches", "payloads"]), batches = all.objectStore("batches").getAll(), payloads = all.objectStore("payloads").getAllKeys();
      await new Promise((done) => (all.oncomplete = done));
      database.close();
      return JSON.stringify([database.version, batches.result, payloads.result]);
    });
    await own.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((done) => { const open = indexedDB.open("saltbench", 2); open.onsuccess = () => done(open.result); });
      database.close();
    });
    const before = await kept();
    await own.reload();
    await own.getByText("These records were kept by a newer version of Saltbench. They are safe and were left as they are. Open them with the newer version.").first().waitFor();
    expect([await own.getByLabel("Choose files").count(), await own.getByRole("button", { name: "Remove all records" }).count()]).toEqual([0, 0]);
    expect(await kept()).toBe(before);
    await later.close();
  });
});
