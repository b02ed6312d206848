import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

export interface Icon { readonly name: string; readonly size: number; /** Share of the icon's width that the mark takes. */ readonly mark: number }

/** A maskable icon may be cut to a circle of 80 % of its width; the mark reaches 15/16 of its own. */
export const ICONS: readonly Icon[] = [
  { name: "mark-192", size: 192, mark: 1 },
  { name: "mark-512", size: 512, mark: 1 },
  { name: "mark-maskable-512", size: 512, mark: 0.8 },
];

const MARK = readFileSync(new URL("../../src/mark.svg", import.meta.url), "utf8");

/** The icon as the browser draws it from `src/mark.svg`, as PNG. */
export async function drawn(page: Page, { size, mark }: Icon): Promise<Buffer> {
  const ground = /<rect[^>]*fill="([^"]+)"/.exec(MARK)?.[1] ?? "";
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(`<style>body{margin:0;background:${ground};display:grid;place-items:center;height:${size}px}svg{width:${size * mark}px;height:${size * mark}px}</style>${MARK}`);
  return page.screenshot({ clip: { x: 0, y: 0, width: size, height: size } });
}
