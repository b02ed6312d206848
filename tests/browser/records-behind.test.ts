import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeAll, openApp } from "./harness.ts";
import type { App } from "./harness.ts";

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/records" });
  page = app.page;
  page.setDefaultTimeout(150_000);
  await page.getByRole("heading", { level: 1, name: "Records", exact: true }).waitFor();
});
afterAll(closeAll);

/** The first row that is listed behind a number, and how many the sentence above it counts. */
async function listed(): Promise<{ first: string; said: string }> {
  const table = page.getByRole("table", { name: /: the rows$/ });
  await table.waitFor();
  const said = await page.getByText(/: [\d,]+ rows?\. Close the list$/).innerText();
  return { first: (await table.getByRole("row").nth(1).innerText()).replace(/\s+/g, " "), said };
}

test.each([
  ["Labour", "#/labour?job=full+service%2C+spinning", "The tickets behind these times, with file and line", /^Tickets of the job full service \(spinning\): [\d,]+ rows\./, /tickets\.csv \d/],
  ["Salt & wear", "#/wear?position=line_roller_bearing", "The findings behind it, with file and line", /^Findings at line roller bearing: [\d,]+ rows\./i, /findings\.csv \d/],
  ["Failures", "#/failures?position=line_roller_bearing", "The findings behind it, with file and line", /^Findings at line roller bearing: [\d,]+ rows\./i, /findings\.csv \d/],
])("from a number in %s its rows are one step away, each with its file and line", async (_, path, link, said, row) => {
  await page.evaluate((hash) => { location.hash = hash; }, path);
  await page.getByRole("link", { name: link }).first().click();
  const found = await listed();
  expect(found.said).toMatch(said);
  expect(found.first).toMatch(row);
  app.expectClean();
});

test("from a part in Stock the rows behind its use are one step away, and from a row the ticket with all its rows", async () => {
  await page.evaluate(() => { location.hash = "#/stock"; });
  await page.getByRole("button", { name: /: how the figure comes about$/ }).first().click();
  await page.getByRole("link", { name: "The rows behind its use, with file and line" }).click();
  const found = await listed();
  expect([found.said, found.first].map((text) => /^Use of .+: [\d,]+ rows?\.|findings\.csv \d/.test(text))).toEqual([true, true]);
  const table = page.getByRole("table", { name: /: the rows$/ }), link = table.getByRole("link").first(), ticket = await link.innerText();
  await link.click();
  const rows = page.getByRole("table", { name: `Rows behind ${ticket}` });
  await rows.waitFor();
  expect(await rows.innerText()).toMatch(/tickets\.csv/);
  app.expectClean();
});
