import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { FOOT_ROOMS, ROOMS } from "../../src/rooms.ts";

const FOLDER = resolve(import.meta.dirname, "../../data/pictures");

test.each([...ROOMS, ...FOOT_ROOMS])("$title has a picture for the README, 1366 points wide and under 120 kB", ({ slug }) => {
  const png = readFileSync(resolve(FOLDER, `${slug}.png`));
  // The heading of a PNG: eight bytes of mark, then the first chunk with the width (ISO/IEC 15948, 5.2 and 11.2.2).
  expect([png.subarray(1, 4).toString("latin1"), png.readUInt32BE(16)]).toEqual(["PNG", 1366]);
  expect(png.length).toBeLessThan(120_000);
});
