import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { openApp } from "./harness.ts";
import type { App, AppOptions } from "./harness.ts";

export const shape = (name: string) => ({ name, mimeType: "text/plain", buffer: readFileSync(new URL(`../records/understanding/shapes/${name}`, import.meta.url)) });

/** What the title block says under a heading. */
export const fact = async (page: Page, label: string) => (await page.locator("dl div", { hasText: label }).locator("dd").innerText()).trim();
export const facts = async (page: Page) => [await fact(page, "Rows kept"), await fact(page, "Imports"), await fact(page, "To fix")];

/** The Records room of a shop that has no records. */
export async function openRecords(options: AppOptions = {}): Promise<App> {
  const app = await openApp({ path: "#/records", ...options });
  app.page.setDefaultTimeout(150_000);
  await app.page.getByRole("heading", { level: 1, name: "Records", exact: true }).waitFor();
  return app;
}

export async function empty(page: Page): Promise<void> {
  await page.reload();
  await page.getByRole("heading", { level: 1, name: "Records", exact: true }).waitFor();
  const all = page.getByRole("button", { name: "Remove all records" });
  if (await all.isDisabled()) return;
  await all.click();
  await page.getByRole("dialog").getByRole("button", { name: "Remove all" }).click();
  await page.getByText("Nothing has been brought in yet.").waitFor();
}

type Files = Parameters<ReturnType<Page["locator"]>["setInputFiles"]>[0];

/** Chooses files and waits until the first of them is understood and tried. */
export async function look(page: Page, files: Files): Promise<void> {
  await page.getByLabel("Choose files").setInputFiles(files);
  await page.getByRole("heading", { name: /^What we understood of/ }).waitFor();
  await tried(page);
}

/** Waits until the preview is that of the answers as they are. */
export async function tried(page: Page): Promise<void> {
  await page.getByRole("region", { name: "What will come in" }).waitFor();
  await page.waitForFunction(() => document.querySelector("main [aria-busy=true]") === null);
}

/** The line at the foot: what will come in with the answers as they are. */
export const foot = async (page: Page) => (await page.getByRole("status").filter({ hasText: "will come in" }).innerText()).trim();

/** The questions, each with the answer that is chosen. */
export function questions(page: Page): Promise<[string, string | null][]> {
  return page.locator("section[aria-labelledby=file-questions]").evaluateAll((sections) => sections.flatMap((section) => [
    ...[...section.querySelectorAll("fieldset")].map((one): [string, string | null] =>
      [one.querySelector("legend")?.textContent?.trim() ?? "", one.querySelector("label:has(:checked)")?.textContent?.trim() ?? null]),
    ...[...section.querySelectorAll(".field")].map((one): [string, string | null] =>
      [one.querySelector("label")?.textContent?.trim() ?? "", one.querySelector("input")?.value || null]),
  ]));
}

export async function bringIn(page: Page, came: string | RegExp = /came in\./): Promise<void> {
  await page.getByRole("button", { name: /^Bring (it|them) in$/ }).click();
  await page.getByText(came).first().waitFor();
}
