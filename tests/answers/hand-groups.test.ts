import { describe, expect, test } from "vitest";
import bearingsCsv from "../../data/vocabulary/bearings.csv?raw";
import { bearingReading, sizeOfCode } from "../../src/answers/interchange/bearing-size.ts";
import { handGroupsText, readHandGroups } from "../../src/answers/interchange/hand-groups.ts";
import type { HandGroup } from "../../src/answers/interchange/hand-groups.ts";
import { interchangeGroups, sizeQuestions } from "../../src/answers/interchange/interchange-groups.ts";
import type { PartIdentity } from "../../src/answers/interchange/interchange-groups.ts";

const part = (part_no: string, more: Partial<PartIdentity> = {}): PartIdentity =>
  ({ part_no, name: null, family: null, size: null, material: null, replaces: null, ...more });
const bearing = (part_no: string, size: string | null, name = "sealed") => part(part_no, { family: "ball bearing", size, name });
const groups = (parts: PartIdentity[], hand: HandGroup[]) => Object.fromEntries(interchangeGroups(parts, hand).map((row) => [row.part_no, row.interchange]));
const PARTS = [bearing("A", "7x11x3"), bearing("B", "7x11x3"), bearing("C", "8x16x5"), part("S-1"), part("M-1", { name: "Springs, assorted" })];
const apart = { A: "bearing 7x11x3 sealed", B: "bearing 7x11x3 sealed", C: "bearing 8x16x5 sealed", "S-1": "S-1", "M-1": "M-1" };

describe("groups made by hand", () => {
  test("a join counts two parts as one from then on, with all that was counted with either", () => {
    expect(groups(PARTS, [{ kind: "join", part_nos: ["C", "B"] }])).toEqual({ ...apart, A: apart.C, B: apart.C });
    expect(groups(PARTS, [{ kind: "join", part_nos: ["S-1", "C"] }])).toEqual({ ...apart, "S-1": "S-1", C: "S-1" });
  });
  test("a split takes a part out of its group", () =>
    expect(groups(PARTS, [{ kind: "split", part_nos: ["B"] }])).toEqual({ ...apart, B: "B, apart" }));
  test("the later wins, and taking it out brings the earlier back", () => {
    const join: HandGroup = { kind: "join", part_nos: ["B", "C"] }, split: HandGroup = { kind: "split", part_nos: ["C"] };
    expect(groups(PARTS, [join, split])).toEqual({ ...apart, C: "C, apart" });
    expect(groups(PARTS, [join])).toEqual(groups(PARTS, [join]));
    expect(groups(PARTS, [])).toEqual(apart);
  });
  test("an assorted line cannot be joined, and a number nobody knows changes nothing", () =>
    expect(groups(PARTS, [{ kind: "join", part_nos: ["M-1", "S-1"] }, { kind: "split", part_nos: ["GONE"] }])).toEqual(apart));

  test("come back as they were kept", () => {
    const kept: HandGroup[] = [{ kind: "join", part_nos: ["A", "C"] }, { kind: "split", part_nos: ["B"] }, { kind: "size", part_no: "Q", size: "4x8x3" }];
    expect(readHandGroups(handGroupsText(kept))).toEqual({ groups: kept, faults: [] });
    expect(readHandGroups(null)).toEqual({ groups: [], faults: [] });
  });
  test("are refused with one number to join or without a size, and left out and named when they cannot be read", () => {
    expect(() => handGroupsText([{ kind: "join", part_nos: ["A", "A"] }])).toThrow(new RangeError("handGroupsText: a group made by hand is wrong: it needs at least 2 part numbers"));
    expect(readHandGroups('[{"kind":"join","part_nos":["A"]},{"kind":"split","part_nos":["B"]}]')).toEqual({
      groups: [{ kind: "split", part_nos: ["B"] }], faults: ["A group made by hand was left out: it needs at least 2 part numbers."],
    });
    expect(readHandGroups("{").faults[0]).toMatch(/^The groups made by hand cannot be read: /);
  });
});

describe("bearings that read in two ways", () => {
  test("are exactly the three triples that the size list knows both ways", () => {
    // Common practice, no source: the size list was searched by script for triples that two of its rows share.
    const triples = bearingsCsv.trim().split("\n").slice(1).flatMap((line) => {
      const [bore = "", outside = "", open = "", closed = ""] = line.split(",");
      return [open, closed].filter((width) => typeof bearingReading(`${bore}x${outside}x${width}`)?.other === "string")
        .map((width) => [bore, outside, width].map(Number).sort((a, b) => a - b).join(" "));
    });
    expect([...new Set(triples)].sort()).toEqual(["3 4 10", "3 4 8", "4 5 13"]);
  });
  test("are settled by their closure where only one of the two is made so", () => {
    // The size list: 4x10 is 3 wide open and 4 wide closed, 3x10 is 4 wide either way; 5x13 and 4x13 are as wide open as closed.
    expect([bearingReading("4x10x3", "sealed"), bearingReading("4x10x3", "open")]).toEqual([{ size: "3x10x4", other: null }, { size: "4x10x3", other: "3x10x4" }]);
    expect(bearingReading("5x13x4", "shielded")).toEqual({ size: "5x13x4", other: "4x13x5" });
    expect(sizeQuestions([bearing("A", "3x10x4", "ZZ"), bearing("B", "3x10x4", "stainless")], []).map((one) => one.part_no)).toEqual(["B"]);
  });
  test("are asked, read as written until then, and read as the owner says after", () => {
    const parts = [bearing("Q", "4x8x3"), bearing("R", "3x8x4"), bearing("S", "7x11x3")];
    expect(sizeQuestions(parts, [])).toEqual([
      { part_no: "Q", name: "sealed", readings: ["4x8x3", "3x8x4"] }, { part_no: "R", name: "sealed", readings: ["3x8x4", "4x8x3"] },
    ]);
    const answer: HandGroup = { kind: "size", part_no: "Q", size: "3x8x4" };
    expect(groups(parts, [])["Q"]).toBe("bearing 4x8x3 sealed");
    expect(groups(parts, [answer])["Q"]).toBe("bearing 3x8x4 sealed");
    expect(sizeQuestions(parts, [answer]).map((one) => one.part_no)).toEqual(["R"]);
  });
});

describe("bearings named by a code", () => {
  // The list's own codes: MR117 and 677 are 7x11x3, open 7x11x2.5; 623 is 3x10x4 open and closed; prefixes S, SS, W stainless.
  test.each([["SMR117-2RS", "sealed", "7x11x3"], ["677ZZ", "shielded", "7x11x3"], ["MR117 open", "open", "7x11x2.5"], ["623", "closure unknown", "3x10x4"], ["W61800-2RS", "sealed", "10x19x5"]] as const)(
    "%s, %s, is %s", (name, closure, size) => expect(sizeOfCode(name, closure)).toBe(size));
  test("say nothing where the width hangs on a closure nobody wrote, where two codes differ, or for other numbers", () =>
    expect([sizeOfCode("MR117", "closure unknown"), sizeOfCode("MR117 or 623 ZZ", "shielded"), sizeOfCode("BX-1677", "sealed"), sizeOfCode("6239", "sealed")]).toEqual([null, null, null, null]));
  test("are grouped with those whose size is written", () =>
    expect(groups([bearing("A", "7x11x3"), bearing("MR117-2RS", null, "stainless")], [])["MR117-2RS"]).toBe("bearing 7x11x3 sealed"));
});
