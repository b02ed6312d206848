import { afterAll, beforeAll, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { finish, openBench, press, saved, step, takeIn, touch, write } from "./bench-steps.ts";
import { type App, closeAll } from "./harness.ts";

let app: App, here: Page, there: Page;
beforeAll(async () => {
  app = await openBench();
  here = app.page;
  await takeIn(here);
  there = await app.context.newPage();
  await there.goto(here.url());
  await there.getByLabel("Ticket number", { exact: true }).waitFor();
});
afterAll(closeAll);

/** Changes stored entries of the one ticket, as time that passed would. */
const rewrite = (page: Page, values: Record<string, string>) => page.evaluate(async (given) => {
  const database = await new Promise<IDBDatabase>((done) => { const request = indexedDB.open("saltbench bench"); request.onsuccess = () => done(request.result); });
  const transaction = database.transaction("entries", "readwrite"), store = transaction.objectStore("entries");
  const keys = await new Promise<[string, string][]>((done) => { const request = store.getAllKeys(); request.onsuccess = () => done(request.result as [string, string][]); });
  for (const [field, value] of Object.entries(given)) store.put({ value, revision: 50 }, [keys[0]?.[0] ?? "", field]);
  await new Promise((done) => (transaction.oncomplete = done));
  database.close();
}, values);

test("what one window writes stands in the other, and neither loses a field", async () => {
  await touch(here, "Fished in", "salt");
  await write(there, "Serial number, or a tag of yours", "W-7");
  await expect.poll(() => here.getByLabel("Serial number, or a tag of yours", { exact: true }).inputValue()).toBe("W-7");
  await expect.poll(() => there.getByRole("group", { name: "Fished in" }).getByLabel("salt", { exact: true }).isChecked()).toBe(true);
});

test("a timer runs on over a reload, and time in which nobody saw it is asked about, not counted in silence", async () => {
  await press(here, "Start the timer");
  await saved(here);
  await here.reload();
  await here.getByRole("button", { name: "Stop the timer" }).waitFor();
  const now = Date.now();
  await rewrite(here, { timer: JSON.stringify({ spans: [], since: now - 180 * 60_000 }), timer_seen: String(now - 150 * 60_000) });
  await here.reload();
  await here.getByText("The timer ran on while nobody saw it").waitFor();
  await here.getByText("30 min").first().waitFor();
  await press(here, "Leave that time out and run on");
  await press(here, "Stop the timer");
  await here.getByText("30 min").first().waitFor();
});

test("a ticket finished in one window takes no more writing in the other, which says so", async () => {
  await finish(here);
  await there.getByText("This ticket is in the records").waitFor();
  await press(there, "Open it again to correct it");
  await step(there, "Take in");
  await there.getByLabel("Batch, if several came together", { exact: true }).fill("club");
  await saved(there);
  await expect.poll(() => here.getByRole("navigation", { name: "Steps of this ticket" }).count()).toBe(1);
  app.expectClean();
});
