import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, firstPicture, openApp } from "./harness.ts";
import type { App } from "./harness.ts";
import { settled } from "./visit.ts";

const home = mkdtempSync(join(tmpdir(), "saltbench-kept-sheet-"));
let app: App, page: Page, workers: string[] = [];

beforeAll(async () => {
  app = await openApp({ profileDir: home });
  page = app.page;
  await page.addInitScript(() => {
    new MutationObserver(() => {
      const text = document.querySelector("main")?.textContent ?? "";
      const said = ["As this sheet stood on", "This is today’s sheet"].find((words) => text.includes(words));
      if (said && sessionStorage.getItem("seen") === null) { sessionStorage.setItem("seen", text); sessionStorage.setItem("said", said); }
    }).observe(document, { subtree: true, childList: true });
  });
  page.on("worker", (worker) => workers.push(worker.url()));
});
afterEach(() => app.expectClean());
afterAll(async () => {
  await closeAll();
  rmSync(home, { recursive: true, force: true });
});

const plain = (text: string) => text.replace(/\s/g, " ");
const keptText = () => page.evaluate(() => localStorage.getItem("saltbench:sheet"));
/** What is kept, behind the mark of its records and its check value. */
const keptSheet = async () => JSON.parse(((await keptText()) ?? "").split("\n")[1]?.slice(9) ?? "{}") as { first: Told[]; later: { part: Told }[] };
interface Told { readonly items: readonly { readonly figure: string }[] }
const sheetText = async () => plain(await page.locator("main .answer .parts").innerText());

/** Opens the app anew and waits for its whole sheet. @returns what was said of the kept sheet meanwhile, what stood there, and whether anything was worked out in a worker */
async function again(): Promise<{ said: string | null; seen: string; worked: boolean }> {
  await page.evaluate(() => sessionStorage.clear());
  workers = [];
  await page.reload();
  await page.locator("main .answer").waitFor({ timeout: 60_000 });
  await settled(page);
  const { said, seen } = await page.evaluate(() => ({ said: sessionStorage.getItem("said"), seen: sessionStorage.getItem("seen") ?? "" }));
  return { said, seen: plain(seen), worked: workers.some((url) => /judging|scanning|replay|bench/.test(url)) };
}
const marks = () => page.evaluate(() => ["todays-picture", "first-picture"].map((name) => performance.getEntriesByName(`saltbench:${name}`)[0]?.startTime ?? null));
/** A clock that stands still; the page's marks are lost with it. */
const on = (day: string) => page.clock.setFixedTime(new Date(`${day}T08:00:00Z`));

/** Writes a setting as another version or a hand would. */
const write = (name: string, text: string) => page.evaluate(([key, value]) => new Promise<void>((done, fail) => {
  const opening = indexedDB.open("saltbench");
  opening.onerror = () => fail(opening.error as Error);
  opening.onsuccess = () => {
    const stored = opening.result.transaction("settings", "readwrite");
    stored.objectStore("settings").put(value, key as string);
    stored.oncomplete = () => { opening.result.close(); done(); };
  };
}), [name, text] as const);

describe("the sheet of the last opening", () => {
  test("is today's on the same day over the same records: it stands before the engine does, and nothing is worked out again", async () => {
    await firstPicture(app);
    await page.waitForFunction(() => localStorage.getItem("saltbench:sheet") !== null);
    await settled(page);
    const first = await sheetText(), { said, seen, worked } = await again(), [todays, picture] = await marks();
    expect(said).toBe("This is today’s sheet");
    expect(todays).not.toBeNull();
    expect(todays).toBeLessThan(picture ?? 0);
    expect(worked).toBe(false);
    const { first: parts, later } = await keptSheet();
    const figures = [...parts, ...later.map(({ part }) => part)].flatMap(({ items }) => items.map(({ figure }) => plain(figure)));
    expect(figures.length).toBeGreaterThan(5);
    expect(figures.filter((figure) => !seen.includes(figure))).toEqual([]);
    expect(await sheetText()).toBe(first);
  }, 300_000);

  test("is the last one on another day, and that day's is worked out anew", async () => {
    await on("2027-01-15");
    expect(await again()).toMatchObject({ said: "As this sheet stood on", worked: true });
    expect(await again()).toMatchObject({ said: "This is today’s sheet", worked: false });
  }, 300_000);

  test("is the last one after a setting has changed, and today's is worked out anew", async () => {
    await write("currency", "pounds");
    expect(await again()).toMatchObject({ said: "As this sheet stood on", worked: true });
    expect(await sheetText()).toContain("pounds");
  }, 300_000);

  test("that has changed on the disk is not shown, and today's is worked out anew", async () => {
    const text = (await keptText()) ?? "", figure = text.search(/\d lines?,/);
    expect(figure).toBeGreaterThan(0);
    await page.evaluate((changed) => localStorage.setItem("saltbench:sheet", changed), `${text.slice(0, figure)}${text[figure] === "9" ? "8" : "9"}${text.slice(figure + 1)}`);
    expect(await again()).toMatchObject({ said: null, worked: true });
  }, 300_000);

  test("is gone with the records", async () => {
    await page.goto(`${app.url}#/records`);
    await page.getByRole("button", { name: "take it out now" }).click();
    await page.getByText("Nothing has been brought in yet.").waitFor();
    expect(await keptText()).toBeNull();
  }, 300_000);
});
