import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { closeAll, csvFile, download } from "./harness.ts";
import type { App } from "./harness.ts";
import { empty, fact as factOf, openRecords } from "./import-page.ts";

const TABLES = ["tickets", "findings", "models", "parts", "fits", "suppliers", "orders"];
const templates = TABLES.map((table) => csvFile(`${table}.csv`, readFileSync(new URL(`../../data/templates/${table}.csv`, import.meta.url), "utf8")));
const HEADING = "ticket_no,received_on,model,note";
const MIXED = csvFile("bench.csv", [
  HEADING, "B-1,2026-01-05,Withy 5,fine", "B-2,31/02/2026,Withy 5,odd day", "B-3,2026-01-07,Ombry 8,<img src=x onerror=alert(1)>",
  "B-4,,Ombry 8,\"=HYPERLINK(\"\"http://example.org\"\")\"", "",
].join("\n"));

let app: App;
let page: Page;
const shown = (text: string | RegExp) => page.getByText(text).first().waitFor();
const fact = (label: string) => factOf(page, label);

beforeAll(async () => {
  app = await openRecords();
  page = app.page;
});
/** Each test begins in a shop without records. */
beforeEach(() => empty(page));
afterEach(() => app.expectClean());
afterAll(closeAll);

async function choose(files: Parameters<ReturnType<Page["locator"]>["setInputFiles"]>[0]): Promise<void> {
  await page.getByLabel("Choose files").setInputFiles(files);
}

async function bringIn(files: Parameters<typeof choose>[0], came: string | RegExp = /came in\./): Promise<void> {
  await choose(files);
  await shown(came);
}

async function openDemo(): Promise<void> {
  await page.getByRole("button", { name: "Open the demo" }).click();
  await shown("Demo records.");
}

describe("bringing files in", () => {
  test("the templates come in whole, and the same files again change nothing", async () => {
    await bringIn(templates, "7 new rows came in.");
    expect([await fact("Rows kept"), await fact("Imports"), await fact("To fix")]).toEqual(["7", "1", "0"]);

    await bringIn(templates, /^Nothing new/);
    expect([await fact("Rows kept"), await fact("Imports")]).toEqual(["7", "1"]);
  });

  test("own files put the demo away, but only after a question", async () => {
    await openDemo();
    const before = await fact("Rows kept");
    await choose(templates);
    await page.getByRole("button", { name: "Not now" }).click();
    expect([await page.getByText("Demo records.").count(), await fact("Rows kept")]).toEqual([1, before]);

    await choose(templates);
    await page.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await shown("7 new rows came in.");
    expect([await page.getByText("Demo records.").count(), await fact("Rows kept"), await fact("Imports")]).toEqual([0, "7", "1"]);
  });

  test("rows that do not fit are listed with file, line, value and reason, and the list can be saved", async () => {
    await bringIn(MIXED);
    await shown("2 new rows came in.");
    expect(await fact("To fix")).toBe("2");
    const rows = page.getByRole("region", { name: /^Rows to fix/ }).getByRole("row");
    await expect.poll(() => rows.count()).toBe(3);
    expect(await rows.nth(1).innerText()).toMatch(/bench\.csv\s+3\s+received_on\s+31\/02\/2026/);

    const { name, body } = await download(page, () => page.getByRole("button", { name: "Save the list as CSV" }).click());
    expect(name).toMatch(/^rows-to-fix-\d{4}-\d{2}-\d{2}\.csv$/);
    const lines = body.toString("utf8").trim().split("\r\n");
    expect(lines[0]).toBe("file,line,column,value,reason,ticket_no,received_on,model,note");
    expect(lines).toHaveLength(3);
    expect(lines[1]).toMatch(/^bench\.csv,3,received_on,31\/02\/2026,.{8,}/);
  });

  test("a dropped file comes in as a chosen one does", async () => {
    await page.evaluate((text) => {
      const dropped = new DataTransfer();
      dropped.items.add(new File([text], "bench.csv", { type: "text/csv" }));
      document.querySelector("[aria-label='Bring in files']")?.dispatchEvent(new DragEvent("drop", { dataTransfer: dropped, bubbles: true, cancelable: true }));
    }, `${HEADING}\nB-1,2026-01-05,Withy 5,dropped\n`);
    await shown("1 new row came in.");
    expect(await fact("Rows kept")).toBe("1");
  });

  test("a cancel in the middle leaves nothing behind", async () => {
    await bringIn(MIXED);
    const many = Array.from({ length: 250_000 }, (_, n) => `M-${n},2026-01-05,Withy 5,row ${n} of a long file`);
    await choose(csvFile("many.csv", [HEADING, ...many, ""].join("\n")));
    await page.getByText(/^Reading many\.csv$/).first().waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await shown("Cancelled. Nothing of these files was taken in.");
    expect([await fact("Rows kept"), await fact("Imports"), await fact("To fix")]).toEqual(["2", "1", "2"]);
    await page.reload();
    await shown("bench.csv");
    expect([await fact("Rows kept"), await fact("Imports")]).toEqual(["2", "1"]);
  });

  test("a file that is no table is told as such and nothing else suffers", async () => {
    await bringIn([MIXED, { name: "photo.jpg", mimeType: "image/jpeg", buffer: Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46]) }]);
    await shown("2 new rows came in.");
    const row = page.getByRole("row", { name: /photo\.jpg/ }).first();
    expect(await row.innerText()).toMatch(/photo\.jpg\s+0\s+0/);
  });
});

describe("keeping and taking out", () => {
  test("a reload brings everything back, rows to fix too", async () => {
    await bringIn(MIXED);
    await page.reload();
    await shown("31/02/2026");
    expect([await fact("Rows kept"), await fact("To fix")]).toEqual(["2", "2"]);
  });

  test("one import can be taken out again, after a question", async () => {
    await bringIn(MIXED);
    await page.getByRole("button", { name: /^Take out the import/ }).click();
    await page.getByRole("dialog", { name: "Take this import out again?" }).waitFor();
    await page.keyboard.press("Escape");
    expect([await page.getByRole("dialog").count(), await fact("Imports")]).toEqual([0, "1"]);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Take out");
    await page.getByRole("button", { name: /^Take out the import/ }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Take it out" }).click();
    await shown("Nothing has been brought in yet.");
    await expect.poll(async () => [await fact("Rows kept"), await fact("To fix")]).toEqual(["0", "0"]);
  });

  test("all can be backed up to one file, removed after a question, and restored from the file", async () => {
    await bringIn(MIXED);
    const saved = await download(page, () => page.getByRole("button", { name: "Back up all to one file" }).click());
    expect(saved.name).toMatch(/^saltbench-backup-\d{4}-\d{2}-\d{2}\.zip$/);

    await page.getByRole("button", { name: "Remove all records" }).click();
    const dialog = page.getByRole("dialog", { name: "Remove all records?" });
    await dialog.getByRole("button", { name: "Keep them" }).click();
    expect(await fact("Rows kept")).toBe("2");
    await page.getByRole("button", { name: "Remove all records" }).click();
    await dialog.getByRole("button", { name: "Remove all" }).click();
    await shown("Nothing has been brought in yet.");
    await page.reload();
    await shown("Nothing has been brought in yet.");

    await page.getByLabel("Restore a backup").setInputFiles({ name: saved.name, mimeType: "application/zip", buffer: saved.body });
    await page.getByRole("button", { name: "Restore it" }).click();
    await expect.poll(() => fact("Rows kept"), { timeout: 20_000 }).toBe("2");
    await expect.poll(() => fact("To fix")).toBe("2");
  });

  test("a file that is no backup is refused and nothing is changed", async () => {
    await bringIn(MIXED);
    await page.getByLabel("Restore a backup").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: Buffer.from("no zip at all") });
    await page.getByRole("button", { name: "Restore it" }).click();
    await page.getByRole("alert").filter({ hasText: "That did not work" }).waitFor();
    expect(await fact("Rows kept")).toBe("2");
  });

  test("the demo can be opened and taken out, and the empty tables can be saved", async () => {
    await openDemo();
    await page.getByRole("button", { name: "take it out now" }).click();
    await shown("Nothing has been brought in yet.");
    const { name, body } = await download(page, () => page.getByRole("link", { name: "tickets.csv" }).click());
    expect([name, body.toString("utf8").startsWith("ticket_no,received_on,")]).toEqual(["tickets.csv", true]);
  });
});
