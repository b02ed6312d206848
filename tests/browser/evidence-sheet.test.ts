import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { closeAll, LAPTOP, openApp, seriousViolations, TABLET } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, visit } from "./visit.ts";

const SHEET = "failures?position=ar_clutch&model=Brackhelm+Whinbeck+40&sheet=evidence";
/** Width of what is printed on, in CSS pixels: the paper less margins of 14 mm on both sides. */
const PAPERS = [{ format: "A4", width: ((210 - 28) / 25.4) * 96 }, { format: "Letter", width: ((215.9 - 28) / 25.4) * 96 }] as const;
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/failures", colorScheme: "dark" });
  page = app.page;
  await page.getByRole("heading", { name: "Reels to be wary of" }).waitFor({ timeout: 120_000 });
  await visit(page, SHEET);
  await page.getByText("How it was counted").waitFor();
});
afterAll(closeAll);

/** Pages of a PDF as Chromium writes it: one object of the type each. */
const pages = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

describe("the evidence sheet", () => {
  test("holds counts, picture, comparison, method in three sentences and cautions", async () => {
    const sheet = page.locator(".evidence");
    await sheet.getByText(/had failed in 32 of 236 \(14\s%\); on the other models in 34 of 1,239/).waitFor();
    expect(await sheet.locator("svg g.named text").allTextContents()).toContain("Brackhelm Whinbeck 40");
    expect((await cells(page, /^Failed of those inspected/)).length).toBe(4);
    expect(await sheet.locator("ol li").count()).toBe(3);
    await sheet.getByText("These are reels that came in here, not reels sold").waitFor();
    expect(await sheet.locator("ul").last().locator("li").count()).toBeGreaterThanOrEqual(4);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("is one page on A4 and on Letter, from a tablet too, and for a part with more to say", async () => {
    for (const place of [SHEET, SHEET.replace("Brackhelm+Whinbeck+40", "Wexmoor+Slipdene+45"), SHEET.replace("ar_clutch", "line_roller_bearing")]) {
      await visit(page, place);
      await page.getByText("How it was counted").waitFor();
      for (const viewport of [LAPTOP, TABLET]) {
        await page.setViewportSize(viewport);
        for (const { format } of PAPERS) expect(pages(await page.pdf({ format })), `${place} ${format} ${viewport.width}`).toBe(1);
      }
    }
    await visit(page, SHEET);
    await page.getByText("How it was counted").waitFor();
  });

  test("is printed black on white also from a dark screen, with no word cut off or pushed off the paper", async () => {
    await page.emulateMedia({ media: "print" });
    for (const { format, width } of PAPERS) {
      await page.setViewportSize({ width: Math.floor(width), height: 900 });
      const found = await page.evaluate(() => {
        const right = document.documentElement.clientWidth;
        const shown = [...document.querySelectorAll<HTMLElement>(".evidence *")].filter((one) => one.checkVisibility() && one.textContent?.trim() && !one.classList.contains("unseen"));
        const cut = shown.filter((one) => one.getBoundingClientRect().right > right + 1 || (getComputedStyle(one).overflowX === "hidden" && one.scrollWidth > one.clientWidth + 1));
        const style = getComputedStyle(document.querySelector(".evidence h2") as Element);
        return { cut: cut.map((one) => `${one.tagName} ${one.textContent?.trim().slice(0, 40)}`), ink: style.color, paper: getComputedStyle(document.documentElement).getPropertyValue("--paper").trim() };
      });
      expect(found, format).toEqual({ cut: [], ink: "rgb(0, 0, 0)", paper: "#fff" });
    }
    await page.emulateMedia({ media: "screen" });
  });

  test("says so when the part was never inspected on the model", async () => {
    await visit(page, "failures?position=fly_click&model=Brackhelm+Whinbeck+40&sheet=evidence");
    await page.getByText("This part was never inspected on this model, so there is nothing to show.").waitFor();
    app.expectClean();
  });
});
