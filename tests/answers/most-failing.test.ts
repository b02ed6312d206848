import { describe, expect, test } from "vitest";
import type { FailureRate } from "../../src/answers/failures/failure-rate.ts";
import { mostFailing } from "../../src/answers/morning/most-failing.ts";
import { number, pieces } from "../../src/answers/wording.ts";

const rate = (model: string, inspected: number, failed: number, rate_low: number): FailureRate => ({
  position: "ar_clutch", position_name: "One-way clutch", group_code: "AR", group_name: "Anti-reverse", family: null, maker: model === "*" ? "*" : null,
  model, reel_kind: null, opening: "planned", denominator: "coverage", inspected, failed, rate: failed / inspected, rate_low, rate_high: 1,
  pooled_rate: null, pooled_low: null, pooled_high: null, p_value: null, q_value: null, replaced: 0, replaced_routine: 0, outside: 0, outside_failed: 0,
  note: "",
});

describe("mostFailing", () => {
  const five = ["A", "B", "C", "D", "E"].map((model, i) => rate(model, 20 + i, 2, 0.1 + i / 100));

  test("ranks planned openings by the share one can be sure of, and none under twenty inspected", () => {
    const { models, opening } = mostFailing([...five, rate("F", 19, 19, 0.9), rate("*", 119, 29, 0.2)], [], 2);
    expect([opening, models.map((row) => row.model)]).toEqual(["planned", ["E", "D"]]);
  });

  test("keeps positions over all models apart", () =>
    expect(mostFailing([...five, rate("*", 119, 29, 0.2)], [], 5).positions.map((row) => row.model)).toEqual(["*"]));

  test("takes all openings when planned ones do not give five rows, and says so", () => {
    const { models, opening } = mostFailing(five.slice(1), [rate("G", 30, 9, 0.3)], 5);
    expect([opening, models.map((row) => row.model)]).toEqual(["*", ["G"]]);
  });
});

describe("number and pieces", () => {
  test("say a number as one would read it out", () =>
    expect([0.046, 0.5, 1, 2.04, 2.75, 9.96, 12.4, 1234.5, 0].map(number)).toEqual(["0.05", "0.5", "1", "2", "2.8", "10", "12", "1\u202f235", "0"]));
  test("count words in the singular and the plural", () =>
    expect([pieces(1, "month"), pieces(2, "month"), pieces(1, "delivery"), pieces(5, "delivery")]).toEqual(["1 month", "2 months", "1 delivery", "5 deliveries"]));
});
