import fc from "fast-check";
import { expect, test } from "vitest";
import { listTogether, valuesTogether } from "../../../src/records/ledger/changes-together.ts";

test("a list keeps what either window added and loses what either took out; its own order where nobody else wrote", () => {
  expect(listTogether(["a", "b"], ["b", "c"], ["a", "b", "d"])).toEqual(["b", "d", "c"]);
  expect(listTogether(["a", "b"], ["b", "a"], ["a", "b"])).toEqual(["b", "a"]);
  expect(listTogether(["a"], ["a", "c"], ["a", "c"])).toEqual(["a", "c"]);
  expect(listTogether(["a", "b"], ["a"], ["b"])).toEqual([]);
});

test("an entry that stands twice on purpose stays twice, and one more of it is one more", () => {
  expect(listTogether(["a"], ["a", "a"], ["a", "b"])).toEqual(["a", "b", "a"]);
  expect(listTogether(["a", "a"], ["a"], ["a", "a", "b"])).toEqual(["a", "b"]);
});

test("values by name take this window's changes and keep the other's", () => {
  expect(valuesTogether({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 1, b: 3 })).toEqual({ a: 2, b: 3 });
});

test("whatever two windows make of a list, it does not matter who writes first, and writing nothing new changes nothing", () => {
  const lists = fc.array(fc.constantFrom("a", "b", "c", "d"), { maxLength: 5 });
  fc.assert(fc.property(lists, lists, lists, (seen, one, other) => {
    const sorted = (list: readonly string[]) => [...list].sort();
    expect(sorted(listTogether(seen, one, other))).toEqual(sorted(listTogether(seen, other, one)));
    expect(listTogether(seen, seen, one)).toEqual(JSON.stringify(seen) === JSON.stringify(one) ? seen : one);
    expect(listTogether(seen, one, seen)).toEqual(one);
  }), { numRuns: 2_000 });
});
