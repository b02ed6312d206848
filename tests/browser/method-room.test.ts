import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { QUESTIONS } from "../../src/rooms/method/questions.ts";
import { closeAll, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { visit } from "./visit.ts";

let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/cautions" });
  page = app.page;
  await page.getByRole("heading", { level: 1, name: "Cautions" }).waitFor();
});
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("how it is worked out", () => {
  test("stands at the foot of the index, with every question, and nothing serious stands in anybody's way", async () => {
    await page.getByRole("navigation", { name: "More" }).getByRole("link", { name: "How it is worked out" }).click();
    await page.getByRole("heading", { level: 1, name: "How it is worked out" }).waitFor();
    expect(await page.locator("main section h2").allInnerTexts()).toEqual([...QUESTIONS.map(({ question }) => question), "What is taken for granted"]);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("begins at the question a room came with", async () => {
    await visit(page, "method?on=stock");
    await page.waitForFunction(() => document.activeElement?.id === "on-stock");
    expect(await page.locator("#on-stock").evaluate((heading) => heading.getBoundingClientRect().top >= 0 && heading.getBoundingClientRect().top < innerHeight / 2)).toBe(true);
  });

  test("prints in black and white on a few pages, without its list of links", async () => {
    await page.emulateMedia({ media: "print" });
    expect(await page.getByRole("navigation", { name: "Questions" }).isVisible()).toBe(false);
    expect((await page.pdf({ format: "A4" })).toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBeLessThan(8);
    await page.emulateMedia({ media: null });
  });
});
