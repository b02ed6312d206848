import fc from "fast-check";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeAll, openApp } from "./harness.ts";
import type { App } from "./harness.ts";

/** Addresses tried in each room; `SALTBENCH_ADDRESSES=200` tries more. */
const ADDRESSES = Number(process.env["SALTBENCH_ADDRESSES"] ?? 6);
const ROOMS = ["morning", "card", "failures", "stock", "wear", "labour", "season", "bench", "records"];
const FIELDS = [
  "opening", "counted", "kind", "maker", "water", "from", "to", "position", "model", "series", "found", "other", "sheet", "drawing", "clock", "reel", "fished", "rinse", "risk", "show", "supplier", "family",
  "line", "budget", "lasting", "delivery", "held_up_by", "job", "offer", "help", "help_hours", "closed", "order", "order_days", "days", "months", "complaint", "said", "ticket", "step", "part", "__proto__", "constructor", "x",
];
const VALUES = [
  "", "0", "-1", "1e999", "NaN", "1e308", "0.0000001", "9999999999", "2026-02-30", "2999-12-31", "1000-01-01", "9999-12-31", "0000-00-00", "planned", "all", "both", "fly", "other", "spinning", "salt", "never", "salt_days", "months", "rush", "twice", "needed", "checks",
  "rotor", "ar_clutch", "Withy 5", "any fly", "any spinning", "Ostvarg Ekholt 30", "Ostvarg Ekholt", "evidence", "5", "50", "full service", "drag", "__proto__", "toString", "<img src=x onerror=alert(1)>", "'; drop table visits; --", "=1+1", "\u202Etxt", "x".repeat(300), "%", "\u0000", "🎣",
];
const field = fc.tuple(fc.constantFrom(...FIELDS), fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...VALUES) }, { weight: 1, arbitrary: fc.string({ maxLength: 30 }) }));
const query = fc.oneof(
  { weight: 6, arbitrary: fc.array(field, { minLength: 1, maxLength: 7 }).map((all) => new URLSearchParams(all).toString()) },
  { weight: 1, arbitrary: fc.constantFrom("%", "%E0%A4%A", "=&=&==", "?????", "#/stock?show=order", "a".repeat(3000), "model=%00&model=%ff", "from=2026-01-01&from=2027-01-01") },
);

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  await page.locator("main h1").first().waitFor();
});
afterAll(closeAll);

async function seen(hash: string): Promise<{ heading: string; wrong: string[]; told: boolean }> {
  await page.evaluate((to) => { location.hash = to; }, hash);
  await page.locator("main h1").first().waitFor();
  await page.waitForFunction(() => document.querySelector("main [aria-busy=true], main progress, main [role=progressbar]") === null);
  return page.evaluate(() => {
    const main = document.querySelector("main") as HTMLElement, text = main.innerText;
    const attributes = [...main.querySelectorAll("svg *")].filter((one) => [...one.attributes].some(({ value }) => /NaN|Infinity|undefined/.test(value))).map((one) => one.outerHTML.slice(0, 80));
    return {
      heading: main.querySelector("h1")?.textContent ?? "", told: /Not understood in the address/.test(text),
      wrong: [...(text.match(/.{0,30}(?:\bNaN\b|\bundefined\b|Invalid Date|\[object|Infinity|That did not work|RangeError|could not be loaded).{0,40}/g) ?? []), ...attributes, ...(text.trim().length < 20 ? [`blank: ${text}`] : [])],
    };
  });
}

/** What the address carries of its own, so that finding it again on the screen is no fault. */
const carries = (hash: string) => { try { return decodeURIComponent(hash.replaceAll("+", " ")); } catch { return hash; } };

test.each(ROOMS)("the room %s shows itself without a fault at any address, and tells what it does not understand", async (room) => {
  const addresses = fc.sample(query, { numRuns: ADDRESSES, seed: Number(process.env["SEED"] ?? 9) });
  for (const words of addresses) {
    const hash = `#/${room}?${words}`, { heading, wrong } = await seen(hash), own = carries(hash);
    expect([hash, heading !== "", wrong.filter((line) => !["NaN", "undefined"].some((word) => own.includes(word) && line.includes(word)))]).toEqual([hash, true, []]);
    expect([hash, app.seen.errors, app.seen.console]).toEqual([hash, [], []]);
  }
  expect([room, (await seen(`#/${room}?colour=red`)).told]).toEqual([room, true]);
});

test.each(["#/nowhere", "#/__proto__", "#/constructor?x=1", "#//", "#/failures/../stock", "#/%E0%A4%A", `#/${"a".repeat(2000)}`, "#/<img src=x onerror=alert(1)>"])("the address %s leads to a room and says that it named none", async (hash) => {
  const { heading, wrong } = await seen(hash);
  expect([heading !== "", wrong]).toEqual([true, []]);
  await page.getByText(/There is no room called/).first().waitFor();
  app.expectClean();
});
