import type { Page } from "playwright-core";
import { openApp, type App, type AppOptions } from "./harness.ts";

/** The bench of a shop without records: the demo is put away. */
export async function openBench(options: AppOptions = {}): Promise<App> {
  const app = await openApp({ path: "#/bench", ...options });
  await app.page.getByRole("button", { name: "Put the demo away and begin" }).click();
  await app.page.getByRole("button", { name: "Take a reel in" }).waitFor();
  return app;
}

export const write = (page: Page, label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
/** Chooses one of the boxes under a heading. */
export const touch = (page: Page, question: string, answer: string) => page.getByRole("group", { name: question }).getByText(answer, { exact: true }).click();
export const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" }).click();
export const saved = (page: Page) => page.getByText("Everything is saved on this computer as you go.").waitFor();

export async function step(page: Page, title: string): Promise<void> {
  await page.getByRole("navigation", { name: "Steps of this ticket" }).getByRole("link", { name: title, exact: true }).click();
  await page.locator(`nav a[aria-current=step]`, { hasText: title }).waitFor();
}

/** A spinning reel comes in for a full service, with all that is needed to log it. */
export async function takeIn(page: Page, model = "Whinbeck 40"): Promise<void> {
  await press(page, "Take a reel in");
  await write(page, "Model, with its size", model);
  await touch(page, "Kind of reel", "spinning");
  await touch(page, "Job", "full service");
  await saved(page);
}

/** Writes what has to stand before a ticket can go into the records, and puts it there. */
export async function finish(page: Page): Promise<void> {
  await step(page, "Finish");
  await press(page, /^Today/);
  await write(page, "Minutes at the bench", "48");
  await touch(page, "How it ended", "returned");
  await press(page, "Finish: put the ticket into the records");
  await page.getByText("This ticket is in the records").waitFor();
}
