import { mkdir, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { Page } from "playwright-core";
import { FOOT_ROOMS, ROOMS } from "../../src/rooms.ts";
import { openBench, step, takeIn } from "./bench-steps.ts";
import { closeAll, openApp } from "./harness.ts";
import { indexedPng } from "./indexed-png.ts";
import { settled, visit } from "./visit.ts";

const FOLDER = resolve(import.meta.dirname, "../../data/pictures"), WIDTH = 1366, HEIGHT = 860;

/** What of a room is shown, after its slug; the room as it opens where nothing stands here. */
const SHOWN: Readonly<Record<string, string>> = {
  card: "reel=Brackhelm+Whinbeck+40&fished=salt&rinse=never&days=30&said=slips+back+on+a+big+fish",
};
/** What the picture begins with, where a room opens with fields or words that another room shows as well. */
const FROM: Readonly<Record<string, string>> = {
  card: "main .sheet", failures: "main h2:has-text('The reel, part by part')", wear: "xpath=//main//figure[contains(., 'Share failed by')]/preceding::h2[1]", season: "main h2:has-text('The weeks ahead')",
};
const ABOVE = 28;

async function take(page: Page, slug: string): Promise<void> {
  const from = FROM[slug];
  if (from === undefined) await page.evaluate(() => scrollTo(0, 0));
  else await page.locator(from).first().evaluate((place, above) => scrollTo(0, place.getBoundingClientRect().top + scrollY - above), ABOVE);
  const aside = await page.context().newPage(), png = await page.screenshot({ clip: { x: 0, y: 0, width: WIDTH, height: HEIGHT }, animations: "disabled" }), small = await indexedPng(aside, png);
  await aside.close();
  await writeFile(join(FOLDER, `${slug}.png`), small);
  process.stdout.write(`data/pictures/${slug}.png ${Math.round(small.length / 1000)} kB\n`);
}

/**
 * A picture of every room on the demo records, light, for the README; rooms may be named to make only theirs.
 *
 *     npm run build && node src/commands/run-ts.mjs tests/browser/room-pictures.ts [SLUG…]
 */
export async function main(named: readonly string[]): Promise<number> {
  const viewport = { width: WIDTH, height: HEIGHT }, slugs = [...ROOMS, ...FOOT_ROOMS].map(({ slug }) => slug).filter((slug) => named.length === 0 || named.includes(slug));
  await mkdir(FOLDER, { recursive: true });
  try {
    const { page } = await openApp({ viewport });
    await settled(page);
    for (const slug of slugs.filter((one) => one !== "bench")) {
      await visit(page, SHOWN[slug] === undefined ? slug : `${slug}?${SHOWN[slug]}`);
      // Pictures draw themselves once they know their width.
      await page.waitForTimeout(1500);
      await settled(page);
      await take(page, slug);
    }
    if (slugs.includes("bench")) {
      const { page: bench } = await openBench({ viewport });
      await takeIn(bench);
      await step(bench, "At the bench");
      await take(bench, "bench");
    }
    return 0;
  } finally {
    await closeAll();
  }
}
