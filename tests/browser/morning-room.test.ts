import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, csvFile, firstPicture, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { hash, settled, visit } from "./visit.ts";

const PARTS = ["Order today", "Jobs waiting for parts", "At the bench", "Promise today", "Watch", "Records", "Advice so far"];
let app: App, page: Page;
beforeAll(async () => {
  // High enough for the whole sheet, so that whatever jumps is seen to jump.
  app = await openApp({ viewport: { width: 1366, height: 2400 } });
  page = app.page;
  await page.getByRole("heading", { name: "Order today" }).waitFor();
});
afterEach(() => app.expectClean());
afterAll(closeAll);

const part = (title: string) => page.getByRole("region", { name: title, exact: true });
const figures = (title: string) => part(title).getByRole("listitem").getByRole("link");
/** How much of the window moved after the first picture, as the browser adds it up; under 0.1 is what its makers call good. */
const moved = (after: number) => page.evaluate((from) => new Promise<number>((done) => {
  new PerformanceObserver((list) => done(list.getEntries().filter(({ startTime }) => startTime > from).reduce((sum, one) => sum + (one as unknown as { value: number }).value, 0))).observe({ type: "layout-shift", buffered: true });
}), after);

describe("the morning sheet", () => {
  test("is what the app opens with; what is slow comes in after the first picture, and nothing jumps", async () => {
    const first = await firstPicture(app);
    expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe("Morning sheet");
    await settled(page);
    expect(await page.getByRole("heading", { level: 2 }).allInnerTexts()).toEqual(PARTS);
    expect(await moved(first + 50)).toBeLessThan(0.05);
    expect(await page.locator("dl").innerText()).toMatch(/Tickets\s+[\d,]+\s+From\s+\d+ \w+ 2023\s+To/);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("names what the demo was planted with: the clutch, the lot; and tells hours, dates and score with their counts", async () => {
    expect(await part("Watch").innerText()).toMatch(/Whinbeck 40: anti-reverse clutch.* had failed in 32 of 236 planned services/);
    expect(await part("Watch").innerText()).toMatch(/4x7x2.5 from Far Lantern Imports, fitted .* 2024.*failed early, bad batch/);
    expect(await part("Promise today").innerText()).toMatch(/\d+ hours of work wait in \d+ reels; the bench has \d+ hours a week[\s\S]+Full service, spinning, taken in today: \w+day \d+ \w+, \d+ days from today[\s\S]+kept for \d+ of \d+/);
    expect(await part("Advice so far").innerText()).toMatch(/\d+ of [\d,]+ jobs would have waited for a part from \d/);
    expect(await part("At the bench").innerText()).toMatch(/No ticket is unfinished/);
  });

  test("leads from every figure to a room that understands what it is asked", async () => {
    const links = await page.locator("main li a").evaluateAll((all) => [...new Set(all.map((one) => (one as HTMLAnchorElement).hash))]);
    expect(links.length).toBeGreaterThan(8);
    for (const link of links) {
      await visit(page, link.slice(2));
      expect([link, await page.getByText(/Not understood in the address|There is no room called|This could not be worked out/).count()]).toEqual([link, 0]);
    }
    await visit(page, "morning");
    await figures("Watch").first().focus();
    await page.keyboard.press("Enter");
    await page.getByText(/32 of 236/).first().waitFor();
    expect(hash(page)).toMatch(/position=.+&model=.+/);
  });

  test("says plainly that there is nothing to do when the records are few, and how many rows to fix", async () => {
    await visit(page, "records");
    await page.getByLabel("Choose files").setInputFiles(csvFile("bench.csv", "ticket_no,received_on,model\nB-1,2026-01-05,Withy 5\nB-2,31/02/2026,Withy 5\n"));
    await page.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await page.getByText(/1 new row came in/).first().waitFor();
    await visit(page, "morning");
    for (const words of ["Nothing to order", "No part of any model fails clearly more often", "Under a year and a half of records"]) await page.getByText(words).waitFor();
    expect(await part("Records").innerText()).toMatch(/1 row could not be taken in as written/);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("every room of a shop without records says what to do, and nothing else", async () => {
    await visit(page, "records");
    await page.getByRole("button", { name: "Remove all records" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Remove all" }).click();
    await page.getByText("Nothing has been brought in yet.").waitFor();
    for (const room of ["morning", "failures", "stock", "labour"]) {
      await visit(page, room);
      await page.getByText("No records yet").waitFor();
      expect(await page.locator("main table, main figure, main progress").count()).toBe(0);
    }
    await page.getByRole("link", { name: "Go to Records" }).click();
    await settled(page);
    expect(hash(page)).toBe("#/records");
  });
});
