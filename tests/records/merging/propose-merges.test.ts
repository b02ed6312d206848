import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lettersApart } from "../../../src/records/merging/likeness.ts";
import { modelName } from "../../../src/records/merging/model-name.ts";
import { namesOf } from "../../../src/records/merging/names.ts";
import { proposeMerges } from "../../../src/records/merging/propose-merges.ts";
import type { CountedModel } from "../../../src/records/merging/propose-merges.ts";

const named = (text: string, n: number, listed = false): CountedModel => {
  const [maker, model] = text.split(": ");
  return model === undefined ? { maker: null, model: text, n, listed } : { maker: maker ?? null, model, n, listed };
};
const shown = ({ maker, model }: CountedModel) => (maker === null ? model : `${maker}: ${model}`);
const proposed = (...models: CountedModel[]) => proposeMerges(models).map(({ from, to, confidence }) => `${shown(from)} > ${shown(to)} (${confidence})`);
const WHINBECK = named("Brackhelm: Whinbeck 40", 389);

describe("names are proposed as one", () => {
  test.each([
    ["that differ in case, spaces and hyphens, surely", "Brackhelm: WHIN-beck40", 2, "sure"],
    ["when only the maker is missing and one maker is known, surely", "Whinbeck 40", 30, "sure"],
    ["when a letter is missing, likely", "Brackhelm: Winbeck 40", 24, "likely"],
    ["when two letters differ, as a guess", "Brackhelm: Wimbeck 40", 3, "a guess"],
    ["when the maker is misspelt, likely", "Brakhelm: Whinbeck 40", 5, "likely"],
    ["when the maker is shortened with a mark, likely", "B'helm: Whinbeck 40", 5, "likely"],
    ["when words beside the size name the hand or a spool, likely", "Brackhelm: Whinbeck 40 LH / spare spool", 5, "likely"],
    ["when the size is missing and only one is known, likely", "Brackhelm: Whinbeck", 5, "likely"],
  ])("%s", (_claim, written, n, confidence) => {
    expect(proposed(WHINBECK, named(written, n))).toEqual([`${written} > Brackhelm: Whinbeck 40 (${confidence})`]);
  });
  test("with a misspelling of a name that itself is another's, onto the one that stays", () => {
    expect(proposed(WHINBECK, named("Whinbeck40", 19), named("WINBECK 40", 3))).toEqual([
      "Whinbeck40 > Brackhelm: Whinbeck 40 (sure)", "WINBECK 40 > Brackhelm: Whinbeck 40 (likely)",
    ]);
  });
});

describe("names stay apart", () => {
  test.each([
    ["with another size", "Brackhelm: Whinbeck 50"], ["with a size ten times as large", "Brackhelm: Whinbeck 4000"],
    ["with another letter behind the size", "Brackhelm: Whinbeck 40-II"], ["of another maker", "Ostvarg: Whinbeck 40"],
  ])("%s", (_claim, written) => expect(proposed(WHINBECK, named(written, 3))).toEqual([]));
  test("without a size where two sizes are known", () => {
    expect(proposed(named("Ostvarg: Ekholt 30", 225), named("Ostvarg: Ekholt 50", 145), named("Ekholt", 21))).toEqual([]);
  });
  test("without a maker where two makers have such a model", () => {
    expect(proposed(named("Ostvarg: Withy 5", 50), named("Eldmere: Withy 5", 84), named("Withy 5", 9))).toEqual([]);
  });
  test("when both are common, however alike", () => expect(proposed(named("A: Withy 5", 84), named("A: Withey 5", 60))).toEqual([]));
  test("when both are on the shop's own list", () => expect(proposed(named("A: Withy 5", 900, true), named("A: Withey 5", 1, true))).toEqual([]));
});

test("letters are counted with swaps, and no further than asked", () => {
  expect([lettersApart("ekholt", "ekhotl", 2), lettersApart("vesik", "vessik", 2), lettersApart("abc", "xyz", 1)]).toEqual([1, 1, 2]);
});
test("a name is taken apart into letters, size and what follows", () => {
  expect(modelName("Jarnvik 30-II")).toEqual({ base: "jarnvik", size: "30", tail: "ii" });
  expect(modelName("Fern Howe 7/8")).toEqual({ base: "fernhowe", size: "7 8", tail: "" });
});

const NAME = fc.tuple(fc.constantFrom(null, "Brackhelm", "brackhelm", "Brakhelm", "Ostvarg"), fc.constantFrom("Whinbeck", "Winbeck", "WHINBECK", "Withy"), fc.constantFrom("", "40", " 40", " 50", " 40 LH"))
  .map(([maker, base, size]) => ({ maker, model: base + size }));
const MODELS = fc.uniqueArray(NAME, { selector: (one) => JSON.stringify(one), maxLength: 12 })
  .chain((all) => fc.tuple(...all.map((one) => fc.record({ n: fc.integer({ min: 1, max: 500 }), listed: fc.boolean() }).map((more) => ({ ...one, ...more })))));

test("whatever is written: sizes never merge, no name is proposed twice, and none onto one that goes itself", () => {
  fc.assert(fc.property(MODELS, (models) => {
    const found = proposeMerges(models), going = new Set(found.map(({ from }) => from));
    expect(going.size).toBe(found.length);
    for (const { from, to } of found) {
      expect(going.has(to)).toBe(false);
      expect(["", modelName(to.model).size]).toContain(modelName(from.model).size);
    }
  }));
});
test("the order in which names come does not matter", () => {
  const asText = (models: readonly CountedModel[]) => proposeMerges(models).map((one) => JSON.stringify(one)).sort();
  fc.assert(fc.property(MODELS, (models) => { expect(asText([...models].reverse())).toEqual(asText(models)); }));
});

describe("what the owner said of names", () => {
  const winbeck = named("Winbeck 40", 24), day = "2026-06-01", all = [WHINBECK, winbeck, named("Whinbeck40", 19)];
  test("counts before any proposal, and what is kept apart is proposed no more", () => {
    const apart = namesOf(all, [{ from: { maker: null, model: "Whinbeck40" }, to: null, decided_on: day }], "sure");
    expect([apart.merged, apart.apart.map(shown), apart.proposed.map(({ from }) => shown(from))]).toEqual([[], ["Whinbeck40"], ["Winbeck 40"]]);
  });
  test("is followed to its end, and a circle does not hang", () => {
    const to = (from: CountedModel, into: CountedModel) => ({ from: { maker: from.maker, model: from.model }, to: { maker: into.maker, model: into.model }, decided_on: day });
    expect(namesOf(all, [to(winbeck, named("Whinbeck40", 0))], "sure").merged.map((one) => `${shown(one.from)} > ${shown(one.to)} ${one.by}`)).toEqual([
      "Winbeck 40 > Brackhelm: Whinbeck 40 you", "Whinbeck40 > Brackhelm: Whinbeck 40 itself",
    ]);
    expect(namesOf(all, [to(winbeck, WHINBECK), to(WHINBECK, winbeck)], "sure").merged.length).toBeGreaterThan(0);
  });
});
