import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { comebacks } from "../../src/answers/comebacks/comebacks.ts";
import type { ComebackFilter } from "../../src/answers/comebacks/comebacks.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { dayAfter } from "../../src/answers/days.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { expectNear, numbersOf, readCase } from "../stats/reference-case.ts";
import { fill, openShop } from "./shop.ts";

const ALL: ComebackFilter = { ...EVERYTHING, group: null, position: null, watched_until: "records end", curves: true };
const job = (ticket_no: string, serial: string | null, received_on: string, more = {}): Record<string, SqlValue> => ({
  ticket_no, serial, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service", came_in: "complaint", ...more,
});
const bad = (ticket_no: string, more = {}): Record<string, SqlValue> => ({ ticket_no, position: "ar_clutch", grade: 4, action: "replaced", qty: 1, ...more });

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

describe("comebacks by hand", () => {
  // S1 back after 31 days, S2 after 200, S3 after 20 but by a dunking, S4 never, S5 put right in the last 90 days, and one without a serial.
  beforeAll(() => fill(engine, {
    tickets: [
      job("A1", "S1", "2024-01-01"), job("A2", "S1", "2024-02-01", { labour_min: 40 }), job("B1", "S2", "2024-01-01"), job("B2", "S2", "2024-07-19"),
      job("C1", "S3", "2024-01-01"), job("C2", "S3", "2024-01-21", { came_in: "immersion" }), job("D1", "S4", "2024-01-01"), job("E1", "S5", "2024-12-01"), job("F1", null, "2024-01-01"),
      job("Z9", "S6", "2024-12-31", { came_in: "planned" }),
    ],
    findings: [...["A1", "B1", "B2", "C1", "C2", "D1", "E1", "F1"].map((no) => bad(no)), bad("A2", { unit_cost: 12 })],
  }));

  test("same part, same reel, within 90 days, no new damage, and only where 90 days have passed", async () => {
    const { rows, linked_share, within_days } = await comebacks(engine, ALL);
    // Failures put right: A1 A2 B1 B2 C1 C2 D1 (E1 is too new, F1 is nobody's).
    expect(rows.filter(({ position }) => position === "ar_clutch").map(({ model, failures, back }) => [model, failures, back])).toEqual([["*", 7, 1], ["Whinbeck 40", 7, 1]]);
    expect([linked_share, within_days]).toEqual([0.9, 90]);
  });

  test("what the comeback cost is its own minutes and parts", async () => {
    const [all] = (await comebacks(engine, ALL)).rows;
    expect([all?.minutes, all?.parts]).toEqual([40, 12]);
  });

  test("no share is printed under ten, but its limits", async () => {
    const [all] = (await comebacks(engine, ALL)).rows;
    expect(all?.share.value).toBeNull();
    expect([all?.share.low, all?.share.high].every((limit) => typeof limit === "number")).toBe(true);
  });

  test("the curve counts failures after the first look, on reels watched to the end of the records", async () => {
    const [all] = (await comebacks(engine, ALL)).rows;
    // Six reels with a serial are looked at; S6 on the very last day is never watched. S1 fails at 31, S2 at 200; the dunking is no failure.
    expect(all?.curve.map(({ age, at_risk, mean_cumulative }) => [age, at_risk, Number(mean_cumulative.toFixed(4))])).toEqual([[31, 4, 0.25], [200, 4, 0.5]]);
    expect(all?.trend).toMatchObject({ events: 2, word: "too few" });
  });
});

describe("comebacks of the reference records", () => {
  // tests/reference/15-records/repeat-failures: bladder recurrences (Byar 1980) as repair tickets, R's survival package.
  const { rows, expected } = readCase("15-records/repeat-failures");

  test("mean number of failures by age and its limits equal R's, through tickets and findings", async () => {
    const units = new Map<string, string>(rows.map((row) => [row["serial"] ?? "", row["in_service"] ?? ""]));
    const first = [...units].map(([serial, day], i) => ({ no: `N${i}`, serial, day, failed: false }));
    const later = rows.map((row) => ({ no: row["ticket"] ?? "", serial: row["serial"] ?? "", day: dayAfter(row["in_service"] ?? "", Number(row["days_in_service"])), failed: row["failed"] === "yes" }));
    const all = [...first, ...later];
    await fill(engine, {
      tickets: all.map(({ no, serial, day }) => job(no, serial, day)),
      findings: all.map(({ no, failed }) => ({ ticket_no: no, position: "line_roller_bearing", grade: failed ? 4 : 0 })),
    });
    const whole = (await comebacks(engine, { ...ALL, position: "line_roller_bearing", watched_until: "last visit" })).rows.find(({ model }) => model === "*");
    const { values } = expected;
    expect(whole?.reels).toBe(values["units"]);
    expect(whole?.curve.map(({ age }) => age)).toEqual(values["time"]);
    expect(whole?.curve.map(({ at_risk }) => at_risk)).toEqual(values["at_risk"]);
    expectNear(whole?.curve.map((point) => point.mean_cumulative) ?? [], numbersOf(values["mcf"]), { relative: 1e-7 });
    expectNear(whole?.curve.map((point) => point.low) ?? [], numbersOf(values["lo_log"]), { relative: 1e-7 });
    expectNear(whole?.curve.map((point) => point.high) ?? [], numbersOf(values["hi_log"]), { relative: 1e-7 });
  });
});
