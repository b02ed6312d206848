import type { Page } from "playwright-core";

/** Waits until every answer of the room that is open stands on the sheet. */
export async function settled(page: Page): Promise<void> {
  await page.locator("main h1").waitFor();
  await page.locator("main").locator("table, figure, ul, ol, .notice").first().waitFor();
  await page.waitForFunction(() => document.querySelector("main progress, main [aria-busy=true]") === null);
}

/** Goes to a room by the address after `#/`, as a bookmark does, and waits for its answers. */
export async function visit(page: Page, place: string): Promise<void> {
  await page.evaluate((hash) => (location.hash = hash), `#/${place}`);
  await page.waitForFunction((slug) => document.querySelector(`nav a[href="#/${slug}"][aria-current=page]`) !== null, place.split("?")[0]);
  await settled(page);
}

/** What the address says after its `#`, decoded. */
export const hash = (page: Page): string => decodeURIComponent(new URL(page.url()).hash.replaceAll("+", " "));

/** Cells of a table by its caption, row by row, with the heading as the first row. */
export async function cells(page: Page, caption: string | RegExp): Promise<string[][]> {
  const table = page.getByRole("table", { name: caption });
  await table.waitFor();
  return table.evaluate((shown) => [...(shown as HTMLTableElement).rows].map((row) => [...row.cells].map((cell) => cell.innerText.trim().replace(/\s+/g, " "))));
}
