import { afterAll, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { finish, press, saved, step, takeIn, touch, write } from "./bench-steps.ts";
import { closeAll, csvFile, openApp, TABLET } from "./harness.ts";
import { cells, visit } from "./visit.ts";

afterAll(closeAll);

/** Counts prints instead of making them. */
async function countPrints(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => { Object.assign(window, { prints: 0, print: () => { (window as unknown as { prints: number }).prints += 1; dispatchEvent(new Event("afterprint")); } }); });
  return () => page.evaluate(() => (window as unknown as { prints: number }).prints);
}

test("a day in the demo shop: the morning sheet is read and printed, its order is placed and gone from it, a reel is looked up before it is opened", async () => {
  const app = await openApp(), { page } = app;
  await page.getByText("would have waited for a part").first().waitFor();
  const prints = await countPrints(page), part = page.getByRole("region", { name: "Order today" });
  const sentence = await part.getByRole("listitem").first().innerText();
  expect(sentence).toMatch(/\d/);
  await press(page, "Print this sheet");
  expect(await prints()).toBe(1);

  await part.getByRole("listitem").first().getByRole("link").click();
  const heading = await page.getByRole("heading", { name: /^Order from/ }).first().innerText(), supplier = heading.replace("Order from ", "");
  await page.getByRole("region", { name: heading }).getByRole("button", { name: "Print this sheet" }).click();
  expect(await prints()).toBe(2);
  await page.getByRole("button", { name: `Mark as ordered: the order from ${supplier}` }).click();
  await page.getByText(`from ${supplier} marked as ordered.`).waitFor();

  await visit(page, "morning");
  await page.getByText("would have waited for a part").first().waitFor();
  expect(await page.getByRole("region", { name: "Order today" }).getByText(supplier).count()).toBe(0);

  await visit(page, "card?reel=Brackhelm+Whinbeck+40&fished=salt&rinse=never&days=40&complaint=C03");
  await page.getByRole("heading", { name: "Have ready" }).waitFor();
  expect((await cells(page, "Parts to have ready")).length).toBeGreaterThan(1);
  await press(page, "Print this sheet");
  expect(await prints()).toBe(3);

  await visit(page, "bench");
  await page.getByRole("button", { name: "Put the demo away and begin" }).waitFor();
  app.expectClean();
  await app.close();
}, 300_000);

test("the first day of a shop without records: parts come in, a reel is taken in, logged, waits for its part, which is ordered, and the sheets say so", async () => {
  const app = await openApp({ viewport: TABLET, path: "#/bench" }), { page } = app;
  await press(page, "Put the demo away and begin");
  await page.getByRole("button", { name: "Take a reel in" }).waitFor();
  const prints = await countPrints(page);
  await visit(page, "records");
  await page.getByLabel("Choose files").setInputFiles([
    csvFile("parts.csv", "part_no,name,family,supplier,unit_cost,pack_qty,lead_days,on_hand\nLR-40,Line roller 40,other,Oak Lane Parts,6.50,1,9,0\n"),
    csvFile("suppliers.csv", "supplier,order_cost,review_days\nOak Lane Parts,5,7\n"),
  ]);
  await page.getByText(/2 new rows came in\./).waitFor();

  await visit(page, "bench");
  await takeIn(page);
  await write(page, "Maker", "Brackhelm");
  await touch(page, "Fished in", "salt");
  await write(page, "Days in salt since the service", "30");
  await touch(page, "Came in for", "planned");
  await saved(page);
  await step(page, "At the bench");
  await press(page, "Spool and drag: All fine");
  await press(page, /^Line roller \d/);
  await press(page, "Line roller (sleeve): Write");
  await touch(page, "Grade", "4 failed");
  await touch(page, "Done", "wanted, not in stock");
  await write(page, "Part", "LR-40");
  await write(page, "Pieces", "1");
  await press(page, "Line roller: The rest is fine");

  await visit(page, "morning");
  await page.getByRole("region", { name: "At the bench" }).getByText(/1 ticket|0001/).first().waitFor();
  await visit(page, "bench");
  await page.getByRole("link", { name: /0001/ }).first().click();
  await finish(page);

  await visit(page, "failures?denominator=strict");
  expect((await page.getByRole("row", { name: /^Line roller \(sleeve\)/ }).innerText()).split(/\s*\t\s*/).slice(1, 4)).toEqual(["too few", "1", "1"]);
  await visit(page, "morning");
  await page.getByRole("region", { name: "Order today" }).waitFor();
  await press(page, "Print this sheet");
  expect(await prints()).toBe(1);
  app.expectClean();
  await app.close();
}, 300_000);
