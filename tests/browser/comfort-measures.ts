import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";

const AXE = readFileSync(join(import.meta.dirname, "../../node_modules/axe-core/axe.min.js"), "utf8");

/**
 * What axe-core finds against WCAG 2.2 A and AA on the page as it stands, whatever its weight: one line a rule.
 *
 * @param rules asks these rules only, which is much faster
 */
export async function wcagViolations(page: Page, rules?: readonly string[]): Promise<string[]> {
  // What lies under the bench's bar while the page is scrolled is not how it is met.
  await page.evaluate(() => scrollTo(0, 0));
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(AXE);
  return page.evaluate(async (only) => {
    interface Axe { run(where: Document, options: unknown): Promise<{ violations: { id: string; help: string; nodes: { target: unknown[]; failureSummary: string }[] }[] }> }
    const { axe } = globalThis as unknown as { axe: Axe };
    const what = only ? { type: "rule", values: only } : { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] };
    const { violations } = await axe.run(document, { runOnly: what, resultTypes: ["violations"] });
    return violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes.slice(0, 4).map(({ target }) => String(target)).join(", ")}${nodes.length > 4 ? `, ${nodes.length} in all` : ""})`);
  }, rules);
}

/** Drawings that a reader who does not see them learns nothing of: neither named nor put away, or named without a table of their numbers. */
export const untoldCharts = (page: Page): Promise<string[]> => page.evaluate(() => [...document.querySelectorAll("main svg")].flatMap((svg) => {
  const said = `${svg.closest("figure, section")?.querySelector("h2, h3, figcaption")?.textContent?.trim() ?? "a drawing"}`;
  if (svg.closest("[aria-hidden=true]")) return [];
  const picture = svg.closest("[role=img]"), name = picture?.getAttribute("aria-label") ?? "";
  if (!picture || name.length < 20) return [`${said}: no name`];
  const figure = picture.closest("figure");
  const table = figure?.querySelector("table") ?? [...(figure?.querySelectorAll("button") ?? [])].find((button) => button.textContent?.trim() === "Show as table");
  return table ? [] : [`${said}: no table`];
}));

/** Things to press lower or narrower than `least` CSS pixels; links inside a sentence may be as low as its line (WCAG 2.5.8, inline). */
export const smallTargets = (page: Page, least: number, where = "body"): Promise<string[]> => page.evaluate(([selector, px]) => {
  const all = document.querySelector(selector)?.querySelectorAll<HTMLElement>("a[href], button, select, textarea, summary, input, [role=button]") ?? [];
  const inSentence = (one: HTMLElement) => one.tagName === "A" && [...(one.parentElement?.childNodes ?? [])].some((node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? "").trim().length > 2);
  return [...all].flatMap((one) => {
    const hit = one.matches("input[type=radio], input[type=checkbox], input[type=file]") ? one.closest("label") ?? one : one;
    const { width, height } = hit.getBoundingClientRect();
    if (width === 0 || height === 0 || !hit.checkVisibility({ visibilityProperty: true }) || one.closest(".skip") || inSentence(one)) return [];
    return width + 0.5 < px || height + 0.5 < px ? [`${one.tagName.toLowerCase()} “${(one.getAttribute("aria-label") ?? hit.textContent ?? "").trim().slice(0, 40)}” ${Math.round(width)}×${Math.round(height)}`] : [];
  });
}, [where, least] as const);

/** What the keyboard meets. */
export interface Walk {
  readonly stops: number;
  /** Stops without a mark that one sees, or hidden under something else. */
  readonly unseen: string[];
  /** Stops that come before one they stand after on the page. */
  readonly astray: string[];
  /** True when the last stop of the page was reached. */
  readonly through: boolean;
}

/** Walks from the top of the page to its end with the Tab key. */
export async function walk(page: Page, most = 900): Promise<Walk> {
  // Where the keyboard begins is where the focus was last: the first link of the page.
  await page.evaluate(() => { scrollTo(0, 0); document.querySelector<HTMLElement>(".skip")?.focus(); });
  const unseen: string[] = [], astray: string[] = [];
  await page.evaluate(() => { (globalThis as unknown as { met: Element[] }).met = [document.activeElement as Element]; });
  let within = 0;
  for (let stops = 0; stops < most; stops += 1) {
    await page.keyboard.press("Tab");
    const told = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement | null, { met } = globalThis as unknown as { met: Element[] };
      const last = met.at(-1);
      // A date field has several stops of its own.
      if (at !== null && at === last) return "within";
      if (!at || at === document.body || met.includes(at)) return null;
      const marked = [at, at.nextElementSibling, at.closest("label")].some((one) => one && getComputedStyle(one).outlineStyle !== "none" && parseFloat(getComputedStyle(one).outlineWidth) >= 2);
      const shown = at.matches("input[type=radio], input[type=checkbox], input[type=file]") ? at.closest("label") ?? at : at, box = shown.getBoundingClientRect();
      const x = Math.min(Math.max(box.left + Math.min(box.width / 2, 20), 1), innerWidth - 2), y = box.top + Math.min(box.height / 2, 12);
      const over = document.elementFromPoint(x, y), clear = over !== null && (shown.contains(over) || over.contains(shown));
      met.push(at);
      const before = last !== undefined && (last.compareDocumentPosition(at) & Node.DOCUMENT_POSITION_PRECEDING) !== 0;
      return { name: `${at.tagName.toLowerCase()} “${(at.getAttribute("aria-label") ?? at.textContent ?? "").trim().slice(0, 40)}”`, marked, clear, before, y, h: innerHeight };
    });
    if (told === "within" && (within += 1) < 8) continue;
    within = 0;
    if (told === null || told === "within") {
      const through = await page.evaluate(() => {
        const { met } = globalThis as unknown as { met: Element[] };
        const can = [...document.querySelectorAll<HTMLElement>("a[href], button:not(:disabled), select, textarea, summary, input:not(:disabled), [tabindex='0']")].filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.tabIndex >= 0);
        const last = can.at(-1);
        return last === undefined || met.includes(last) || (last instanceof HTMLInputElement && last.type === "radio" && met.some((one) => one instanceof HTMLInputElement && one.name === last.name));
      });
      return { stops, unseen, astray, through };
    }
    if (!told.marked) unseen.push(`${told.name}: no mark`);
    if (!told.clear) unseen.push(`${told.name}: covered or out of sight (${Math.round(told.y)} of ${told.h})`);
    if (told.before) astray.push(told.name);
  }
  return { stops: most, unseen, astray, through: false };
}

/** Pixels by which the page itself, not a table that moves by itself, hangs over the window's edge, with what reaches furthest. */
export const overhang = (page: Page): Promise<string | null> => page.evaluate(() => {
  const { scrollWidth, clientWidth } = document.documentElement;
  if (scrollWidth <= clientWidth) return null;
  const far = [...document.querySelectorAll<HTMLElement>("body *")].filter((one) => one.getBoundingClientRect().right > clientWidth + 1 && !one.closest("[data-fit=sideways]") && one.checkVisibility());
  const last = far.at(-1);
  return `${scrollWidth - clientWidth} px: ${last?.tagName.toLowerCase()}.${String(last?.className)} “${(last?.textContent ?? "").trim().slice(0, 40)}”`;
});
