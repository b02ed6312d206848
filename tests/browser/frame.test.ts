import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, LAPTOP, openApp, seriousViolations, TABLET } from "./harness.ts";
import type { App } from "./harness.ts";

const ROOMS = [["morning", "Morning sheet"], ["card", "Reel card"], ["failures", "Failures"], ["stock", "Stock"], ["wear", "Salt & wear"], ["labour", "Labour"], ["season", "Season"], ["bench", "Bench"], ["records", "Records"]] as const;

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  page.setDefaultTimeout(150_000);
  await page.getByRole("heading", { level: 1, name: "Morning sheet" }).waitFor();
});
afterEach(() => app.expectClean());
afterAll(closeAll);

/** Goes to a room by its address and waits until its answers stand. */
async function visit(slug: string, title: string): Promise<void> {
  // A card without a reel has nothing to say.
  await page.evaluate((hash) => (location.hash = hash), slug === "card" ? "#/card?reel=any+spinning&complaint=C03" : `#/${slug}`);
  await page.getByRole("heading", { level: 1, name: title }).waitFor();
  await page.waitForFunction(() => !document.querySelector("main progress, main [aria-busy=true]") && document.querySelector("main :is(table, figure, li)"));
}

/** Presses a key until what has the focus reads `text`. */
async function walkTo(text: string, key: "Tab" | "Shift+Tab"): Promise<void> {
  for (let press = 0; press < 60 && (await focused()) !== text; press += 1) await page.keyboard.press(key);
  expect(await focused()).toBe(text);
}

const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");

describe("the frame", () => {
  test("opens on the morning sheet of the demo, and says that it is the demo and how to leave it", async () => {
    expect(await page.title()).toBe("Morning sheet – Saltbench");
    expect(await page.getByText("Demo records.").count()).toBe(1);
    expect(await page.getByRole("link", { name: "Bring in your own" }).getAttribute("href")).toBe("#/records");
    expect(await page.getByRole("navigation", { name: "Rooms" }).getByRole("link").allInnerTexts()).toEqual(ROOMS.map(([, title]) => title));
  });

  test("can be walked through by keyboard alone, each room beginning at its heading", async () => {
    await page.goto(`${app.url}#/morning`);
    await page.reload();
    await page.getByRole("heading", { level: 1, name: "Morning sheet" }).waitFor();
    await page.keyboard.press("Tab");
    expect(await focused()).toBe("Skip to the sheet");
    for (const [slug, title] of ROOMS.slice(1)) {
      await walkTo(title, slug === ROOMS[1][0] ? "Tab" : "Shift+Tab");
      await page.keyboard.press("Enter");
      await page.getByRole("heading", { level: 1, name: title }).waitFor();
      await expect.poll(focused).toBe(title);
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
      expect([await page.title(), new URL(page.url()).hash]).toEqual([`${title} – Saltbench`, `#/${slug}`]);
      expect(await page.locator("nav [aria-current=page]").innerText()).toBe(title);
    }
  });

  test("lets the keyboard skip the index", async () => {
    await page.reload();
    await page.getByRole("heading", { level: 1 }).waitFor();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
  });

  test("says when the address names no room, and shows the first one", async () => {
    await page.evaluate(() => (location.hash = "#/attic"));
    await page.getByText("There is no room called “attic”.").waitFor();
    expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe("Morning sheet");
  });

  test("prints the sheet alone, black on white", async () => {
    await visit("stock", "Stock");
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    expect(await page.getByRole("navigation").count()).toBe(0);
    const colours = await page.evaluate(() => [getComputedStyle(document.documentElement).color, getComputedStyle(document.documentElement).backgroundColor]);
    expect(colours).toEqual(["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
    await page.emulateMedia({ media: null, colorScheme: "light" });
  });

  test("prints the morning sheet on one page", async () => {
    await visit("morning", "Morning sheet");
    const pages = (await page.pdf({ format: "A4", preferCSSPageSize: true })).toString("latin1").match(/\/Type\s*\/Page[^s]/g);
    expect(pages).toHaveLength(1);
  });

  test("keeps the reader's choice of paper over a reload", async () => {
    const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await ground();
    await page.getByLabel("Light or dark").selectOption("dark");
    const dark = await ground();
    expect(dark).not.toBe(light);
    await page.reload();
    expect(await ground()).toBe(dark);
    await page.getByLabel("Light or dark").selectOption("device");
    expect(await ground()).toBe(light);
  });
});

describe("a chart and a table", () => {
  test("show the same rows, one key apart", async () => {
    await visit("failures", "Failures");
    const figure = page.locator("main figure").filter({ has: page.getByRole("button", { name: /^Show as/ }) }).first();
    await figure.getByRole("button", { name: "Show as table" }).focus();
    await page.keyboard.press("t");
    expect(await figure.getByRole("table").count()).toBe(1);
    expect(await figure.getByRole("button", { name: "Show as picture" }).getAttribute("aria-pressed")).toBe("true");
    await page.keyboard.press("t");
    expect(await figure.getByRole("img").getAttribute("aria-label")).toMatch(/.{20,}/);
    expect(await figure.locator("svg").count()).toBeGreaterThan(0);
  });

  test("sort by keyboard, the largest first, and say so", async () => {
    await visit("labour?kind=fly", "Labour");
    const table = page.getByRole("table", { name: /^Times at the bench/ });
    const jobs = async () => (await table.locator("tbody tr td:nth-child(2)").allInnerTexts()).map((text) => Number(text.replace(/\D/g, "")));
    await table.getByRole("button", { name: "Jobs" }).focus();
    await page.keyboard.press("Enter");
    expect(await table.getByRole("columnheader", { name: "Jobs" }).getAttribute("aria-sort")).toBe("descending");
    const falling = await jobs();
    expect(falling.length).toBeGreaterThan(3);
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    await page.keyboard.press("Enter");
    expect(await jobs()).toEqual([...falling].sort((a, b) => a - b));
  });
});

describe.each([["laptop", LAPTOP], ["tablet", TABLET]] as const)("on a %s", (_name, viewport) => {
  test.each(ROOMS)("%s has nothing serious for axe in light and dark, and nothing hangs over the edge", async (slug, title) => {
    await page.setViewportSize(viewport);
    await visit(slug, title);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await seriousViolations(page), colorScheme).toEqual([]);
    }
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(over).toBe(0);
  });

  test("everything that can be pressed in the frame and the controls is large enough for a finger", async () => {
    await page.setViewportSize(viewport);
    await visit("records", "Records");
    const low = await page.evaluate(() => [...document.querySelectorAll("nav a, .button, select")]
      .map((one) => [one.textContent?.trim().slice(0, 30), one.getBoundingClientRect().height] as const).filter(([, height]) => height > 0 && height < 44));
    expect(low).toEqual([]);
  });
});
