import { describe, expect, test } from "vitest";
import bearingsCsv from "../../data/vocabulary/bearings.csv?raw";
import { bearingClosure, bearingSize } from "../../src/answers/interchange/bearing-size.ts";
import { ASSORTED, interchangeGroups } from "../../src/answers/interchange/interchange-groups.ts";
import type { PartIdentity } from "../../src/answers/interchange/interchange-groups.ts";
import { oRingSize } from "../../src/answers/interchange/o-ring-size.ts";
import { endedNumbers, replacementChains } from "../../src/answers/interchange/replacement-chains.ts";

const part = (part_no: string, more: Partial<PartIdentity> = {}): PartIdentity =>
  ({ part_no, name: null, family: null, size: null, material: null, replaces: null, ...more });
const groups = (...parts: PartIdentity[]) => Object.fromEntries(interchangeGroups(parts).map((row) => [row.part_no, row.interchange]));

describe("bearingSize", () => {
  test.each([
    ["4×7×2.5", "4x7x2.5"], ["7x4x2.5", "4x7x2.5"], ["7×2.5×4", "4x7x2.5"], ["2,5 x 4 x 7 mm", "4x7x2.5"], ["4-7-2.5", "4x7x2.5"],
    ["4x10x3", "4x10x3"], ["4x3x10", "4x10x3"],
  ])("reads %s as %s, in whatever order it is written", (written, size) => expect(bearingSize(written)).toBe(size));

  test("settles every size of the list in any of its six orders, but for three that the list knows both ways", () => {
    const sizes = bearingsCsv.trim().split("\n").slice(1).flatMap((line) => {
      const [bore = "", outside = "", open = "", closed = ""] = line.split(",");
      return [...new Set([open, closed])].map((width) => [bore, outside, width]);
    });
    const orders = ([a = "", b = "", c = ""]: string[]) => [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]];
    const wrong = sizes.filter((size) => orders(size).some((order) => bearingSize(order.join("x")) !== size.join("x")));
    // Where open and closed share a triple, or two rows do: 3x8x4 and 4x8x3, 3x10x4 and 4x10x3 (open), 4x13x5 and 5x13x4.
    expect(new Set(wrong.map((size) => size.map(Number).sort((a, b) => a - b).join(" ")))).toEqual(new Set(["3 4 8", "3 4 10", "4 5 13"]));
  });

  test("puts a width above the bore where the size list has it, instead of sorting by size", () =>
    expect([bearingSize("9x4x3"), bearingSize("4x9x3")]).toEqual(["3x9x4", "3x9x4"]));

  test.each([["3x8x4", "3x8x4"], ["4x8x3", "4x8x3"], ["3x10x4", "3x10x4"], ["4x13x5", "4x13x5"], ["5x13x4", "5x13x4"]])(
    "keeps the written order of %s, which the list knows both ways", (written, size) => expect(bearingSize(written)).toBe(size));

  test("gives nothing for a text without three numbers or with a zero", () =>
    expect(["7x11", "MR117", "0x11x3", ""].map(bearingSize)).toEqual([null, null, null, null]));
});

describe("bearingClosure", () => {
  test.each([
    ["7×11×3 sealed stainless", "sealed"], ["MR117-2RS", "sealed"], ["SMR117 DDU", "sealed"], ["MR1172RS", "sealed"],
    ["MR117ZZ", "shielded"], ["677 2Z C3", "shielded"], ["5x13x4 shielded", "shielded"], ["open race", "open"],
    ["7x11x3 stainless", "closure unknown"], ["ZZ or 2RS", "closure unknown"],
  ])("calls %s %s", (name, closure) => expect(bearingClosure(name)).toBe(closure));
});

describe("oRingSize", () => {
  test.each([
    ["AS568-014", "AS568-014"], ["-014", "AS568-014"], ["−014", "AS568-014"], ["as568a-014", "AS568-014"],
    ["9.5x1.5", "9.5x1.5"], ["1.5 × 9,5 mm", "9.5x1.5"], ["8x14x4", null], ["large", null],
  ])("reads %s as %s", (written, size) => expect(oRingSize(written)).toBe(size));
});

describe("replacementChains", () => {
  test("runs from the newest number to the oldest, also over numbers that only `replaces` names", () =>
    expect(replacementChains([part("B", { replaces: "A" }), part("C", { replaces: "B" }), part("Z")])).toEqual([["Z"], ["C", "B", "A"]]));

  test("ends in a circle, with the highest number first", () =>
    expect(replacementChains([part("A", { replaces: "B" }), part("B", { replaces: "A" })])).toEqual([["B", "A"]]));

  test("takes several older numbers from one cell, and calls them ended", () => {
    const parts = [part("N", { replaces: "A; B" }), part("A"), part("B")];
    expect([replacementChains(parts), [...endedNumbers(parts)]]).toEqual([[["N", "B", "A"]], ["A", "B"]]);
  });
});

describe("interchangeGroups", () => {
  const bearing = (part_no: string, size: string, name: string) => part(part_no, { family: "ball bearing", size, name });

  test("joins bearings of one size and closure under any number and order of writing, and keeps other closures apart", () =>
    expect(groups(bearing("A1", "7x11x3", "sealed"), bearing("B2", "11x7x3", "2RS"), bearing("C3", "7x11x3", "ZZ"))).toEqual({
      A1: "bearing 7x11x3 sealed", B2: "bearing 7x11x3 sealed", C3: "bearing 7x11x3 shielded",
    }));

  test("never joins bearings on bore and outside alone", () =>
    expect(groups(bearing("A", "5x11x4", "sealed"), bearing("B", "5x11x5", "sealed"))).toEqual({
      A: "bearing 5x11x4 sealed", B: "bearing 5x11x5 sealed",
    }));

  test("joins O-rings of one size and material, and no ring of unknown material", () =>
    expect(groups(
      part("O1", { family: "seal", size: "-014", material: "NBR 70" }), part("O2", { family: "seal", size: "AS568-014", material: "nbr 70" }),
      part("O3", { family: "seal", size: "AS568-014", material: "FKM 75" }), part("O4", { family: "seal", size: "AS568-014" }),
      part("O5", { family: "seal", size: "12.42x1.78", material: "NBR 70" }),
    )).toEqual({
      O1: "O-ring AS568-014 NBR 70", O2: "O-ring AS568-014 NBR 70", O3: "O-ring AS568-014 FKM 75", O4: "O4", O5: "O-ring 12.42x1.78 NBR 70",
    }));

  test("gives an old number the group of the newest number of its chain", () =>
    expect(groups(part("OLD"), part("NEW", { family: "ball bearing", size: "4x7x2.5", name: "sealed", replaces: "OLD" }))).toEqual({
      OLD: "bearing 4x7x2.5 sealed", NEW: "bearing 4x7x2.5 sealed",
    }));

  test("reads no size from a part of another family", () =>
    expect(groups(part("G", { family: "gear", size: "7x11x3", name: "sealed" }))).toEqual({ G: "G" }));

  test("refuses a line that mixes several parts, and leaves it alone", () => {
    const rows = interchangeGroups([part("LRO-MIX", { name: "Line rollers" }), part("S1", { name: "Screws, assorted" }), part("S2", { name: "Screw" })]);
    expect(rows.map((row) => [row.part_no, row.refused])).toEqual([["LRO-MIX", ASSORTED], ["S1", ASSORTED], ["S2", null]]);
  });
});
