import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, download, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, hash } from "./visit.ts";

const LIST = "What spares most jobs the wait for the money";
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/stock" });
  page = app.page;
  await page.getByRole("slider", { name: "Money for stock" }).waitFor({ timeout: 150_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

const told = () => page.locator("section[aria-label='What a little more money does'] p.lead").innerText();
/** Moves the slider and waits for nothing: the list must follow in the same turn. */
const slideTo = (money: number) => page.getByRole("slider", { name: "Money for stock" }).evaluate((slider: HTMLInputElement, value) => {
  slider.value = String(value);
  slider.dispatchEvent(new Event("input", { bubbles: true }));
}, money);
const spent = async () => (await cells(page, LIST)).slice(1).reduce((sum, row) => sum + Number((row[4] ?? "").replace(/[^\d.]/g, "")), 0);

describe("what a little more money does", () => {
  test("tells how many jobs wait with and without the money, and why each line is on the list", async () => {
    expect(await told()).toMatch(/^About \d+ jobs that need one of these parts lie ahead until the order after this one arrives\. Without buying anything about [\d.]+ of them wait for a part; with \d+\scu on \d+ parts? about [\d.]+, and nine times in ten no more than \d+\.$/);
    const [heads, ...rows] = await cells(page, LIST);
    expect(heads?.join(" ")).toMatch(/^Part Number Supplier Buy ?pieces Cost Why$/);
    for (const row of rows) expect(row[5]).toMatch(/^Spares about [\d.]+ of \d+ jobs the wait\./);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("moving the money moves the list at once, to no more than the money, and the address learns where it rests", async () => {
    await slideTo(30);
    const less = await spent();
    await slideTo(150);
    const more = await spent();
    expect([less <= 30, more <= 150, more > less]).toEqual([true, true, true]);
    expect(await page.locator("main [aria-busy=true]").count()).toBe(0);
    await page.getByRole("spinbutton", { name: /^Money for stock/ }).fill("60");
    await page.getByRole("spinbutton", { name: /^Money for stock/ }).press("Tab");
    await expect.poll(() => hash(page)).toBe("#/stock?budget=60");
    expect(await spent()).toBeLessThanOrEqual(60);
  });

  test("ready for spring asks for the busiest weeks, and longer deliveries leave more jobs waiting", async () => {
    await page.getByText("ready for spring", { exact: true }).click();
    await expect.poll(told, { timeout: 60_000 }).toMatch(/lie ahead until \d+ May 20\d\d\./);
    await page.getByText(/^Your busiest thirteen weeks run from /).waitFor();
    await page.getByText("until the next order is there", { exact: true }).click();
    await expect.poll(told, { timeout: 60_000 }).toMatch(/until the order after this one arrives/);
    const waiting = async () => Number(/anything about ([\d.]+) of them/.exec(await told())?.[1]), usual = await waiting();
    await page.getByRole("combobox", { name: "Deliveries take" }).selectOption("twice");
    await expect.poll(waiting, { timeout: 60_000 }).toBeGreaterThan(usual);
    await page.getByRole("combobox", { name: "Deliveries take" }).selectOption("as-known");
    await expect.poll(waiting, { timeout: 60_000 }).toBe(usual);
  });

  test("saves the list as CSV, a line a part", async () => {
    const { name, body } = await download(page, () => page.getByRole("button", { name: "Save this list as CSV" }).click());
    expect(name).toMatch(/^stock-for-jobs-\d{4}-\d{2}-\d{2}\.csv$/);
    expect(body.toString("utf8").split("\r\n")[0]).toBe("name,part_no,supplier,pieces,cost,why,unit_cost");
  });
});

describe("how good the advice is", () => {
  test("can be called off while it is tried, and tried again", async () => {
    await page.getByRole("button", { name: "Try the advice on your own past" }).click();
    const section = page.locator("section[aria-label='How good is the advice?']");
    await section.getByRole("button", { name: "Cancel" }).click();
    await section.getByRole("button", { name: "Work it out" }).click();
    await section.getByText(/^Ordered as advised, /).waitFor({ timeout: 150_000 });
    const [, ...rows] = await cells(page, /draws of how long deliveries take/);
    expect(rows.map((row) => row[0])).toEqual([
      "as advised", "advised, running out half as often", "advised, running out twice as often", "advised, running out three times as often", "one when one goes", "min-max from last year's mean", "what happened",
    ]);
    expect(await section.locator("svg").count()).toBe(1);
    expect(await seriousViolations(page)).toEqual([]);
  });
});
