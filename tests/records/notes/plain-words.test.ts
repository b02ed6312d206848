import { describe, expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import { isPlain } from "../../../src/records/notes/plain-words.ts";

const unknown = (text: string) => noteFindings(text, { reel_kind: "spinning", cell: "note" }).unknown;

describe("everyday words are not asked", () => {
  test.each(["customer", "arrived", "dropping", "carried", "bigger", "slowly", "honest", "yesterday", "cousin", "petrol"])(
    "%s", (word) => {
      expect(isPlain(word)).toBe(true);
      expect(unknown(word)).toEqual([]);
    });

  test.each(["customer", "looks", "fine", "Customer looks fine"])("%s", (text) => { expect(unknown(text)).toEqual([]); });

  test("nor are whole sentences of them; a word of no list among them still is, by itself", () => {
    expect(unknown("The customer arrived early and looked rather pleased with his holiday")).toEqual([]);
    expect(unknown("his cousin bought it second hand and thought it had belonged to a doctor")).toEqual([]);
    expect(unknown("customer arrived, flurble looked fine")).toEqual(["flurble"]);
  });

  test.each(["handle", "line", "cap", "pin", "wheel", "ring", "post", "gizmo", "wibbler", "flurble"])("%s is one that may name a part", (word) => {
    expect(isPlain(word)).toBe(false);
  });
});
