import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import type { App } from "../browser/harness.ts";
import { firstPicture, openApp } from "../browser/harness.ts";
import { grownFiles } from "./grown-files.ts";
import { watchPage } from "./watched-page.ts";
import type { Changed } from "./watched-page.ts";

const LONG = 900_000;

/** One filter of one room, changed. */
export interface FilterChange extends Changed { readonly room: string; readonly filter: string }

/** What an owner waits for in the built app when the shop has so many findings; milliseconds, megabytes. */
export interface AppAtSize {
  readonly findings: number;
  readonly import: number;
  /** After something has changed: to the kept morning sheet, to the figures of today, and to the end of the sheet. */
  readonly restart: { readonly kept: number; readonly first: number; readonly whole: number };
  /** On the same day with nothing changed: to today's whole sheet, and until it can be used with the records behind it. */
  readonly again: { readonly todays: number; readonly ready: number };
  /** From opening a room to the end of all its answers, and its longest task on the screen's own thread. */
  readonly rooms: readonly { readonly room: string; readonly first: number | null; readonly whole: number; readonly longest: number }[];
  readonly filters: readonly FilterChange[];
  /** Most memory of all the browser's processes that show and compute. */
  readonly memory: number;
}

const ROOMS = ["morning", "failures", "stock", "wear", "labour", "season", "card", "bench", "records"];
const FILTERED = ["failures", "wear", "labour"];

/** Most resident memory of each of the browser's drawing processes so far, added up; null where the system does not tell. */
async function memoryOf(app: App): Promise<number> {
  const browser = app.context.browser();
  if (!browser) return Number.NaN;
  const session = await browser.newBrowserCDPSession(), { processInfo } = await session.send("SystemInfo.getProcessInfo");
  const most = processInfo.filter(({ type }) => type === "renderer").map(({ id }) => Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, "utf8"))?.[1] ?? Number.NaN) / 1024);
  return most.reduce((sum, one) => sum + one, 0);
}

/** Waits until something is answered and nothing busy. */
const settled = (page: Page) => page.waitForFunction(() => document.querySelector("main .answer") !== null && document.querySelector("main [aria-busy='true'], main progress") === null, undefined, { timeout: LONG });

/** Milliseconds to the last morning sheet, or to today's where that was kept. */
const markAt = (page: Page, name: "kept-picture" | "todays-picture"): Promise<number> => page.evaluate((mark) => performance.getEntriesByName(`saltbench:${mark}`)[0]?.startTime ?? NaN, name);

/** Writes a setting that nothing reads: what was worked out before it counts as worked out from something else. */
const changeSomething = (page: Page): Promise<void> => page.evaluate(() => new Promise<void>((done, fail) => {
  const opening = indexedDB.open("saltbench");
  opening.onerror = () => fail(opening.error as Error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction("settings", "readwrite");
    writing.objectStore("settings").put("yes", "speed measured");
    writing.oncomplete = () => { opening.result.close(); done(); };
  };
}));

async function importing(app: App, paths: readonly string[]): Promise<number> {
  const { page } = app, out = page.getByRole("button", { name: "take it out now" });
  await page.getByLabel("Choose files").waitFor();
  if (await out.isVisible()) await out.click();
  await page.getByText("Nothing has been brought in yet.").waitFor();
  const began = performance.now();
  await page.getByLabel("Choose files").setInputFiles([...paths]);
  await page.getByText(/new rows came in\./).waitFor({ timeout: LONG });
  return performance.now() - began;
}

/** Opens a room from another one. */
async function room(app: App, slug: string) {
  await app.page.evaluate(() => benchWatch.forget());
  const took = await app.page.evaluate(([name, patience]) => benchWatch.settled(() => { location.hash = `#/${name}`; }, patience, true), [slug, LONG] as const);
  return { room: slug, ...took, longest: await app.page.evaluate(() => benchWatch.longest()) };
}

/** Every choice of every list on a room's own bar, some of the long lists, chosen and taken back. */
async function filters(app: App, slug: string): Promise<FilterChange[]> {
  await app.page.evaluate(([name, patience]) => benchWatch.settled(() => { location.hash = `#/${name}`; }, patience, true), [slug, LONG] as const);
  const all: FilterChange[] = [], lists = await app.page.locator("main .bar select").all();
  for (const list of lists) {
    const label = await list.evaluate((one: HTMLSelectElement) => one.labels?.[0]?.textContent?.trim() ?? "");
    const values = await list.evaluate((one: HTMLSelectElement) => [...one.options].map(({ value }) => value));
    const first = values[0] ?? "", some = values.slice(1).filter((_, at, { length }) => at % Math.ceil(length / 4) === 0);
    for (const value of some.flatMap((one) => [one, first])) {
      const took = await list.evaluate((one: HTMLSelectElement, [wanted, patience]) => benchWatch.settled(() => { one.value = wanted; one.dispatchEvent(new Event("change", { bubbles: true })); }, patience), [value, LONG] as const);
      all.push({ room: slug, filter: `${label}: ${value === first ? "all" : value}`, ...took });
    }
  }
  return all;
}

/**
 * Brings a shop of so many findings in through the Records room of the built app, starts the app again, opens every room and changes
 * every filter.
 *
 * @throws {Error} when the app did anything it should not, or a file did not come in
 */
export async function appAtSize(enough: number): Promise<AppAtSize> {
  const home = mkdtempSync(join(tmpdir(), "saltbench-size-"));
  try {
    const { paths, findings } = grownFiles(home, enough), profileDir = join(home, "profile");
    const began = await openApp({ profileDir, path: "#/records" }), imported = await importing(began, paths), while_importing = await memoryOf(began);
    await began.page.evaluate(() => { location.hash = "#/morning"; });
    await began.page.waitForFunction(() => localStorage.getItem("saltbench:sheet") !== null, undefined, { timeout: LONG });
    await changeSomething(began.page);
    const before = await began.page.evaluate(() => localStorage.getItem("saltbench:sheet"));
    await began.close();
    const changed = await openApp({ profileDir }), first = await firstPicture(changed), kept = await markAt(changed.page, "kept-picture");
    await settled(changed.page);
    const restart = { kept, first, whole: await changed.page.evaluate(() => performance.now()) };
    await changed.page.waitForFunction((text) => localStorage.getItem("saltbench:sheet") !== text, before, { timeout: LONG });
    await changed.close();
    const app = await openApp({ profileDir });
    await settled(app.page);
    const again = { todays: await markAt(app.page, "todays-picture"), ready: await app.page.evaluate(() => performance.now()) };
    await watchPage(app.page);
    await app.page.reload();
    await settled(app.page);
    const rooms = [];
    for (const slug of ["records", ...ROOMS]) rooms.push(await room(app, slug));
    const changes: FilterChange[] = [];
    for (const slug of FILTERED) changes.push(...await filters(app, slug));
    const memory = Math.max(while_importing, await memoryOf(app));
    app.expectClean();
    await app.close();
    return { findings, import: imported, restart, again, rooms: rooms.slice(1), filters: changes, memory };
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}
