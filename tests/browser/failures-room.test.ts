import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, hash, settled, visit } from "./visit.ts";

const FINDINGS = new URL("../../data/demo/findings.csv", import.meta.url);
const CLUTCH = "failures?position=ar_clutch";
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/failures" });
  page = app.page;
  await page.getByRole("heading", { name: "The parts whose failures cost most, all models" }).waitFor({ timeout: 120_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

/** Counts of the failure table by the name of the row: inspected and failed. */
async function counts(): Promise<Map<string, [number, number]>> {
  const [heads = [], ...rows] = await cells(page, /^Every row/), of = (row: string[], head: string) => Number((row[heads.indexOf(head)] ?? "").replaceAll(",", ""));
  return new Map(rows.map((row) => [row[0] ?? "", [of(row, "Inspected"), of(row, "Failed")]]));
}
const pick = (label: string, value: string) => page.getByLabel(label, { exact: true }).selectOption(value);
const choose = (word: string) => page.getByText(word, { exact: true }).click();

describe("the Failures room", () => {
  test("opens on the parts whose failures cost most in planned services, with the caution that these are reels that came in", async () => {
    await visit(page, "failures");
    const [heads = [], ...rows] = await cells(page, /^Every row/);
    const costs = rows.slice(0, 10).map((row) => Number((row[heads.indexOf("Cost")] ?? "").replace(/[^0-9]/g, "")));
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
    expect(costs[0]).toBeGreaterThan(1000);
    expect(await page.getByLabel("planned service").isChecked()).toBe(true);
    expect(await page.locator("figure svg g.seen circle").count()).toBe(16);
    await page.getByText("These are reels that came in here, not reels sold").waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("leads by keyboard from a part to its models, from a model to its findings and on to the line of the file", async () => {
    await visit(page, CLUTCH);
    const row = page.getByRole("button", { name: "Brackhelm Whinbeck 40: what stands behind it" });
    await row.focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: /on Brackhelm Whinbeck 40$/ }).waitFor();
    expect(hash(page)).toBe("#/failures?position=ar_clutch&model=Brackhelm Whinbeck 40");
    const [heads = [], first = []] = await cells(page, /findings, newest ticket first/);
    const of = (head: string) => first[heads.indexOf(head)] ?? "";
    const line = Number(/^findings\.csv, line (\d+)$/.exec(of("File and line"))?.[1]);
    const written = readFileSync(FINDINGS, "utf8").split(/\r?\n/)[line - 1] ?? "";
    expect(written.split(",").slice(0, 2)).toEqual([of("Ticket"), "ar_clutch"]);
    expect(written).toContain(of("What was wrong"));
    expect(of("Grade")).toMatch(/^[34] (heavy|failed)$/);
    expect(await seriousViolations(page)).toEqual([]);
    await page.goBack();
    await page.getByRole("heading", { level: 2, name: /model by model$/ }).waitFor();
  });

  test("marks the one model whose clutch stands out, in words", async () => {
    await visit(page, CLUTCH);
    const [heads = [], ...rows] = await cells(page, /^Every row/);
    expect(rows.filter((row) => row[heads.indexOf("Verdict")] === "stands out").map((row) => row[0])).toEqual(["Brackhelm Whinbeck 40"]);
    expect(await page.locator("figure svg g.remark text").allTextContents()).toContain("stands out");
  });

  test("shows a new habit as replacements that jump while failures stay", async () => {
    await visit(page, "failures?position=drag_knob_seal");
    const figure = page.locator("figure", { hasText: "failures against replacements" });
    await figure.getByRole("button", { name: "Show as table" }).click();
    const [heads = [], ...quarters] = await cells(page, /failures against replacements/);
    const share = (row: string[], head: string) => Number(row[heads.indexOf(head)]) / Number(row[heads.indexOf("Inspected")]);
    const before = quarters.slice(0, 5), after = quarters.slice(-4);
    expect(Math.max(...before.map((row) => share(row, "Changed as routine")))).toBeLessThan(0.25);
    expect(Math.min(...after.map((row) => share(row, "Changed as routine")))).toBeGreaterThan(0.6);
    expect(Math.max(...quarters.map((row) => share(row, "Failed")))).toBeLessThan(0.15);
  });

  test("keeps every choice in the address, and a bookmark brings it back", async () => {
    await visit(page, "failures");
    await pick("Kind of reel", "spinning");
    await pick("Water", "salt");
    await page.getByLabel("From", { exact: true }).fill("2024-01-01");
    await choose("something wrong");
    await choose("only what was written");
    await pick("Part", "line_roller_bearing");
    expect(hash(page)).toBe("#/failures?opening=complaint&counted=written&kind=spinning&water=salt&from=2024-01-01&position=line_roller_bearing");
    await settled(page);
    const before = await counts();
    await page.reload();
    await page.getByRole("heading", { name: "Line roller bearing, model by model" }).waitFor({ timeout: 120_000 });
    await settled(page);
    expect(await counts()).toEqual(before);
    expect(await page.getByLabel("something wrong").isChecked()).toBe(true);
    expect(await page.getByLabel("Water", { exact: true }).inputValue()).toBe("salt");
    await page.getByRole("button", { name: "Clear filters" }).click();
    expect(hash(page)).toBe("#/failures");
  });

  test("draws planned and complaint apart when both are asked for, and counts them together in the table", async () => {
    await visit(page, CLUTCH);
    const planned = (await counts()).get("Brackhelm Whinbeck 40");
    await visit(page, `${CLUTCH.replace("?", "?opening=both&")}`);
    const both = (await counts()).get("Brackhelm Whinbeck 40");
    expect(both?.[0]).toBeGreaterThan(planned?.[0] ?? NaN);
    expect(await page.locator("figure svg g.planned circle").count()).toBeGreaterThan(8);
    expect(await page.locator("figure svg g.complaint circle").count()).toBeGreaterThan(0);
  });

  test("counts fewer inspections when only written positions count, and says what that does", async () => {
    await visit(page, CLUTCH);
    const opened = (await counts()).get("Brackhelm Whinbeck 40"), line = await page.getByText(/^Inspected is/).innerText();
    await visit(page, `${CLUTCH}&counted=written`);
    const written = (await counts()).get("Brackhelm Whinbeck 40");
    expect(written?.[0]).toBeLessThan(opened?.[0] ?? NaN);
    expect(written?.[1]).toBe(opened?.[1]);
    expect(await page.getByText(/^Inspected is/).innerText()).not.toBe(line);
  });

  test("switches a picture to its table with one key", async () => {
    await visit(page, CLUTCH);
    const figure = page.locator("figure").first();
    await figure.getByRole("button", { name: "Show as table" }).focus();
    await page.keyboard.press("t");
    await figure.getByRole("table").waitFor();
    expect(await figure.locator("svg").count()).toBe(0);
  });

  test("says so when nothing fits the filters, and what in the address means nothing", async () => {
    await visit(page, "failures?kind=fly&position=line_roller_bearing&colour=red");
    await page.getByText("Nothing was inspected that fits these filters.").waitFor();
    await page.getByText("Not understood in the address and left out: colour=red.").waitFor();
  });
});
