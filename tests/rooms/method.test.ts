import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { QUESTIONS, TAKEN_FOR_GRANTED } from "../../src/rooms/method/questions.ts";
import { SOURCES } from "../../src/rooms/method/sources.ts";

const SRC = resolve(import.meta.dirname, "../../src");
/** Comments of a file as running text, so that a name broken over lines is found. */
const headings = (file: string): string => (readFileSync(resolve(SRC, file), "utf8").match(/\/\*\*[^]*?\*\//g) ?? []).join(" ").replace(/\s*\n\s*\*\s*/g, " ");

describe("how it is worked out", () => {
  test.each(Object.entries(SOURCES))("the source %s is named, with its year, in the heading of the file that does it", (_, { who, year, file }) => {
    const text = headings(file), [first = ""] = who.split(/,| &/), at = text.search(new RegExp(`${first}[^.;]{0,60}${year}`));
    expect([who, at >= 0]).toEqual([who, true]);
  });

  test("the pages named are those of the heading", () => {
    const wrong = Object.values(SOURCES).filter(({ where, file }) => {
      const pages = /\d+:\d+/.exec(where)?.[0];
      return pages !== undefined && !headings(file).includes(pages);
    });
    expect(wrong.map(({ who }) => who)).toEqual([]);
  });

  test("every question says what is done, what it needs and what it does not say, and no source is left unused", () => {
    expect(new Set(QUESTIONS.map(({ slug }) => slug)).size).toBe(QUESTIONS.length);
    for (const { slug, question, done, needs, silent } of QUESTIONS) expect([slug, question !== "", done.length > 0, needs !== "", silent !== ""]).toEqual([slug, true, true, true, true]);
    expect(Object.keys(SOURCES).filter((name) => !QUESTIONS.some(({ sources }) => (sources as readonly string[]).includes(name)))).toEqual([]);
    expect(TAKEN_FOR_GRANTED.length).toBeGreaterThan(0);
  });

  test("no sentence has words of the trade of numbers", () => {
    const said = QUESTIONS.flatMap(({ question, done, needs, silent }) => [question, ...done, needs, silent]).concat(TAKEN_FOR_GRANTED).join(" ");
    expect(said.match(/p.value|confidence|posterior|prior|regression|likelihood|Weibull|Poisson|quantile|binomial|hazard|null hypothesis|significan|covariate|percentile/gi)).toBeNull();
    expect(said).not.toMatch(/NaN|undefined/);
  });

  test("every way here from a room names a question that stands on the page", () => {
    const files = ["failures/Room.svelte", "stock/Room.svelte", "wear/Room.svelte", "labour/Room.svelte", "season/Room.svelte", "settings/Room.svelte"];
    const ways = files.flatMap((file) => [...readFileSync(resolve(SRC, "rooms", file), "utf8").matchAll(/#\/method(?:\?on=([a-z]+))?/g)].map((found) => [file, found[1] ?? "counting"] as const));
    expect(new Set(ways.map(([file]) => file))).toEqual(new Set(files));
    expect(ways.filter(([, on]) => !QUESTIONS.some(({ slug }) => slug === on))).toEqual([]);
  });
});
