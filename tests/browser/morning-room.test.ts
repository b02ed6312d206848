import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, csvFile, firstPicture, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { hash, settled, visit } from "./visit.ts";

let app: App, page: Page;
beforeAll(async () => {
  app = await openApp();
  page = app.page;
  await page.getByRole("heading", { name: "Long jobs" }).waitFor({ timeout: 120_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

const part = (title: string) => page.getByRole("region", { name: title, exact: true });
const figures = (title: string) => part(title).getByRole("listitem").getByRole("link");

describe("the morning sheet", () => {
  test("is what the app opens with, and marks the first picture", async () => {
    expect(await firstPicture(app)).toBeGreaterThan(0);
    expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe("Morning sheet");
    expect(await page.locator("dl").innerText()).toMatch(/Tickets\s+[\d,]+\s+From\s+\d+ \w+ 2023\s+To/);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("leads from what to order to how that figure comes about", async () => {
    await visit(page, "morning");
    const link = figures("Order").first(), name = (await link.innerText()).replace(/^\d+ × /, "");
    await link.focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: `How the figure for ${name} comes about` }).waitFor();
  });

  test("leads from a failing part to its findings and from a long job to its models", async () => {
    await visit(page, "morning");
    await figures("Look at these twice").nth(1).click();
    await page.getByRole("heading", { name: "What was found" }).waitFor();
    expect(hash(page)).toMatch(/position=.+&model=.+/);
    await visit(page, "morning");
    await figures("Long jobs").first().click();
    await page.getByRole("heading", { name: /, model by model$/ }).waitFor();
  });

  test("prints on one page", async () => {
    await visit(page, "morning");
    const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
  });

  test("says plainly that there is nothing to do when the records are few, and how many cells to fix", async () => {
    await visit(page, "records");
    await page.getByLabel("Choose files").setInputFiles(csvFile("bench.csv", "ticket_no,received_on,model\nB-1,2026-01-05,Withy 5\nB-2,31/02/2026,Withy 5\n"));
    await page.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await page.getByText(/1 new row came in/).first().waitFor();
    await visit(page, "morning");
    await page.getByText("Nothing to order").waitFor();
    await page.getByText("Too few reels opened so far").waitFor();
    await page.getByText("No job has been done ten times").waitFor();
    expect(await part("Records").innerText()).toMatch(/Fix 1 cell that could not be taken in/);
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
