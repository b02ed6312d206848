import { expect, test } from "vitest";
import { cautionsOn } from "../../src/records/cautions.ts";
import { cautions } from "../../src/records/vocabulary.ts";

test("a sheet says only what is on the page of all cautions, or one line for a kind of reel, and the maker's sheet comes first", () => {
  const all = cautions.map(({ text }) => text);
  for (const sheet of ["counter", "bench", "card"] as const) expect(cautionsOn(sheet).filter((text) => !all.includes(text)), sheet).toEqual([]);
  for (const sheet of ["bench", "card"] as const) expect(cautionsOn(sheet)[0]).toMatch(/^The maker's service sheet comes first/);
  expect(cautions.filter(({ reel_kinds }) => reel_kinds.length > 0).map(({ sheets, reel_kinds }) => [sheets, reel_kinds])).toEqual([[["card"], ["other"]]]);
});

test("the card of an electric reel names its battery, and no other reel's does", () => {
  expect(cautionsOn("card", "other").some((text) => text.includes("battery"))).toBe(true);
  expect(cautionsOn("card", "fly").some((text) => text.includes("battery"))).toBe(false);
});

test("the page names flammable cleaner, air, springs, the lithium pack, waste, warranty, local rules and licensed practice", () => {
  const said = cautions.filter(({ reel_kinds }) => reel_kinds.length === 0).map(({ text }) => text).join(" ");
  for (const word of ["ultrasonic", "30 psi", "Springs", "lithium", "drain", "warranty", "Local rules", "licensed practice", "safety data sheet"]) expect(said).toContain(word);
});
