import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { closeAll, emptyPage } from "./harness.ts";
import { drawn, ICONS } from "./icon-drawing.ts";

const file = (name: string) => new URL(`../../src/icons/${name}.png`, import.meta.url);
/** Edges are smoothed a little otherwise in another version of the browser. */
const MOST_DIFFERENT = 0.01;

let page: Page;
beforeAll(async () => { page = await emptyPage(); });
afterAll(closeAll);

/** Share of pixels in which two PNG pictures differ visibly; 1 when their sizes do. */
const different = (one: Buffer, other: Buffer) => page.evaluate(async (pair) => {
  const [a, b] = await Promise.all(pair.map(async (base64) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${base64}`;
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width, picture.height).getContext("2d");
    canvas?.drawImage(picture, 0, 0);
    return canvas?.getImageData(0, 0, picture.width, picture.height).data ?? new Uint8ClampedArray();
  }));
  if (!a || !b || a.length !== b.length) return 1;
  let count = 0;
  for (let at = 0; at < a.length; at += 4) count += [0, 1, 2].some((colour) => Math.abs((a[at + colour] ?? 0) - (b[at + colour] ?? 0)) > 32) ? 1 : 0;
  return count / (a.length / 4);
}, [one.toString("base64"), other.toString("base64")]);

describe("the app's icons", () => {
  test.each(ICONS)("$name is the mark of src/mark.svg, drawn at $size pixels (SALTBENCH_WRITE_ICONS=1 draws them anew)", async (icon) => {
    const now = await drawn(page, icon);
    if (process.env.SALTBENCH_WRITE_ICONS === "1") {
      mkdirSync(new URL(".", file("")), { recursive: true });
      writeFileSync(file(icon.name), now);
    }
    expect(await different(readFileSync(file(icon.name)), now)).toBeLessThan(MOST_DIFFERENT);
    expect(await different(readFileSync(file(icon.name)), await drawn(page, { ...icon, mark: icon.mark * 0.9 }))).toBeGreaterThan(MOST_DIFFERENT);
  });
});
