import { describe, expect, test } from "vitest";
import { mappingFrom } from "../../../src/records/reading/mapping.ts";
import { answersFrom, answersText } from "../../../src/records/understanding/answers-text.ts";
import type { Answers } from "../../../src/records/understanding/answers.ts";
import { examine } from "../../../src/records/understanding/examine.ts";
import { asked, readShape, sheetOf, understood } from "./shape.ts";
import type { Rows } from "./shape.ts";

const HEAD = "Job,Came,Reel,Type,Complaint,Work,Done\n";
let number = 0;
/** One job; the day it came in is of no matter here. */
const job = (done: string, { complaint = "annual service", work = "full service" } = {}) => `R-${(number += 1)},13/04/2025,Whinbeck 40,spinning,${complaint},${work},${done}\n`;
const times = (n: number, done: string, about?: Parameters<typeof job>[1]) => Array.from({ length: n }, () => job(done, about)).join("");
/** Thirty bearings, half of them with a fault; `n` drag knob seals, two of them perished. */
const shop = (n = 18) => HEAD + times(15, "main bearing pitted repl. drag washers ok") + times(15, "pinion bearing repl") + times(n, "drag knob seal repl") + times(2, "drag knob seal perished repl");

const routineOf = (rows: Rows, place = "drag_knob_seal") => (rows["findings"] ?? []).filter((row) => row["position"] === place).map((row) => row["routine"]);
const count = (values: readonly unknown[], value: unknown) => values.filter((one) => one === value).length;
const questions = async (text: string, remembered: Answers | null = null) => (await examine(sheetOf(text), asked({ remembered }))).questions;

describe("seals that services change without a word about a fault", () => {
  test("are asked about by place, with their pieces and how often faults of other parts are named", async () => {
    const [question, ...others] = await questions(shop());
    expect(others).toEqual([]);
    expect([question?.about, question?.position, question?.ask]).toEqual(["routine", "drag_knob_seal", "When you service a reel, do you change the drag knob seal as a matter of routine?"]);
    expect(question?.why).toBe(
      "Changed at 18 services (18 pieces) without a word about what was wrong, at 2 with one; of 30 other parts changed there, 15 have one. So yes is likelier, and stands until you say otherwise. Those with a fault named failed either way.");
  });
  test("are likely changed as routine where faults of other parts are named and theirs are not", async () => {
    // 20 seals of which half should have a fault named, as other parts have: 10, of which 3 or fewer are a third.
    expect((await questions(shop()))[0]?.best).toBe("as routine");
    expect((await questions(shop() + times(2, "drag knob seal perished repl")))[0]?.best).toBe("when worn");
    const silent = HEAD + times(30, "pinion bearing repl") + times(18, "drag knob seal repl");
    expect((await questions(silent))[0]?.best).toBe("when worn");
  });
  test.each([
    ["fewer than ten", shop(9)],
    ["more than a quarter of them with a fault", shop(18) + times(5, "drag knob seal perished repl")],
    ["where the words themselves say that it was routine", shop(18) + times(3, "drag knob seal replaced as routine")],
    ["at jobs that are no service", HEAD + times(20, "drag knob seal repl", { complaint: "drag slips", work: "drag" })],
    ["parts that are no seals", HEAD + times(20, "pinion bearing repl")],
  ])("are not asked about: %s", async (_, text) => {
    expect(await questions(text)).toEqual([]);
  });
  test("count as the owner says: as routine, or as failed; where a fault is named they failed either way", async () => {
    for (const [changed, yes] of [["as routine", 18], ["when worn", 0]] as const) {
      const { answers } = await understood(sheetOf(shop()), { routine: changed }), { rows, reads } = await readShape(sheetOf(shop()), { answers });
      expect([count(routineOf(rows), true), count(routineOf(rows), false)]).toEqual([yes, 20 - yes]);
      expect(count(routineOf(rows, "pinion_bearing_front"), true)).toBe(0);
      expect(reads[0]?.remarks.join("\n").includes("18 rows: a seal changed at a service without a word about a fault was taken as changed as routine")).toBe(yes > 0);
      expect(reads[0]?.remarks.join("\n")).not.toContain("Nobody was asked");
    }
  });
  test("failed where the job was no service, or the customer said that water got in", async () => {
    const text = shop() + job("drag knob seal repl", { complaint: "drag slips", work: "drag" }) + job("drag knob seal repl", { complaint: "water came out", work: "full service" });
    const { answers } = await understood(sheetOf(text), { routine: "as routine" }), { rows } = await readShape(sheetOf(text), { answers });
    expect([count(routineOf(rows), true), count(routineOf(rows), false)]).toEqual([18, 4]);
  });
  test("are read by what is likeliest where nobody is asked, and that is said", async () => {
    const { rows, reads } = await readShape(sheetOf(shop()));
    expect(count(routineOf(rows), true)).toBe(18);
    expect(reads[0]?.remarks.join("\n")).toMatch(/Nobody was asked: When you service a reel, do you change the drag knob seal as a matter of routine\? .* Taken: as routine\./);
  });
});

describe("what was said of seals", () => {
  test("is kept for files of the shape: nothing is asked again, but of another seal", async () => {
    const { answers } = await understood(sheetOf(shop()), { routine: "when worn" }), kept = answersFrom(answersText(answers));
    expect(kept.sheets[0]?.routine_parts).toEqual([{ position: "drag_knob_seal", changed: "when worn" }]);
    expect(await questions(shop(), kept)).toEqual([]);
    expect((await questions(shop() + times(12, "line roller seal repl"), kept)).map(({ position }) => position)).toEqual(["line_roller_seal"]);
  });
  test("may stand in a mapping.json, short or long; a place that is none is refused", async () => {
    const said = [{ position: "drag_knob_seal", changed: "when worn" }], short = mappingFrom(JSON.stringify({ routine_parts: said }));
    const { rows } = await readShape(sheetOf(shop()), { mapping: short });
    expect([count(routineOf(rows), true), count(routineOf(rows), false)]).toEqual([0, 20]);
    expect(() => mappingFrom(JSON.stringify({ routine_parts: [{ position: "seal", changed: "when worn" }] }))).toThrow(/routine_parts/);
    expect(() => mappingFrom(JSON.stringify({ routine_parts: [{ position: "drag_knob_seal", changed: "maybe" }] }))).toThrow(/as routine, when worn/);
  });
});
