import { afterAll, beforeAll, expect, test } from "vitest";
import { rinseRatios } from "../data/rinse-ratios.ts";
import type { RinseRatio } from "../data/rinse-ratios.ts";

/** PT5 of the invented shop: a day unrinsed wears a line roller bearing like two. Twenty seeds of the same invention (data/README.md). */
let found: readonly RinseRatio[];
beforeAll(async () => { found = await rinseRatios(Array.from({ length: 20 }, (_, i) => i + 1)); }, 400_000);
afterAll(() => { found = []; });

test("PT5: followed from fitting to failure, never-rinsed bearings wear twice as fast: limits cover 2 in 18 of 20 shops, the middle lies in 1.8 to 2.3", () => {
  const values = found.map(({ never }) => never.value ?? NaN).sort((a, b) => a - b), middle = ((values[9] as number) + (values[10] as number)) / 2;
  expect(found.every(({ status }) => status === "ok")).toBe(true);
  expect(found.filter(({ never: { low, high } }) => (low ?? Infinity) <= 2 && (high ?? Infinity) >= 2).length).toBeGreaterThanOrEqual(18);
  expect(middle).toBeGreaterThan(1.8);
  expect(middle).toBeLessThan(2.3);
});
