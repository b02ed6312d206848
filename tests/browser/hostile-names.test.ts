import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PAYLOADS, hostileShop } from "../fuzz/hostile-shop.ts";
import { closeAll, csvFile } from "./harness.ts";
import type { App } from "./harness.ts";
import { empty, openRecords } from "./import-page.ts";

const ROOMS = ["", "card", "failures", "stock", "wear", "labour", "season", "bench", "records"];

/** What stands before the names of the seven files. */
const FILE_NAMES = ["<img src=x onerror=globalThis.struck=8> ", "\u202Evsc.", "👩‍🔧 ", "=1+1 ", "n".repeat(4000), "__proto__ ", "' or 1=1 -- "];
const shown_in = new Set<string>();

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openRecords();
  page = app.page;
  await empty(page);
  await page.getByLabel("Choose files").setInputFiles(Object.entries(hostileShop(900)).map(([name, text], at) => csvFile(`${FILE_NAMES[at] ?? ""}${name}`, text)));
  await page.getByText(/new rows came in/).first().waitFor();
});
afterAll(closeAll);

/** Waits until a room has worked out all it shows. */
async function settled(): Promise<void> {
  await page.locator("main h1").first().waitFor();
  await page.waitForFunction(() => document.querySelector("main [aria-busy=true], main progress, main [role=progressbar]") === null);
}

/** What a text has made that only code of ours may make, and words that no owner should read. */
const struck = () => page.evaluate(() => ({
  ran: (globalThis as { struck?: unknown }).struck ?? null,
  elements: [...document.querySelectorAll(".struck, [onerror], [onload], [onfocus], iframe, math, main script, main style, [href^='javascript:']")].map((one) => one.outerHTML.slice(0, 90)),
  unread: (document.querySelector("main")?.textContent ?? "").match(/\bfunction \w+\(|\[native code\]|Invalid Date/g) ?? [],
}));
const NOTHING = { ran: null, elements: [], unread: [] };

async function enter(room: string, query = ""): Promise<void> {
  await page.evaluate((hash) => { location.hash = hash; }, `#/${room}${query}`);
  await settled();
}

describe("names, notes and numbers that are HTML, scripts, formulas and words of the language", () => {
  test.each(ROOMS.map((room) => [room]))("are texts in every place of the room “%s”, and so is what is typed into its fields", async (room) => {
    await enter(room);
    expect(await struck()).toEqual(NOTHING);
    if ((await page.locator("main").innerText()).includes("globalThis.struck")) shown_in.add(room);
    const fields = page.locator("main input:not([type=file], [type=radio], [type=checkbox], [type=date], [type=number], [type=range]):visible, main textarea:visible");
    for (let at = 0, all = Math.min(12, await fields.count()); at < all; at += 1) {
      const field = fields.nth(at);
      if (!(await field.isVisible()) || !(await field.isEditable())) continue;
      await field.fill(PAYLOADS[at % PAYLOADS.length] ?? "");
      await field.press("Tab");
    }
    await settled();
    expect(await struck()).toEqual(NOTHING);
    app.expectClean();
  });

  test("were on show in most rooms, or nothing would have been tried", () => {
    expect(shown_in.size).toBeGreaterThanOrEqual(5);
  });
});
