import type { Page } from "playwright-core";
import { unzipSync } from "fflate";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { closeAll, csvFile, download, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";

let app: App;
let page: Page;
const shown = (text: string | RegExp) => page.getByText(text).first().waitFor();
const gone = (text: string | RegExp) => expect.poll(() => page.getByText(text).count(), { timeout: 60_000 }).toBe(0);
const press = (name: string | RegExp) => page.getByRole("button", { name }).first().click();
const fact = async (label: string) => (await page.locator("dl div", { hasText: label }).locator("dd").innerText()).trim();

beforeAll(async () => {
  app = await openApp({ path: "#/records" });
  page = app.page;
});
/** Each test begins in a shop without records or decisions. */
beforeEach(async () => {
  await page.reload();
  await page.getByRole("heading", { level: 1, name: "Records", exact: true }).waitFor();
  if (await page.getByRole("button", { name: "Remove all records" }).isDisabled()) return;
  await press("Remove all records");
  await page.getByRole("dialog").getByRole("button", { name: "Remove all" }).click();
  await shown("Nothing has been brought in yet.");
});
afterEach(() => app.expectClean());
afterAll(closeAll);

async function bringIn(name: string, text: string, came: string | RegExp = /came in\./): Promise<void> {
  await page.getByLabel("Choose files").setInputFiles(csvFile(name, text));
  await shown(came);
}

const HEAD = "ticket_no,received_on,outcome,maker,model,labour_min,technician\n";
const ROW = "R-1,2026-03-01,returned,Eldmere,Withy 5,55,T1\n";

describe("names that may be one reel", () => {
  const NAMES = `${HEAD}${[1, 2, 3, 4, 5, 6].map((n) => `R-${n},2026-03-0${n},returned,Brackhelm,Whinbeck 40,30,\n`).join("")}R-7,2026-03-07,returned,Brackhelm,Winbeck 40,30,\nR-8,2026-03-07,returned,,whinbeck40,30,\n`;
  test("are proposed with the reason, merged by a word, and taken apart again, also after a reload", async () => {
    await bringIn("t.csv", NAMES);
    const row = page.getByRole("region", { name: "Names that are one reel" }).getByRole("row", { name: /Winbeck 40/ });
    expect(await row.innerText()).toMatch(/Brackhelm Winbeck 40, 1 ticket\s+Brackhelm Whinbeck 40, 6 tickets\s+one letter differs\s+likely/);
    expect(await seriousViolations(page)).toEqual([]);
    await press("Brackhelm Winbeck 40 is the same as Brackhelm Whinbeck 40");
    await shown("Names that count as one now: 2");
    await page.reload();
    await page.getByText("Names that count as one now: 2").click();
    await press("Take Brackhelm Winbeck 40 apart from Brackhelm Whinbeck 40");
    await shown("Names that count as one now: 1");
    await shown("one letter differs");
  });
});

describe("a ticket that contradicts itself", () => {
  beforeEach(async () => {
    await bringIn("a.csv", HEAD + ROW);
    await bringIn("b.csv", HEAD + ROW.replace("55,T1", "60,"));
  });
  test("is shown with both rows, settled by a word and opened again", async () => {
    const own = page.getByRole("region", { name: "Ticket R-1" });
    expect(await own.innerText()).toMatch(/b\.csv, line 2[\s\S]*a\.csv, line 2[\s\S]*minutes at the bench\s+60\s+55/);
    expect(await seriousViolations(page)).toEqual([]);
    await press("a.csv, line 2 is right");
    await shown("No ticket number contradicts itself.");
    await page.getByText("Settled: 1").click();
    await press("Open R-1 again");
    await page.getByRole("region", { name: "Ticket R-1" }).waitFor();
  });
});

describe("a list of rows to fix", () => {
  test("that was saved, put right and brought in leaves nothing to fix", async () => {
    await bringIn("bench.csv", HEAD + ROW + ROW.replace("R-1", "R-2").replace("2026-03-01", "31/02/2026"));
    expect(await fact("To fix")).toBe("1");
    const { body } = await download(page, () => press("Save the list as CSV"));
    await bringIn("rows-to-fix.csv", body.toString("utf8").replace(",R-2,31/02/2026,", ",R-2,2026-03-02,"), "1 new row came in.");
    await shown("No rows to fix.");
    expect(await fact("Rows kept")).toBe("2");
  });
});

describe("an import that is damaged on the disk", () => {
  /** Changes what is stored below the app, as a broken disk does. */
  const change = (store: string, key: number | (number | string)[], how: "flip" | "forget") => page.evaluate(async ({ store, key, how }) => {
    const database = await new Promise<IDBDatabase>((done) => { const open = indexedDB.open("saltbench"); open.onsuccess = () => done(open.result); });
    const transaction = database.transaction(store, "readwrite"), own = transaction.objectStore(store), asked = own.get(key);
    asked.onsuccess = () => {
      if (how === "forget") return void own.put({ import_no: key });
      const content = asked.result as Uint8Array;
      content[30] = (content[30] ?? 0) ^ 8;
      own.put(content, key);
    };
    await new Promise((done) => (transaction.oncomplete = done));
    database.close();
  }, { store, key, how });
  const numberOfLast = () => page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((done) => { const open = indexedDB.open("saltbench"); open.onsuccess = () => done(open.result); });
    const keys = database.transaction("batches").objectStore("batches").getAllKeys();
    await new Promise((done) => (keys.onsuccess = done));
    database.close();
    return Number(keys.result.at(-1));
  });

  test("in one table is named, gives what can be read of it, and is taken out; the others are there", async () => {
    await bringIn("a.csv", HEAD + ROW);
    await bringIn("f.csv", "ticket_no,position\nR-1,rotor\n");
    await page.getByLabel("Choose files").setInputFiles([csvFile("t.csv", HEAD + ROW.replace("R-1", "R-2")), csvFile("g.csv", "ticket_no,position\nR-2,body\n")]);
    await shown("2 new rows came in.");
    const number = await numberOfLast();
    await change("payloads", [number, "tickets"], "flip");
    await page.reload();
    await shown(`Import ${number} can no longer be read: its tickets have changed on the disk.`);
    expect(await fact("Rows kept")).toBe("2");
    const { name, body } = await download(page, () => press("Save what can be read"));
    const files = unzipSync(new Uint8Array(body));
    expect([name, Object.keys(files)]).toEqual([`saltbench-import-${number}.zip`, ["findings.csv"]]);
    expect(new TextDecoder().decode(files["findings.csv"])).toMatch(/R-2,body,/);
    await press("Take it out");
    await gone(/can no longer be read/);
  });
  test("in the note of what it holds is named and taken out, and new files come in meanwhile", async () => {
    await bringIn("a.csv", HEAD + ROW);
    const number = await numberOfLast();
    await change("batches", number, "forget");
    await page.reload();
    await shown(`Import ${number} can no longer be read: the note of what it holds has changed on the disk.`);
    await bringIn("b.csv", HEAD + ROW.replace("R-1", "R-2"));
    await press("Take it out");
    await gone(/can no longer be read/);
    await page.reload();
    await shown("b.csv");
    expect([await fact("Rows kept"), await fact("Imports")]).toEqual(["1", "1"]);
  });
});
