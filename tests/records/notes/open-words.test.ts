import { expect, test } from "vitest";
import { openAfter, openWordsText, readOpenWords, wordsWaiting } from "../../../src/records/notes/open-words.ts";

const first = { batch: "a", words: ["wobbly bit", "Wurzel"], readings: ["brg rough"] }, second = { batch: "b", words: ["wurzel"], readings: [] };
const NONE = { entries: [], readings: [] };

test("words that notes left open are kept by import, and read again as they were", () => {
  const open = openAfter(openAfter([], first, ["a"]), second, ["a", "b"]);
  expect(open).toEqual([first, second]);
  expect(readOpenWords(openWordsText(open))).toEqual({ open, faults: [] });
});

test("an import read again takes the place of itself, one that went takes its words along, and one that leaves nothing open adds nothing", () => {
  expect(openAfter([first, second], { batch: "a", words: [], readings: ["brg rough"] }, ["a", "b"])).toEqual([second, { batch: "a", words: [], readings: ["brg rough"] }]);
  expect(openAfter([first, second], null, ["b"])).toEqual([second]);
  expect(openAfter([], { batch: "c", words: [], readings: [] }, ["c"])).toEqual([]);
  expect(openWordsText([])).toBeNull();
});

test("each different word waits once, until the spelling book has it or its import is gone", () => {
  expect(wordsWaiting([first, second], NONE, ["a", "b"])).toBe(3);
  expect(wordsWaiting([first, second], NONE, ["b"])).toBe(1);
  const book = { entries: [{ spelling: "wurzel", reel_kind: null, ignored: true as const }], readings: [] };
  expect(wordsWaiting([first, second], book, ["a", "b"])).toBe(2);
});

test("what is damaged or of another version counts as none, and is said", () => {
  for (const text of ["{", "[]", '{"version":2,"imports":[]}', '{"version":1,"imports":[{"batch":1}]}']) {
    const { open, faults } = readOpenWords(text);
    expect(open).toEqual([]);
    expect(faults).toHaveLength(1);
  }
});
