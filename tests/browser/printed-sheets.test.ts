import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, LAPTOP, openApp } from "./harness.ts";
import type { App } from "./harness.ts";
import { visit } from "./visit.ts";

/** Width of what is printed on, in CSS pixels: the paper less margins of 14 mm on both sides. */
const PAPERS = [{ format: "A4", width: ((210 - 28) / 25.4) * 96 }, { format: "Letter", width: ((215.9 - 28) / 25.4) * 96 }] as const;

/** Each sheet: where it is, what must stand before it is printed, and what is printed for whom. */
interface Sheet {
  readonly name: string;
  readonly place: string;
  readonly stands: (page: Page) => Promise<unknown>;
  /** By the sheet's own button, or by the browser's print alone. */
  readonly button: ((page: Page) => Promise<unknown>) | null;
  readonly told: readonly RegExp[];
  readonly untold: readonly RegExp[];
}
const stand = (words: string | RegExp) => (page: Page) => page.getByText(words).first().waitFor();
const own = (region: RegExp) => (page: Page) => page.getByRole("region", { name: region }).first().getByRole("button", { name: "Print this sheet" }).click();
const CARD = "card?reel=Brackhelm+Whinbeck+40&fished=salt&rinse=never&days=40&complaint=C03", EVIDENCE = "failures?position=ar_clutch&model=Brackhelm+Whinbeck+40&sheet=evidence";
const card = { place: CARD, stands: stand("Have ready"), told: [/maker's service sheet comes first/, /glasses|springs/i, /Have ready/], untold: [/Fished in/, /Clear filters/] };
const SHEETS: readonly Sheet[] = [
  { name: "morning sheet", place: "morning", stands: stand("would have waited for a part"), button: null, told: [/Order today/, /Promise today/, /reels that came in here/], untold: [/counting/, /on Stock/] },
  { name: "reel card, by its button", ...card, button: (page) => page.getByRole("button", { name: "Print this sheet" }).click() },
  { name: "reel card, by the browser's own print", ...card, button: null },
  { name: "order sheet", place: "stock", stands: stand("How good is the advice?"), button: own(/^Order from/), told: [/Order from/, /Harrow Quay/, /Number/], untold: [/Why/, /on the shelf/, /You use/, /maker/, /hold up/] },
  { name: "evidence sheet", place: EVIDENCE, stands: stand("How it was counted"), button: null, told: [/How it was counted/, /local law/], untold: [/Choose other reels/] },
  { name: "customer slip", place: "wear?reel=any+spinning&fished=salt&rinse=never", stands: stand(/^Come in after \d+ salt days/), button: own(/salt days|service|come in/i), told: [/Ticket/, /Come in by/], untold: [/seen at planned services/] },
];

let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ colorScheme: "dark" });
  page = app.page;
  await page.getByText("would have waited for a part").first().waitFor();
  await page.evaluate(() => { window.print = () => undefined; });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

const pages = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

/** What the print would show: its words, what of it is cut off, what belongs to the screen alone, and any colour that is not a grey. */
const printed = () => page.evaluate(() => {
  const right = document.documentElement.clientWidth, grey = (colour: string) => { const [r, g, b] = (colour.match(/[\d.]+/g) ?? []).map(Number); return r === g && g === b; };
  const shown = [...document.querySelectorAll<HTMLElement>("body *")].filter((one) => one.checkVisibility() && !one.closest(".unseen"));
  const worded = shown.filter((one) => [...one.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim()));
  const words = (one: Element) => `${one.tagName} ${one.textContent?.trim().slice(0, 40)}`;
  return {
    text: worded.map((one) => one.innerText).join("\n"),
    cut: worded.filter((one) => one.getBoundingClientRect().right > right + 1 || (getComputedStyle(one).overflowX === "hidden" && one.scrollWidth > one.clientWidth + 1)).map(words),
    controls: shown.filter((one) => one.matches("input, select, textarea, nav, progress, button:not(th button), .banner")).map(words),
    coloured: worded.filter((one) => !one.closest("svg") && !grey(getComputedStyle(one).color)).map(words),
    paper: getComputedStyle(document.documentElement).backgroundColor,
  };
});

describe.each(SHEETS)("the $name", ({ place, stands, button, told, untold }) => {
  test.each(PAPERS)("is one page of $format, black on white, nothing cut, nothing of the screen on it", async ({ format, width }) => {
    await visit(page, place);
    await stands(page);
    if (button) await button(page);
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    await page.setViewportSize({ width: Math.floor(width), height: 900 });
    const { text, ...found } = await printed();
    await page.emulateMedia({ media: null, colorScheme: "dark" });
    await page.setViewportSize(LAPTOP);
    expect(found).toEqual({ cut: [], controls: [], coloured: [], paper: "rgb(255, 255, 255)" });
    for (const words of told) expect(text).toMatch(words);
    for (const words of untold) expect(text).not.toMatch(words);
    // Making the PDF ends the printing of one sheet, as closing the print window does.
    expect(pages(await page.pdf({ format }))).toBe(1);
  });
});
