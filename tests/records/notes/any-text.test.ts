import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import type { NoteCell } from "../../../src/records/notes/note-finding.ts";
import { spellingBook } from "../../../src/records/notes/own-spellings.ts";
import { actions, modes, positions } from "../../../src/records/vocabulary.ts";
import { corpus } from "./corpus.ts";

const KIND = fc.constantFrom("spinning", "conventional", "baitcaster", "fly", "other", null);
const CELL = fc.constantFrom<NoteCell>("note", "parts", "complaint", "complaint and note");
const WORDS = [...new Set(corpus().flatMap(({ text }) => text.split(" ")))];
/** Any characters at all, and words of the bench in any order: the second finds far more of our rules. */
const TEXT = fc.oneof(
  fc.string({ unit: "binary", maxLength: 300 }), fc.string({ unit: "grapheme", maxLength: 300 }),
  fc.array(fc.constantFrom(...WORDS, "__proto__", "constructor", "toString", "\n", "(", ")", "?", "2x", "×", "½", "　"),
    { maxLength: 40 }).map((words) => words.join(" ")),
);
const known = { position: new Set(positions.map((row) => row.position)), action: new Set<string>(actions.map((row) => row.action)),
  mode: new Set(modes.map((row) => row.mode)) };

describe("any text", () => {
  test("is read without an error; findings name known parts once each, with a text that stands in the note", () => {
    fc.assert(fc.property(TEXT, KIND, CELL, (text, reel_kind, cell) => {
      const { findings, unknown } = noteFindings(text, { reel_kind, cell });
      for (const one of findings) {
        expect(one.text).toBe(text.slice(one.start, one.end));
        expect(one.end).toBeGreaterThan(one.start);
        if (one.position !== null) expect(known.position).toContain(one.position);
        if (one.action !== null) expect(known.action).toContain(one.action);
        if (one.mode !== null) expect(known.mode).toContain(one.mode);
        expect(one.confidence).toBeGreaterThan(0);
        expect(one.confidence).toBeLessThanOrEqual(1);
        expect(one.rule).not.toBe("");
        expect(one.qty !== null).toBe(one.action === "replaced" || one.action === "wanted");
      }
      const placed = findings.flatMap(({ position }) => (position === null ? [] : [position]));
      expect(new Set(placed).size).toBe(placed.length);
      for (const words of unknown) expect(text).toContain(words);
      if (cell === "complaint") expect(findings).toEqual([]);
    }), { numRuns: 1500 });
  });

  test("is read the same each time, whatever was read in between", () => {
    fc.assert(fc.property(TEXT, TEXT, KIND, CELL, (text, other, reel_kind, cell) => {
      const first = noteFindings(text, { reel_kind, cell });
      noteFindings(other, { reel_kind, cell });
      expect(noteFindings(text, { reel_kind, cell })).toEqual(first);
    }), { numRuns: 300 });
  });

  test("gives the same findings under an empty spelling book", () => {
    fc.assert(fc.property(TEXT, KIND, CELL, (text, reel_kind, cell) => {
      expect(noteFindings(text, { reel_kind, cell, book: spellingBook([]) })).toEqual(noteFindings(text, { reel_kind, cell }));
    }), { numRuns: 300 });
  });
});

describe("long cells", () => {
  /** Ten times the length may not take a hundred times as long: a pattern that tries again and again would. */
  const PIECES = ["a", " ", "1", ".", "4x7x", "(", "a'", "a.", "-0", "bearing, ", "bail spring replaced + ", "replaced ", "left right ", "no ", "2 of "];
  test.each(PIECES)("of %j without end take time in step with their length", (piece) => {
    const time = (length: number) => {
      const text = piece.repeat(Math.ceil(length / piece.length)).slice(0, length), start = performance.now();
      noteFindings(text, { reel_kind: "spinning", cell: "note" });
      return performance.now() - start;
    };
    // The shortest of some runs: what other work on the machine takes is not in it.
    const least = (length: number, runs: number) => Math.min(...Array.from({ length: runs }, () => time(length)));
    expect(least(19_000, 3)).toBeLessThan(60 * Math.max(4, least(1_900, 6)));
  });

  test("of ten megabytes are read to twenty thousand characters, and the beginning of the rest is told as not understood", () => {
    const text = "bail spring replaced. ".repeat(480_000);
    const { findings, unknown } = noteFindings(text, { reel_kind: "spinning", cell: "note" });
    expect(findings.map(({ position }) => position)).toEqual(["bail_spring"]);
    expect(unknown).toHaveLength(1);
    expect(text.slice(19_900, 20_100)).toContain(unknown[0]);
  });
});
