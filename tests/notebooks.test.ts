import { readdirSync } from "node:fs";
import { resolve } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { CONTENTS } from "../notebooks/binding/contents.ts";
import { demoShop } from "../notebooks/binding/demo.ts";
import { pageHtml } from "../notebooks/binding/page-html.ts";
import { asText } from "../notebooks/binding/pieces.ts";
import type { Picture, Piece } from "../notebooks/binding/pieces.ts";

const demo = demoShop();
afterAll(() => demo.close());

const pictures = (pieces: readonly Piece[]): Picture[] => pieces.filter((piece): piece is Picture => typeof piece !== "string");
/** Words of an axis: Plot's own label, or the unit written over the picture. */
const axisWords = ({ svg }: Picture): string =>
  [...svg.querySelectorAll('[aria-label$="axis label"], g[font-style="italic"]')].map((one) => one.textContent ?? "").join(" ").trim();

/** Each takes a few seconds; on a machine whose cores are busy ten times as long. */
const PATIENCE = 300_000;
/** What a chart says of its figures when one of them was none: in words, or as a place. */
const NO_NUMBER = /NaN|undefined|null|Infinity/;

describe("notebooks", () => {
  test("every notebook is in the contents", () => {
    const there = readdirSync(resolve(import.meta.dirname, "../notebooks")).filter((name) => name.endsWith(".ts")).map((name) => name.replace(".ts", ""));
    expect(CONTENTS.map(({ file }) => file).sort()).toEqual(there.sort());
  });

  test.each(CONTENTS)("$file runs, shows no number that is none, draws a picture with units, and names its sources", async ({ question, load }) => {
    const { notebook } = await load(), pieces = await notebook(demo), text = asText(pieces), drawn = pictures(pieces);
    expect(text).toMatch(/^# .+/);
    expect(text).not.toMatch(NO_NUMBER);
    expect(text.match(/\d/g)?.length).toBeGreaterThan(20);
    expect(drawn.length).toBeGreaterThan(0);
    for (const one of drawn) {
      expect([one.name, NO_NUMBER.exec(one.svg.outerHTML)]).toEqual([one.name, null]);
      expect([one.name, axisWords(one) !== "", one.svg.querySelectorAll("text").length > 3]).toEqual([one.name, true, true]);
    }
    // A year in brackets or after a name: whose method or data it is.
    expect(pieces.at(-1)).toMatch(/^## Sources\n[^]*(19|20)\d\d/);
    const page = pageHtml(question, pieces);
    expect(page).toContain("default-src 'none'");
    expect(page).not.toMatch(/<script|<link|<img|src=|@import|url\((?!#)/);
    expect(page.match(/<svg/g)?.length).toBeGreaterThanOrEqual(drawn.length);
  }, PATIENCE);
});

describe("pageHtml", () => {
  test("words that look like HTML, links or pictures stay words", () => {
    const page = pageHtml("<b>", ["A reel named <img src=x onerror=alert(1)> and [a way](javascript:alert(1)) and ![a face](http://far.example/face.png)", "| part |\n| --- |\n| <script>alert(1)</script> |"]);
    expect(page).not.toMatch(/<img|<script|<a |href=/);
    expect(page).toContain("&lt;img src=x onerror=alert(1)&gt;");
    expect(page).toContain("<title>&lt;b&gt;</title>");
  });
});
