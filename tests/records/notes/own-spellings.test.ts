import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spellingBook, spellingFault, withoutSpelling, withSpelling, type OwnSpelling } from "../../../src/records/notes/own-spellings.ts";
import { spellingsFrom, spellingsText } from "../../../src/records/notes/spellings-text.ts";
import { positions } from "../../../src/records/vocabulary.ts";
import { said } from "./reader.ts";

const GIZMO: OwnSpelling = { spelling: "gizmo", reel_kind: null, position: "bail_spring" };
const read = (text: string, entries: readonly OwnSpelling[], kind: "spinning" | "conventional" | null = "spinning") =>
  said(text, kind, { book: spellingBook(entries) });

describe("the shop's own spelling book", () => {
  test("ships empty", () => { expect(spellingsFrom(null)).toEqual({ entries: [], readings: [], faults: [] }); });

  test("teaches a part, a fault, an action and a word that means nothing", () => {
    expect(said("gizmo replaced")).toEqual([]);
    expect(read("gizmo replaced", [GIZMO])).toEqual(["bail_spring replaced 1"]);
    expect(read("bail spring zapped", [{ spelling: "zapped", reel_kind: null, action: "replaced" }])).toEqual(["bail_spring replaced 1"]);
    expect(read("bail spring wonky wibble frobbed, replaced",
      [{ spelling: "wonky wibble frobbed", reel_kind: null, ignored: true }])).toEqual(["bail_spring replaced 1"]);
  });

  test("is looked up before our words, the longest spelling first, and in any case and number", () => {
    expect(read("clutch replaced", [{ spelling: "clutch", reel_kind: null, position: "drag_washer_friction" }])).toEqual(["drag_washer_friction replaced 1"]);
    expect(read("BIG GIZMOS replaced", [GIZMO, { spelling: "big gizmo", reel_kind: null, position: "bail_arm" }])).toEqual(["bail_arm replaced 1"]);
  });

  test("holds a line for one kind of reel before a line for every kind", () => {
    const entries = [GIZMO, { spelling: "gizmo", reel_kind: "conventional", position: "ar_dog" } as const];
    expect(read("gizmo replaced", entries, "conventional")).toEqual(["ar_dog replaced 1"]);
    expect(read("gizmo replaced", entries, "spinning")).toEqual(["bail_spring replaced 1"]);
  });

  test("words that name what every object has are words like any other", () => {
    for (const spelling of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
      expect(said(`${spelling} replaced`)).toEqual([]);
      expect(read(`${spelling} replaced`, [{ ...GIZMO, spelling }])).toEqual(["bail_spring replaced 1"]);
      expect(spellingsFrom(spellingsText([{ ...GIZMO, spelling }])).entries).toEqual([{ ...GIZMO, spelling }]);
    }
    expect(spellingsFrom('[{"__proto__":{"position":"bail_spring"},"spelling":"gizmo","reel_kind":null}]').entries).toEqual([]);
  });
});

describe("a line of the book", () => {
  test("takes the place of one for the same words and kind of reel, and can be taken out", () => {
    const changed = withSpelling([GIZMO], { spelling: "Gizmos", reel_kind: null, position: "bail_arm" });
    expect(changed).toEqual([{ spelling: "Gizmos", reel_kind: null, position: "bail_arm" }]);
    expect(withoutSpelling(changed, "gizmo", null)).toEqual([]);
    expect(withoutSpelling(changed, "gizmo", "fly")).toEqual(changed);
  });

  test.each<[string, unknown]>([
    ["has no spelling", { reel_kind: null, position: "bail_spring" }],
    ["has no letters or figures in its spelling", { spelling: " - ", reel_kind: null, position: "bail_spring" }],
    ["is longer than 6 words or 60 letters", { spelling: "a b c d e f g h", reel_kind: null, position: "bail_spring" }],
    ["names a kind of reel we do not know", { spelling: "gizmo", reel_kind: "toy", position: "bail_spring" }],
    ["names a part we do not know", { spelling: "gizmo", reel_kind: null, position: "__proto__" }],
    ["names a part that a fly reel does not have", { spelling: "gizmo", reel_kind: "fly", position: "bail_spring" }],
    ["names a fault we do not know", { spelling: "gizmo", reel_kind: null, mode: "sad" }],
    ["names an action we do not know", { spelling: "gizmo", reel_kind: null, action: "eaten" }],
    ["must mean one thing: a part, a fault, an action, or nothing", { spelling: "gizmo", reel_kind: null }],
    ["must mean one thing: a part, a fault, an action, or nothing", { spelling: "gizmo", reel_kind: null, position: "bail_spring", action: "left" }],
    ["is not a line of the spelling book", "gizmo"],
  ])("that %s cannot be used", (fault, line) => {
    expect(spellingFault(line)).toBe(fault);
    expect(() => spellingBook([line as OwnSpelling])).toThrow(RangeError);
    expect(spellingsFrom(JSON.stringify([GIZMO, line]))).toEqual({ entries: [GIZMO], readings: [], faults: [`Line 2 of the spelling book ${fault}.`] });
  });

  test("may not stand twice with two meanings", () => {
    expect(() => spellingBook([GIZMO, { spelling: "GIZMO", reel_kind: null, position: "bail_arm" }])).toThrow(/has two for GIZMO/);
  });
});

describe("the book as text", () => {
  const ENTRY = fc.record({ spelling: fc.stringMatching(/^[a-z]{1,12}( [a-z]{1,9}){0,2}$/), reel_kind: fc.constant(null),
    position: fc.constantFrom(...positions.map((row) => row.position)) });
  test("comes back as it was written, and works the same", () => {
    fc.assert(fc.property(fc.array(ENTRY, { maxLength: 12 }), (lines) => {
      const entries = lines.reduce<OwnSpelling[]>(withSpelling, []);
      expect(spellingsFrom(spellingsText(entries))).toEqual({ entries, readings: [], faults: [] });
      expect(spellingBook(entries).phrases.size).toBe(entries.length);
    }));
  });

  test("that is damaged is told and read as empty", () => {
    for (const text of ["{", "{}", "null", "7"]) expect(spellingsFrom(text)).toEqual({ entries: [], readings: [],
      faults: ["The spelling book is damaged and cannot be read."] });
  });
});
