import { describe, expect, test } from "vitest";
import { drawnRows, league, leagueSentence, ranked } from "../../src/rooms/failures/failure-league.ts";
import { rowVerdict } from "../../src/rooms/failures/failure-words.ts";
import { findingFilter } from "../../src/rooms/failures/failure-filters.ts";
import { verdictBook } from "../../src/rooms/failures/verdict-book.ts";
import { rate, verdict } from "./rows.ts";

const roller = { position: "line_roller_bearing", position_name: "Line roller bearing" };
const all = { maker: "*", model: "*" };
const rates = [
  rate(46, 1448, all), rate(26, 201), rate(2, 132, { maker: "Wexmoor", model: "Slipdene 45" }), rate(3, 12, { maker: "Uffenby", model: "Jarnvik 30-II" }),
  rate(208, 1082, { ...all, ...roller }), rate(57, 240, roller), rate(0, 0, { ...all, position: "rotor", position_name: "Rotor" }),
];
const values = { opening: "planned", counted: "opened", kind: "", maker: "", water: "", from: "", to: "", position: "", model: "", series: "", found: "failed", other: "", sheet: "", drawing: "" };

describe("league", () => {
  test("with nothing chosen lists the positions over all models, highest share first, and none that was never inspected", () => {
    const shown = league(rates, { position: "", model: "" });
    expect(shown.rows.map((row) => row.position)).toEqual(["line_roller_bearing", "ar_clutch"]);
    expect(leagueSentence(shown, "en-GB")).toBe(
      "Most often failed: line roller bearing (208 of 1,082, likely between 17 and 22\u00a0%), then one-way clutch (46 of 1,448, likely between 2 and 4\u00a0%).");
  });

  test("with a position chosen compares its models, and puts those under twenty inspected last whatever their share", () => {
    const shown = league(rates, { position: "ar_clutch", model: "" });
    expect(shown.rows.map((row) => row.model)).toEqual(["Whinbeck 40", "Slipdene 45", "Jarnvik 30-II"]);
    expect(leagueSentence(shown, "en-GB")).toContain("All models together: 46 of 1,448");
  });

  test("with a model chosen lists its parts", () => {
    const shown = league(rates, { position: "", model: "Brackhelm Whinbeck 40" });
    expect(shown.rows.map(shown.name)).toEqual(["Line roller bearing", "One-way clutch"]);
  });

  test("with both chosen shows the one row against all models", () => {
    const shown = league(rates, { position: "ar_clutch", model: "Brackhelm Whinbeck 40" });
    expect(leagueSentence(shown, "en-GB")).toBe("Had failed in 26 of 201, likely between 9 and 18\u00a0%. All models together: 46 of 1,448, likely between 2 and 4\u00a0%.");
  });

  test("says so when a chosen part was never inspected on the chosen model", () => {
    expect(leagueSentence(league(rates, { position: "rotor", model: "Brackhelm Whinbeck 40" }), "en-GB")).toBe("Never inspected here.");
  });

  test("says in words when pooling found no difference between the models", () => {
    const alike = rates.map((row) => ({ ...row, note: "no difference between models" }));
    expect(leagueSentence(league(alike, { position: "ar_clutch", model: "" }), "en-GB")).toContain("No difference between the models can be told from chance.");
  });
});

describe("ranked", () => {
  test("orders rows too thin to rank by how often they were inspected, not by their share", () => {
    const thin = [rate(9, 11, { model: "a" }), rate(0, 19, { model: "b" }), rate(1, 20, { model: "c" })];
    expect(ranked(thin).map((row) => row.model)).toEqual(["c", "b", "a"]);
  });
});

describe("league by cost", () => {
  test("puts what costs most first though it fails less often, and still ranks nothing under twenty inspected", () => {
    const shown = league(rates, { position: "ar_clutch", model: "" }, (row) => (row.model === "Slipdene 45" ? 900 : row.model === "Jarnvik 30-II" ? 9000 : 100));
    expect(shown.rows.map((row) => row.model)).toEqual(["Slipdene 45", "Whinbeck 40", "Jarnvik 30-II"]);
    expect(leagueSentence(shown, "en-GB")).toMatch(/^Costs most: Wexmoor Slipdene 45 \(2 of 132/);
  });
});

describe("rowVerdict", () => {
  const book = verdictBook([verdict({ word: "stands out" }), verdict({ word: "too few", maker: "Uffenby", model: "Jarnvik 30-II" })], "");
  test("of a model is the word of its verdict, exactly", () => {
    expect([rowVerdict(rate(26, 201), book), rowVerdict(rate(3, 12, { maker: "Uffenby", model: "Jarnvik 30-II" }), book)]).toEqual(["stands out", "too few"]);
  });

  test("of all models names those that stand out, and of another part nothing", () => {
    expect(rowVerdict(rate(46, 1448, all), book)).toBe("stands out on Brackhelm Whinbeck 40");
    expect(rowVerdict(rate(208, 1082, { ...all, ...roller }), book)).toBe("");
  });

  test("without a verdict says too few under ten inspected", () => {
    expect([9, 10].map((inspected) => rowVerdict(rate(1, inspected, roller), book))).toEqual(["too few", ""]);
  });
});

describe("drawnRows", () => {
  test("takes planned and complaint of the same rows in the table's order, and no more than sixteen names", () => {
    const many = Array.from({ length: 20 }, (_, at) => rate(20 - at, 100, { model: `M${at}` }));
    const complaints = many.map((row) => ({ ...row, opening: "complaint" as const }));
    const drawn = drawnRows(league([rate(46, 1448, all), ...many], { position: "ar_clutch", model: "" }), [...complaints, ...many]);
    expect(drawn).toHaveLength(32);
    expect(drawn.slice(0, 2).map((row) => [row.model, row.opening])).toEqual([["M0", "complaint"], ["M0", "planned"]]);
  });
});

describe("findingFilter", () => {
  test("asks for nothing while no part is chosen, or the model has no row", () => {
    expect(findingFilter(values, rates)).toBeNull();
    expect(findingFilter({ ...values, position: "ar_clutch", model: "No Such" }, rates)).toBeNull();
  });

  test("asks for the part on the model with its maker, so that equal names of two makers do not mix", () => {
    expect(findingFilter({ ...values, position: "ar_clutch", model: "Wexmoor Slipdene 45" }, rates))
      .toMatchObject({ position: "ar_clutch", model: "Slipdene 45", maker: "Wexmoor", opening: "planned" });
  });
});
