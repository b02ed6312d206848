import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, download, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, hash, visit } from "./visit.ts";

const EVERY_PART = "What is used, what is there, when and how many to order";
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/stock" });
  page = app.page;
  await page.getByRole("heading", { name: /^Order from/ }).first().waitFor({ timeout: 120_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

/** Part numbers on the suppliers' sheets on screen. */
async function onScreen(): Promise<Set<string>> {
  const found = new Set<string>();
  for (const heading of await page.getByRole("heading", { name: /^Order from/ }).allInnerTexts()) {
    const [, ...rows] = await cells(page, `What to order from ${heading.replace("Order from ", "")}`);
    for (const [, part_no = ""] of rows) found.add(part_no);
  }
  return found;
}

describe("the Stock room", () => {
  test("begins with the week's order: how much, from whom, and why for every line", async () => {
    await visit(page, "stock");
    await page.getByText(/^Order \d+ lines?, \d+ pieces?, from \d+ suppliers? for \d+\s?cu\./).waitFor();
    const first = await page.getByRole("heading", { name: /^Order from/ }).first().innerText();
    const [heads, ...rows] = await cells(page, `What to order from ${first.replace("Order from ", "")}`);
    expect(heads?.join(" ")).toMatch(/^Part Number Order ?pieces Cost Why$/);
    for (const row of rows) expect(row[4]).toMatch(/\d.*so order \d+/);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("saves one CSV for all suppliers that holds every line of the sheets with its number", async () => {
    await visit(page, "stock");
    const { name, body } = await download(page, () => page.getByRole("button", { name: "Save all orders as CSV" }).click());
    expect(name).toMatch(/^order-all-suppliers-\d{4}-\d{2}-\d{2}\.csv$/);
    const [heads = "", ...lines] = body.toString("utf8").trim().split("\r\n");
    expect(heads.split(",").slice(0, 5)).toEqual(["part_no", "interchange", "name", "supplier", "order_qty"]);
    const saved = lines.map((line) => line.split(",")[0] ?? "");
    expect(new Set(saved)).toEqual(await onScreen());
  });

  test("saves a supplier's own lines alone, named after it", async () => {
    await visit(page, "stock");
    const heading = await page.getByRole("heading", { name: /^Order from/ }).first().innerText(), supplier = heading.replace("Order from ", "");
    const { name, body } = await download(page, () => page.getByRole("button", { name: `Save as CSV: the order from ${supplier}` }).click());
    expect(name).toMatch(new RegExp(`^order-${supplier.toLowerCase().replaceAll(" ", "-")}-`));
    const [, ...rows] = await cells(page, `What to order from ${supplier}`);
    const lines = body.toString("utf8").trim().split("\r\n").slice(1);
    expect(lines.map((line) => line.split(",")[0])).toEqual(rows.map((row) => row[1]));
    for (const line of lines) expect(line).toContain(supplier);
  });

  test("explains a line's figure on pressing Enter, and the address keeps it", async () => {
    await visit(page, "stock?show=order");
    const button = page.getByRole("button", { name: /: how the figure comes about$/ }).first();
    await button.focus();
    await page.keyboard.press("Enter");
    const story = page.getByRole("region", { name: /was worked out$/ });
    await story.getByText(/^Until the order after this one arrives \d+ days pass/).waitFor();
    await story.getByText(/^On the shelf \d+, under way \d+/).waitFor();
    expect(hash(page)).toMatch(/^#\/stock\?show=order&line=.+/);
    await page.reload();
    await story.waitFor({ timeout: 120_000 });
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("never plans an assorted drawer: it is told to be split first", async () => {
    await visit(page, "stock");
    const [, ...refused] = await cells(page, "Lines that cannot be planned");
    expect(refused.length).toBeGreaterThan(3);
    expect(refused.every((row) => /split/.test(row.join(" ")))).toBe(true);
    const more = page.getByRole("region", { name: "Every part" }).getByRole("button", { name: "Show more" });
    while ((await more.count()) > 0) await more.click();
    const names = (await cells(page, EVERY_PART)).slice(1).map((row) => row[0] ?? "");
    expect(names.length).toBeGreaterThan(40);
    expect(names.filter((name) => /assorted/i.test(name))).toEqual([]);
  });

  test("counts the bearing that nine models share as one line", async () => {
    await visit(page, "stock?family=ball+bearing");
    const rows = (await cells(page, EVERY_PART)).filter((row) => row[0]?.startsWith("7×11×3 "));
    expect(rows).toHaveLength(1);
    expect(Number(rows[0]?.[6])).toBeGreaterThan(8);
  });

  test("takes the owner's number, keeps what is marked as ordered so that it is not advised again, and takes it back", async () => {
    await visit(page, "stock");
    const heading = await page.getByRole("heading", { name: /^Order from/ }).first().innerText(), supplier = heading.replace("Order from ", "");
    const order = page.getByRole("region", { name: heading }), total = await order.getByText(/^\d+ lines?, /).last().innerText();
    await order.getByRole("textbox").first().fill("7");
    await order.getByRole("textbox").first().press("Tab");
    await order.getByRole("button", { name: "Back to the advised numbers" }).waitFor();
    expect(await order.getByText(/^\d+ lines?, /).last().innerText()).not.toBe(total);
    await page.getByRole("button", { name: `Mark as ordered: the order from ${supplier}` }).click();
    await page.getByText(`from ${supplier} marked as ordered.`).waitFor();
    const marked = page.getByRole("region", { name: "Orders you marked" });
    await marked.getByText(/7 × /).waitFor();
    await page.getByRole("heading", { name: heading, exact: true }).waitFor({ state: "detached" });
    await page.reload();
    await marked.getByText("under way", { exact: true }).waitFor({ timeout: 120_000 });
    await marked.getByRole("button", { name: /^Arrived: / }).click();
    await marked.getByText(/ put on the shelf\.$/).waitFor();
    await marked.getByRole("button", { name: /^Take out: / }).click();
    await page.getByRole("heading", { name: heading, exact: true }).waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("counts two parts as one when the owner says so, and as two again on undo", async () => {
    await visit(page, "stock");
    const groups = page.getByRole("region", { name: "The same part under other numbers" });
    await groups.getByLabel("This number").selectOption("ARC-BR80");
    await groups.getByLabel("is the same as").selectOption("ARC-DV25");
    await groups.getByRole("button", { name: "Count them together" }).click();
    await groups.getByText("ARC-BR80 and ARC-DV25 are the same part.").first().waitFor({ timeout: 60_000 });
    await groups.getByRole("button", { name: "take out ARC-DV25, to count it by itself" }).waitFor();
    await groups.getByRole("button", { name: "Undo" }).click();
    await groups.getByRole("button", { name: "take out ARC-DV25, to count it by itself" }).waitFor({ state: "detached", timeout: 60_000 });
  });

  test("shows money asleep with the years it would last", async () => {
    await visit(page, "stock");
    const row = (await cells(page, "Parts that last for years")).find((one) => one[0]?.startsWith("7×13×4"));
    expect(Number(/^(\d+) years$/.exec(row?.[3] ?? "")?.[1])).toBeGreaterThan(20);
  });

  test("sets what suppliers quote against what came, with the number of orders", async () => {
    await visit(page, "stock");
    const said = await page.getByText(/^Far Lantern Imports quotes 21 days; your orders took \d+ on average, \d+ of \d+/).innerText();
    expect(Number(/took (\d+)/.exec(said)?.[1])).toBeGreaterThan(26);
    expect(await page.locator("figure svg g.quoted line").count()).toBeGreaterThan(3);
  });

  test("prints one supplier's sheet alone, black on white, without our reasons or the bench's cautions", async () => {
    await visit(page, "stock");
    await page.evaluate(() => { window.print = () => undefined; });
    await page.getByRole("button", { name: "Print this sheet" }).first().click();
    await page.emulateMedia({ media: "print" });
    const shown = await page.getByRole("heading").evaluateAll((all) => all.filter((one) => (one as HTMLElement).checkVisibility()).map((one) => one.textContent));
    expect(shown).toHaveLength(1);
    expect(shown[0]).toMatch(/^Order from/);
    expect(await page.getByText("The maker's service sheet decides which part goes in").first().evaluate((one) => one.checkVisibility())).toBe(false);
    expect(await page.getByRole("region", { name: /^Order from/ }).first().getByText("Why", { exact: true }).evaluate((one) => one.checkVisibility())).toBe(false);
    expect(await page.locator("main").evaluate((main) => getComputedStyle(main).color)).toBe("rgb(0, 0, 0)");
    await page.emulateMedia({ media: "screen" });
  });
});
