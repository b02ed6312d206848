import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, hashOf, oneOf, placeOf, queryOf, text, valuesOf } from "../../src/ui/url-state.ts";

const FIELDS = { opening: oneOf(["planned", "complaint", "both"], "both"), kind: oneOf(["", "fly"], ""), model: text(), from: day() };

describe("url-state", () => {
  test("an address without filters gives every filter its resting value", () => {
    expect(valuesOf(FIELDS, "")).toEqual({ values: { opening: "both", kind: "", model: "", from: "" }, ignored: [] });
  });

  test("what an address carries is read, and what it does not say rests", () => {
    const { values, ignored } = valuesOf(FIELDS, "opening=planned&model=Withy+5&from=2025-01-31");
    expect(values).toEqual({ opening: "planned", kind: "", model: "Withy 5", from: "2025-01-31" });
    expect(ignored).toEqual([]);
  });

  test("unknown names and words change nothing and are named", () => {
    const { values, ignored } = valuesOf(FIELDS, "opening=never&colour=red&from=2025-02-30&kind=fly");
    expect(values).toEqual({ opening: "both", kind: "fly", model: "", from: "" });
    expect(ignored).toEqual(["opening=never", "colour=red", "from=2025-02-30"]);
  });

  test("a text field with a known list refuses other texts", () => {
    const fields = { model: text(["Withy 5"]) };
    expect(valuesOf(fields, "model=Withy+5").values.model).toBe("Withy 5");
    expect(valuesOf(fields, "model=Withy+6")).toEqual({ values: { model: "" }, ignored: ["model=Withy 6"] });
  });

  test("names of the language itself are ordinary unknown names", () => {
    const { values, ignored } = valuesOf(FIELDS, "__proto__=x&constructor=y&toString=z&hasOwnProperty=w");
    expect(ignored).toHaveLength(4);
    expect(Object.keys(values)).toEqual(Object.keys(FIELDS));
    expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
    expect(Object.getPrototypeOf(values)).toBe(Object.prototype);
  });

  test("text of any length and shape neither throws nor gets through uncut", () => {
    fc.assert(fc.property(fc.string({ maxLength: 400 }), (query) => {
      const { values, ignored } = valuesOf(FIELDS, query);
      expect(Object.keys(values)).toEqual(Object.keys(FIELDS));
      expect(values.model.length).toBeLessThanOrEqual(200);
      expect(ignored.every((word) => word.length <= 60)).toBe(true);
    }));
  });

  test("reading what was written gives the same values", () => {
    const values = fc.record({
      opening: fc.constantFrom("planned", "complaint", "both"), kind: fc.constantFrom("", "fly"),
      model: fc.string({ unit: "grapheme", maxLength: 40 }), from: fc.constantFrom("", "2024-02-29"),
    });
    fc.assert(fc.property(values, (given) => {
      expect(valuesOf(FIELDS, queryOf(FIELDS, given))).toEqual({ values: given, ignored: [] });
    }));
  });

  test("the shortest address is written: resting values are left out", () => {
    expect(queryOf(FIELDS, { opening: "both", kind: "", model: "", from: "" })).toBe("");
    expect(queryOf(FIELDS, { opening: "planned", kind: "", model: "a&b", from: "" })).toBe("opening=planned&model=a%26b");
  });

  test("room and query are found after the hash, whatever else stands there", () => {
    expect(placeOf("#/failures?model=a?b")).toEqual({ slug: "failures", query: "model=a?b" });
    expect(placeOf("")).toEqual({ slug: "", query: "" });
    expect(placeOf("#stock")).toEqual({ slug: "stock", query: "" });
    expect(hashOf({ slug: "failures", query: "model=x" })).toBe("#/failures?model=x");
    expect(hashOf({ slug: "stock", query: "" })).toBe("#/stock");
  });
});
