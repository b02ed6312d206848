import { rmSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { press, step, takeIn, write } from "./bench-steps.ts";
import { type App, closeAll, csvFile } from "./harness.ts";
import { bringIn, look, shape } from "./import-page.ts";
import { askForNewer, caches, firstVisit, footer, NEWER, newerBuild, VERSION } from "./offline-page.ts";
import { visit } from "./visit.ts";

const READY = "A newer Saltbench is ready";

let newer: string, app: App, page: Page;
beforeAll(async () => {
  newer = await newerBuild();
  app = await firstVisit();
  page = app.page;
  await visit(page, "bench");
  await press(page, "Put the demo away and begin");
  await page.getByRole("button", { name: "Take a reel in" }).waitFor();
  await takeIn(page);
  await write(page, "Maker", "Brackhelm");
  await page.getByText("Everything is saved on this computer as you go.").waitFor();
});
afterAll(async () => {
  await closeAll();
  rmSync(newer, { recursive: true, force: true });
});

const names = async () => (await caches(page)).map(([name]) => name);
const marked = () => page.evaluate(() => "same page" in globalThis);

describe("when the server has a newer version", () => {
  let other: Page;

  test("the page goes on with its own files, is told, and never loads itself anew", async () => {
    other = await app.context.newPage();
    await other.goto(app.url);
    await other.getByText("Opens without a network").waitFor();
    await page.evaluate(() => Object.assign(globalThis, { "same page": true }));
    await app.startServer(newer);
    await askForNewer(page);
    await page.getByText(READY).waitFor();
    await other.getByText(READY).waitFor();
    expect(await names()).toEqual([`saltbench ${VERSION}`, `saltbench ${NEWER}`]);
    // A room never opened before, whose script the server has no longer.
    await visit(page, "season");
    expect(await page.locator("main").innerText()).not.toMatch(/could not be loaded/);
    expect([await marked(), await footer(page)]).toEqual([true, expect.stringContaining(VERSION)]);
  });

  test("it is not loaded over files that are half way in, and the page says so", async () => {
    await visit(page, "records");
    await look(page, shape("till-export.csv"));
    await press(page, "Load the newer one");
    await page.getByText("Waits until the files you chose are brought in, or left out.").waitFor();
    await bringIn(page);
    expect([await marked(), await footer(page)]).toEqual([true, expect.stringContaining(VERSION)]);
  });

  test("the button loads it once an import that runs is on the disk, and the unfinished ticket is there as it was", async () => {
    const many = csvFile("many.csv", ["ticket_no,received_on,model", ...Array.from({ length: 4_000 }, (_, n) => `M-${n},2026-01-05,Withy 5`), ""].join("\n"));
    await page.getByLabel("Choose files").setInputFiles(many);
    await page.locator("main progress").first().waitFor();
    await press(page, "Load the newer one");
    await page.waitForFunction(() => !("same page" in globalThis));
    await page.getByText(`Saltbench ${NEWER}`).waitFor();
    await page.getByText("many.csv").first().waitFor();
    await page.getByText("till-export.csv").first().waitFor();
    await visit(page, "bench");
    await page.getByRole("link", { name: /Brackhelm|Whinbeck/ }).first().click();
    await step(page, "Take in");
    await expect.poll(() => page.getByLabel("Maker", { exact: true }).inputValue()).toBe("Brackhelm");
  });

  test("a window of the older version goes on with its own files until it is closed; then they are taken away", async () => {
    expect(await footer(other)).toContain(VERSION);
    await visit(other, "labour");
    expect(await other.locator("main").innerText()).not.toMatch(/could not be loaded/);
    expect(await other.getByText(READY).count()).toBe(1);
    await page.reload();
    await page.getByText(`Saltbench ${NEWER}`).waitFor();
    expect(await names()).toEqual([`saltbench ${VERSION}`, `saltbench ${NEWER}`]);
    await other.close();
    await page.reload();
    await expect.poll(names, { timeout: 90_000 }).toEqual([`saltbench ${NEWER}`]);
    expect(await page.getByText(READY).count()).toBe(0);
  });

  test("the newer one opens without a server too", async () => {
    await app.stopServer();
    await page.reload();
    await visit(page, "season");
    expect(await footer(page)).toContain(NEWER);
    app.expectClean();
  });
});
