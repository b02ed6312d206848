import { expect, test } from "vitest";
import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import { spellingBook, type OwnSpelling } from "../../../src/records/notes/own-spellings.ts";
import { unknownWords } from "../../../src/records/notes/unknown-words.ts";

const NOTES = ["Gizmo replaced", "gizmos replaced, bail spring ok", "gizmo knackered and replaced", "flurble replaced", "bail spring replaced"];
const readings = (entries: readonly OwnSpelling[] = []) =>
  NOTES.map((text) => ({ text, ...noteFindings(text, { reel_kind: "spinning", cell: "note", book: spellingBook(entries) }) }));

test("what was not understood is counted over all notes, most frequent first, as most often written, with some notes", () => {
  expect(unknownWords(readings())).toEqual([
    { words: "Gizmo", notes: 3, examples: ["Gizmo replaced", "gizmos replaced, bail spring ok", "gizmo knackered and replaced"] },
    { words: "flurble", notes: 1, examples: ["flurble replaced"] },
  ]);
});

test("one answer settles a word in all its notes", () => {
  const after = readings([{ spelling: unknownWords(readings())[0]?.words ?? "", reel_kind: null, position: "bail_arm" }]);
  expect(after.filter(({ findings }) => findings.some(({ position, action }) => position === "bail_arm" && action === "replaced"))).toHaveLength(3);
  expect(unknownWords(after).map(({ words }) => words)).toEqual(["flurble"]);
});

test("a word written twice in one note counts once, and words that every object has are words", () => {
  const notes = [{ text: "a", unknown: ["zog", "zogs"] }, { text: "b", unknown: ["__proto__"] }, { text: "c", unknown: ["__proto__"] }];
  expect(unknownWords(notes).map(({ words, notes: count }) => [words, count])).toEqual([["__proto__", 2], ["zog", 1]]);
});

test("the number of examples is the caller's, and must be a whole number from 0 on", () => {
  expect(unknownWords(readings(), 1)[0]?.examples).toEqual(["Gizmo replaced"]);
  expect(unknownWords(readings(), 0)[0]?.examples).toEqual([]);
  expect(() => unknownWords([], -1)).toThrow(RangeError);
  expect(() => unknownWords([], 1.5)).toThrow(RangeError);
});
