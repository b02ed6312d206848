import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { overhang, smallTargets, untoldCharts, walk, wcagViolations } from "./comfort-measures.ts";
import { closeAll, LAPTOP, openApp, TABLET } from "./harness.ts";
import type { App } from "./harness.ts";
import { visit } from "./visit.ts";

const ROOMS = ["morning", "card?reel=any+spinning&complaint=C03", "failures", "stock", "wear", "labour", "season", "bench", "records", "settings", "method", "cautions"];
/** Where a room has a page of its own behind the first. */
const PAGES = [...ROOMS, "failures?position=line_roller_bearing"];

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  await page.locator("main .part, main table").first().waitFor();
});
afterAll(closeAll);

/** Makes all text so many times as large, as a browser told to enlarge text alone does. */
const enlarge = (times: number) => page.evaluate((percent) => { document.documentElement.style.setProperty("font-size", `${percent}%`); }, 106.25 * times);
const usual = () => page.evaluate(() => { document.documentElement.style.removeProperty("font-size"); });

/** Everything that is held of one room, light and dark, on both sizes, with text twice as large, and on a narrow window. */
async function measured(place: string): Promise<Record<string, unknown>> {
  const found: Record<string, unknown> = {};
  for (const [size, viewport] of [["laptop", LAPTOP], ["tablet", TABLET]] as const) {
    await page.setViewportSize(viewport);
    await visit(page, place);
    found[`${size} light`] = await wcagViolations(page);
    await page.emulateMedia({ colorScheme: "dark" });
    found[`${size} dark`] = await wcagViolations(page, ["color-contrast", "link-in-text-block"]);
    await page.emulateMedia({ colorScheme: "light" });
    found[`${size} overhang`] = await overhang(page);
    found[`${size} sideways`] = await page.locator("main [data-fit=sideways] caption").allTextContents();
  }
  await page.setViewportSize(LAPTOP);
  await enlarge(2);
  found["text at 200 %"] = [...(await wcagViolations(page, ["color-contrast", "target-size", "scrollable-region-focusable"])), await overhang(page)].filter((one) => one !== null);
  await usual();
  await page.setViewportSize({ width: 320, height: 900 });
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  found["320 wide"] = await overhang(page);
  found["charts"] = await untoldCharts(page);
  await page.setViewportSize(LAPTOP);
  found["small"] = await smallTargets(page, 24);
  return found;
}
const NOTHING = {
  "laptop light": [], "laptop dark": [], "laptop overhang": null, "laptop sideways": [], "tablet light": [], "tablet dark": [], "tablet overhang": null, "tablet sideways": [],
  "text at 200 %": [], "320 wide": null, charts: [], small: [],
};

describe("on the demo", () => {
  test.each(PAGES)("%s meets WCAG 2.2 AA in light, dark, on a tablet, at twice the text and at 320 pixels; charts have names and tables, targets 24 pixels", async (place) => {
    expect(await measured(place)).toEqual(NOTHING);
  });

  test.each(PAGES)("%s can be walked through with the Tab key from top to end, seeing where one is", async (place) => {
    await page.setViewportSize(LAPTOP);
    await visit(page, place);
    const { stops, ...found } = await walk(page);
    expect(found).toEqual({ unseen: [], astray: [], through: true });
    expect(stops).toBeGreaterThan(10);
  });

  test("the reel card's controls are large enough for a finger", async () => {
    await page.setViewportSize(TABLET);
    await visit(page, "card?reel=any+spinning&complaint=C03");
    expect(await smallTargets(page, 44, "main")).toEqual([]);
  });

  test("a dialog takes the focus, gives it back, and Escape leaves it", async () => {
    await page.setViewportSize(LAPTOP);
    await visit(page, "records");
    const remove = page.getByRole("button", { name: "Remove all records" });
    await remove.focus();
    await page.keyboard.press("Enter");
    await page.getByRole("dialog", { name: "Remove all records?" }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.closest("dialog") !== null)).toBe(true);
    expect(await wcagViolations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await remove.evaluate((one) => one === document.activeElement)).toBe(true);
  });

  test("nothing moves for who asked for less motion, and enforced colours leave charts, focus and the open room told", async () => {
    await page.emulateMedia({ reducedMotion: "reduce", forcedColors: "active" });
    await visit(page, "failures");
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
    const colours = await page.evaluate(() => {
      const ink = getComputedStyle(document.body).color, picture = document.querySelector("main [role=img] svg");
      return { same: picture && getComputedStyle(picture).color === ink, current: getComputedStyle(document.querySelector("nav a[aria-current]") as Element).fontWeight };
    });
    expect(colours).toEqual({ same: true, current: "600" });
    await page.emulateMedia({ reducedMotion: null, forcedColors: null });
  });
});

describe("settings", () => {
  test("the way of writing shows at once in the rooms and is taken back by Undo", async () => {
    await page.setViewportSize(LAPTOP);
    await visit(page, "stock");
    const cost = /\d,\d{3}(\.\d\d)?\s/;
    const before = await page.locator("main").innerText();
    expect(before).toMatch(cost);
    await visit(page, "settings");
    await page.getByLabel("Written as").selectOption("de-DE");
    await page.getByText("Now: 14. März 2026, 1.234,50.").waitFor();
    await visit(page, "stock");
    const german = await page.locator("main").innerText();
    expect(german).not.toMatch(cost);
    expect(german).toMatch(/\d\.\d{3}/);
    await visit(page, "settings");
    await page.getByLabel("Written as").selectOption("en-US");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.getByLabel("Written as").inputValue()).toBe("de-DE");
    await page.getByLabel("Written as").selectOption("");
  });

  test("a level that cannot be is said and changes nothing, larger text makes the page larger and stays after a reload", async () => {
    await visit(page, "settings");
    const level = page.getByLabel(/^A: no job/);
    await level.fill("120");
    await level.press("Tab");
    await page.getByText("“120” is no level. Write 50 to 99.9, such as 95.").waitFor();
    await page.getByLabel("Text", { exact: true }).selectOption("largest");
    const size = () => page.evaluate(() => parseFloat(getComputedStyle(document.documentElement).fontSize));
    expect(await size()).toBeCloseTo(1.5 * 17, 1);
    expect(await overhang(page)).toBeNull();
    await page.reload();
    await page.getByRole("heading", { level: 1 }).waitFor();
    expect(await size()).toBeCloseTo(1.5 * 17, 1);
    await visit(page, "settings");
    await page.getByLabel("Text", { exact: true }).selectOption("usual");
  });

  test("the paper chosen is the paper printed on", async () => {
    const points = async () => /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec((await page.pdf({ preferCSSPageSize: true })).toString("latin1"))?.slice(1).map(Number);
    await visit(page, "settings");
    await page.getByLabel("Paper to print on").selectOption("A4");
    expect((await points())?.map(Math.round)).toEqual([595, 842]);
    await page.getByLabel("Paper to print on").selectOption("Letter");
    expect((await points())?.map(Math.round)).toEqual([612, 792]);
    await page.getByLabel("Paper to print on").selectOption("printer");
  });
});

describe("in an empty shop", () => {
  beforeAll(async () => {
    await page.setViewportSize(LAPTOP);
    await visit(page, "records");
    await page.getByRole("button", { name: "take it out now" }).click();
    await page.getByRole("button", { name: "Open the demo" }).waitFor();
  });

  test.each(ROOMS)("%s meets WCAG 2.2 AA, and nothing hangs over", async (place) => {
    expect(await measured(place)).toEqual(NOTHING);
  });

  test("the first steps lead through the shop's name and money, can be put away, and stay under Settings", async () => {
    await visit(page, "morning");
    await page.getByLabel("Your shop’s name").fill("Low Water Reels");
    await page.getByLabel(/^Your money/).fill("kr");
    await page.keyboard.press("Tab");
    await page.getByRole("heading", { name: "Say what shop this is, done" }).waitFor();
    await page.getByRole("button", { name: "Put these steps away" }).click();
    await page.getByRole("button", { name: "Show the first steps again" }).waitFor();
    expect(await page.getByRole("list", { name: "First steps" }).count()).toBe(0);
    await visit(page, "settings");
    await page.getByRole("button", { name: "Show them there again" }).click();
    await visit(page, "morning");
    await page.getByRole("link", { name: "Begin at the bench" }).click();
    await page.getByRole("heading", { level: 1, name: "Bench" }).waitFor();
  });

  test("a reel at the bench is written with targets of 44 pixels, and by keyboard", async () => {
    await page.setViewportSize(TABLET);
    await visit(page, "bench");
    await page.getByRole("button", { name: "Take a reel in" }).click();
    await page.getByLabel("Ticket number").waitFor();
    const steps = await page.getByRole("navigation", { name: "Steps of this ticket" }).getByRole("link").evaluateAll((links) => links.map((link) => link.getAttribute("href") ?? ""));
    for (const step of steps) {
      await page.evaluate((to) => (location.hash = to), step);
      await page.waitForFunction((to) => document.querySelector(`nav a[href="${to}"][aria-current=step]`) !== null, step);
      expect({ step, small: await smallTargets(page, 44, "main"), axe: await wcagViolations(page), over: await overhang(page) }).toEqual({ step, small: [], axe: [], over: null });
      const { stops, ...found } = await walk(page);
      expect(stops, step).toBeGreaterThan(10);
      expect({ step, ...found }).toEqual({ step, unseen: [], astray: [], through: true });
    }
  });
});
