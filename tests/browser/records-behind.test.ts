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

/** Goes to a room, follows the link to the rows behind its number, and gives the sentence over them and the first of them. */
async function listed(path: string, link: RegExp, before?: () => Promise<unknown>): Promise<{ said: string; first: string }> {
  await page.evaluate((hash) => { location.hash = hash; }, path);
  await before?.();
  await page.getByRole("link", { name: link }).first().click();
  const table = page.getByRole("table", { name: /: the rows$/ });
  await table.waitFor();
  const heading = (await table.locator("caption").innerText()).replace(/: the rows$/, "");
  const said = await page.locator("p", { has: page.locator("strong", { hasText: heading }) }).innerText();
  return { said: said.replace(/\s+/g, " "), first: (await table.getByRole("row").nth(1).innerText()).replace(/\s+/g, " ") };
}
const plain = (said: string) => said.replace(/(\d),(\d)/g, "$1$2");

test("from a share of failures its rows are one step away, under the same filter and with the same counts", async () => {
  let shown = "";
  const { said, first } = await listed("#/failures?position=line_roller_bearing&water=salt&from=2024-04-01", /^Every row behind these numbers/, async () => {
    shown = plain(await page.getByText(/inspected, .+ of them failed: .+ written down/).innerText());
  });
  const [, inspected, failed] = /(\d+) inspected, (\d+) of them failed/.exec(shown) ?? [];
  expect(plain(said)).toMatch(new RegExp(`^Line roller bearing, planned work, salt water, from .+ ${failed} failed of ${inspected} inspected\\.`));
  expect(Number(inspected)).toBeGreaterThan(50);
  expect(first).toMatch(/tickets\.csv \d/);
  app.expectClean();
});

test("from the times of a job its jobs are one step away, with the count that stands beside the time", async () => {
  let jobs = "";
  const { said, first } = await listed("#/labour?job=full+service%2C+spinning&from=2024-01-01", /^Every job behind these times/, async () => {
    jobs = plain(await page.getByText(/^Full service, spinning usually takes/).first().innerText());
  });
  expect(plain(said)).toContain(`Finished jobs, full service, spinning, from 1 Jan 2024. ${/\((\d+) jobs\)/.exec(jobs)?.[1] ?? "?"} jobs with minutes`);
  expect(first).toMatch(/tickets\.csv \d/);
  app.expectClean();
});

test("from a curve its parts are one step away, each with every visit that followed it", async () => {
  const { said, first } = await listed("#/wear?position=line_roller_bearing&clock=use_days", /^Every part behind it/);
  expect(plain(said)).toMatch(/^Wear of line roller bearing\. \d+ parts followed, \d+ of them failed\./);
  expect(first).toMatch(/tickets\.csv \d.*/);
  app.expectClean();
});

test("from a week of the Season its reels are one step away", async () => {
  let reels = "";
  const { said } = await listed("#/season", /^\d+$/, async () => {
    await page.getByText("Week by week, each with its reels").click();
    reels = await page.getByRole("table", { name: /^Reels of each week/ }).getByRole("link").first().innerText();
  });
  expect(said).toMatch(new RegExp(`^Reels that came in, from .+ to .+ ${reels} reels?,`));
  app.expectClean();
});

test("from a part in Stock the rows behind its use are one step away, with its count, and from a row the ticket with all its rows", async () => {
  let used = "";
  const { said, first } = await listed("#/stock", /^Every row behind its use/, async () => {
    await page.getByRole("button", { name: /: how the figure comes about$/ }).first().click();
    used = plain(await page.getByText(/^Used or wanted [\d,]+ pieces?/).innerText());
  });
  expect(plain(said)).toContain(`. ${/wanted (\d+ pieces?)/.exec(used)?.[1] ?? "?"}, `);
  expect(first).toMatch(/findings\.csv \d/);
  const link = page.getByRole("table", { name: /: the rows$/ }).getByRole("link").first(), ticket = await link.innerText();
  await link.click();
  const rows = page.getByRole("table", { name: `Rows behind ${ticket}` });
  await rows.waitFor();
  expect(await rows.innerText()).toMatch(/tickets\.csv/);
  app.expectClean();
});
