import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { PAPER_THEME } from "../../src/ui/chart-theme.ts";
import { contrast, distance, type Sight } from "./colour.ts";

const css = readFileSync(new URL("../../src/ui/theme.css", import.meta.url), "utf8");
const tokens = [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)];
const scheme = (group: 2 | 3) => (name: string): string => {
  const found = tokens.find((token) => token[1] === name)?.[group];
  if (!found) throw new RangeError(`theme.css must name the colour --${name}`);
  return found;
};
const SCHEMES = [["light", scheme(2)], ["dark", scheme(3)]] as const;
const CATEGORIES = [1, 2, 3, 4, 5].map((n) => `category-${n}`);

describe.each(SCHEMES)("the %s scheme", (_name, colour) => {
  // WCAG 2.2, 1.4.3 Contrast (Minimum), level AA: 4.5 to 1 for text.
  test.each(["ink", "soft", "accent", "attention"])("%s can be read on every ground of the app", (name) => {
    for (const ground of ["paper", "desk", "accent-wash", "attention-wash"]) {
      expect(contrast(colour(name), colour(ground)), `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("paper can be read on a main button, at rest and under the pointer", () => {
    expect(contrast(colour("paper"), colour("accent"))).toBeGreaterThanOrEqual(4.5);
    expect(contrast(colour("paper"), colour("ink"))).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, 1.4.11 Non-text Contrast, level AA: 3 to 1 for edges of controls and for marks of a chart.
  test.each(["rule-strong", ...CATEGORIES])("%s stands out from the paper", (name) => {
    expect(contrast(colour(name), colour("paper"))).toBeGreaterThanOrEqual(3);
  });

  test.each<Sight>(["usual", "protan", "deutan", "tritan"])("no two categories look the same to %s sight", (sight) => {
    for (const [n, a] of CATEGORIES.entries()) {
      for (const b of CATEGORIES.slice(n + 1)) {
        // Nine hundredths in OKLab: several just noticeable steps; a rule of ours, no source.
        expect(distance(colour(a), colour(b), sight), `${a} and ${b}`).toBeGreaterThanOrEqual(0.09);
      }
    }
  });
});

test("pictures that stand alone carry the light scheme's colours", () => {
  const light = scheme(2);
  const { paper, ink, soft, rule, accent, attention, categories } = PAPER_THEME;
  expect({ paper, ink, soft, rule, accent, attention }).toEqual({
    paper: light("paper"), ink: light("ink"), soft: light("soft"), rule: light("rule"), accent: light("accent"), attention: light("attention"),
  });
  expect(categories).toEqual(CATEGORIES.map(light));
});

test("black on white has the largest contrast there is, 21 to 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
});
