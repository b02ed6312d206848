import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { reelsInspected } from "../../src/answers/failures/reels-inspected.ts";
import { ALL_FAILURES, failureRates } from "../../src/answers/failures/failure-rates.ts";
import type { FailureFilter } from "../../src/answers/failures/failure-rate.ts";
import { failuresOverTime } from "../../src/answers/failures/failures-over-time.ts";
import { findingsBehind } from "../../src/answers/failures/findings-behind.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const ticket = (ticket_no: string, model: string, job: string, came_in: string | null, more = {}) => ({
  ticket_no, model, maker: "Brackhelm", job, came_in, reel_kind: "spinning", received_on: "2024-03-01", finished_on: "2024-03-05", water: "salt", ...more,
});
const finding = (ticket_no: string, position: string, more = {}) => ({ ticket_no, position, ...more });

/** Seven finished tickets, one still waiting: five full services (T6 on another model), two line roller jobs. */
const SHOP = {
  tickets: [
    ticket("T1", "Whinbeck 40", "full service", "planned", { serial: "S1" }),
    ticket("T2", "Whinbeck 40", "full service", "planned", { serial: "S1", received_on: "2024-09-01", finished_on: "2024-09-02" }),
    ticket("T3", "Whinbeck 40", "full service", "complaint"),
    ticket("T4", "Whinbeck 40", "full service", null, { water: "fresh" }),
    ticket("T5", "Whinbeck 40", "line roller", "accident"),
    ticket("T6", "Dovekin 25", "full service", "planned"),
    ticket("T7", "Whinbeck 40", "line roller", "complaint"),
    ticket("T8", "Whinbeck 40", "full service", "planned", { finished_on: null, outcome: "waiting" }),
  ],
  findings: [
    finding("T1", "ar_clutch", { grade: 3, mode: "slipping" }),
    finding("T2", "ar_clutch", { grade: 1 }),
    finding("T3", "ar_clutch", { action: "replaced", part_no: "ARC", qty: 1 }),
    finding("T3", "drag_knob_seal", { action: "replaced", routine: true }),
    finding("T4", "line_roller_bearing", { action: "wanted", qty: 2 }),
    finding("T5", "ar_clutch", { grade: 4 }),
    finding("T5", "drag_knob_seal", { grade: 4 }),
    finding("T6", "ar_clutch", { action: "cleaned" }),
  ],
};

let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, SHOP);
});
afterAll(() => engine.close());

const rows = async (filter: Partial<FailureFilter>) =>
  (await failureRates(engine, { ...ALL_FAILURES, ...filter })).map((row) => [row.position, row.model, row.inspected, row.failed]);

describe("failureRates", () => {
  test("counts what the job opens, with or without a finding, and what it only sees when something is written", async () => {
    // ar_clutch: full services T1 T2 T3 T4 (+ T6), seen and written on T5; T7 saw it and wrote nothing, T8 is not finished.
    expect(await rows({ position: "ar_clutch" })).toEqual([
      ["ar_clutch", "*", 6, 3], ["ar_clutch", "Dovekin 25", 1, 0], ["ar_clutch", "Whinbeck 40", 5, 3],
    ]);
    // line_roller_bearing: full services and both roller jobs; `wanted` is a failure.
    expect(await rows({ position: "line_roller_bearing" })).toEqual([
      ["line_roller_bearing", "*", 7, 1], ["line_roller_bearing", "Dovekin 25", 1, 0], ["line_roller_bearing", "Whinbeck 40", 6, 1],
    ]);
  });

  test("shows a finding the job does not open as outside, and counts it only when strict", async () => {
    const [all] = await failureRates(engine, { ...ALL_FAILURES, position: "drag_knob_seal" });
    expect(all).toMatchObject({ inspected: 5, failed: 0, outside: 1, outside_failed: 1 });
    const [strict] = await failureRates(engine, { ...ALL_FAILURES, position: "drag_knob_seal", denominator: "strict" });
    expect(strict).toMatchObject({ inspected: 2, failed: 1, outside: 1 });
  });

  test("keeps routine replacement apart from failure and from other replacement", async () => {
    const [seal] = await failureRates(engine, { ...ALL_FAILURES, position: "drag_knob_seal" });
    const [clutch] = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch" });
    expect([seal?.replaced_routine, seal?.replaced, seal?.failed]).toEqual([1, 0, 0]);
    expect([clutch?.replaced_routine, clutch?.replaced]).toEqual([0, 1]);
  });

  test("tells planned openings from complaints, an accident being a complaint and the unknown neither", async () => {
    const counts = async (opening: FailureFilter["opening"]) => {
      const [all] = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch", opening });
      return [all?.inspected, all?.failed];
    };
    expect([await counts("planned"), await counts("complaint"), await counts("*")]).toEqual([[3, 1], [2, 2], [6, 3]]);
  });

  test("filters by model, water, days and group", async () => {
    expect(await rows({ position: "ar_clutch", model: "Dovekin 25" })).toEqual([["ar_clutch", "*", 1, 0], ["ar_clutch", "Dovekin 25", 1, 0]]);
    expect(await rows({ position: "ar_clutch", water: "fresh" })).toEqual([["ar_clutch", "*", 1, 0], ["ar_clutch", "Whinbeck 40", 1, 0]]);
    expect(await rows({ position: "ar_clutch", from: "2024-09-01", to: "2024-09-01" })).toEqual([["ar_clutch", "*", 1, 0], ["ar_clutch", "Whinbeck 40", 1, 0]]);
    expect([...new Set((await rows({ group: "LR" })).map(([position]) => position))]).toEqual(["line_roller_bearing"]);
  });

  test("prints no share under ten inspected, but its limits and its reason", async () => {
    const [all] = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch" });
    // Wilson limits of 3 of 6 by hand: 0.5 ± (1.95996 / 1.64025) √(0.25 / 6 + 3.8415 / 144) = 0.5 ± 0.3124.
    expect(all).toMatchObject({ rate: null, note: "under 10 inspected: the count is all there is" });
    expect([...await reelsInspected(engine, { ...ALL_FAILURES, position: "ar_clutch" })].filter(([key]) => key.includes("*"))).toEqual([[JSON.stringify(["ar_clutch", "*", "*"]), 1]]);
    expect([all?.rate_low, all?.rate_high].map((limit) => limit?.toFixed(4))).toEqual(["0.1876", "0.8124"]);
  });

  test("compares a model with all others exactly, once there are others", async () => {
    const list = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch" });
    // 3 of 5 against 0 of 1. Three of six failed: all three among the five with C(5,3) / C(6,3) = 1/2; mid-p = 2 × ½ × ½.
    expect(list.map((row) => [row.model, row.p_value === null ? null : Number(row.p_value.toFixed(6)), row.q_value])).toEqual([
      ["*", null, null], ["Dovekin 25", 0.5, expect.closeTo(0.5, 6)], ["Whinbeck 40", 0.5, expect.closeTo(0.5, 6)],
    ]);
  });

  test("stops when it is called off", async () =>
    expect(failureRates(engine, ALL_FAILURES, AbortSignal.abort(new Error("not wanted")))).rejects.toThrow("not wanted"));

  test("draws a model toward the others, also when only that model is shown", async () => {
    const whole = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch" });
    const alone = await failureRates(engine, { ...ALL_FAILURES, position: "ar_clutch", model: "Dovekin 25" });
    const of = (list: typeof whole) => list.find((row) => row.model === "Dovekin 25");
    expect(of(alone)).toEqual(of(whole));
    expect(of(whole)?.pooled_rate).toBeGreaterThan(0);
    expect(whole[0]?.pooled_rate).toBeNull();
  });
});

describe("findingsBehind", () => {
  test("lists the findings with ticket, file and line, newest first, and counts what was fine and unwritten", async () => {
    const { findings, fine_unwritten } = await findingsBehind(engine, { ...ALL_FAILURES, position: "ar_clutch", model: "Whinbeck 40" });
    expect(findings.map((row) => [row.ticket_no, row.failed, row.counted, row.source_file, row.source_line])).toEqual([
      ["T2", false, true, "findings.csv", 3], ["T1", true, true, "findings.csv", 2],
      ["T3", true, true, "findings.csv", 4], ["T5", true, true, "findings.csv", 7],
    ]);
    expect(fine_unwritten).toBe(1);
  });

  test("marks the finding that does not count", async () => {
    const { findings } = await findingsBehind(engine, { ...ALL_FAILURES, position: "drag_knob_seal" });
    expect(findings.map((row) => [row.ticket_no, row.counted])).toEqual([["T3", true], ["T5", false]]);
  });
});

describe("failuresOverTime", () => {
  test("puts failures beside replacements, with the empty spans of the records", async () => {
    const periods = await failuresOverTime(engine, { ...ALL_FAILURES, position: "ar_clutch", months: 3 });
    expect(periods.map((row) => [row.period, row.inspected, row.failed, row.replaced])).toEqual([
      ["2024-01-01", 5, 3, 1], ["2024-04-01", 0, 0, 0], ["2024-07-01", 1, 0, 0],
    ]);
  });
});
