import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { demandByGroup } from "../../src/answers/demand/demand-by-group.ts";
import { ALL_FAILURES, failureRates } from "../../src/answers/failures/failure-rates.ts";
import { failuresOverTime } from "../../src/answers/failures/failures-over-time.ts";
import type { FailurePeriod } from "../../src/answers/failures/failure-rate.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import type { Opening } from "../../src/answers/filter.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import type { Restock } from "../../src/answers/stock/restock.ts";
import type { RestockLine } from "../../src/answers/stock/restock-line.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

/** What the demo shop was made to hold (data/README.md); the ranges are those of eight other seeds of the same invention. */
let engine: Engine, advice: Restock;
beforeAll(async () => {
  engine = await openDemo();
  advice = await restock(engine, { as_of: "2026-01-05" });
});
afterAll(() => engine.close());

const line = (interchange: string) => advice.lines.find((one) => one.interchange === interchange) as RestockLine;

describe("the demo shop's planted truths, seen by the answers", () => {
  test("PT3: nine models share the 7x11x3 bearing, and no model's list would show it", async () => {
    const { groups, months } = await demandByGroup(engine, EVERYTHING);
    const bearing = groups.find((group) => group.interchange === "bearing 7x11x3 sealed");
    expect(bearing?.models).toBe(9);
    expect(bearing?.top_model_share).toBeLessThanOrEqual(0.39);
    expect(((bearing?.pieces ?? 0) / months) * 12).toBeGreaterThan(120);
    expect(bearing?.part_nos.length).toBeGreaterThan(1);
  });

  test("PT10: from July 2024 the drag knob seal is replaced at nearly every full service, and its failures stay flat", async () => {
    const periods = await failuresOverTime(engine, { ...ALL_FAILURES, position: "drag_knob_seal", months: 6 });
    const share = (of: (period: FailurePeriod) => number, after: boolean) => {
      const some = periods.filter((one) => (one.period >= "2024-07-01") === after);
      return some.reduce((sum, one) => sum + of(one), 0) / some.reduce((sum, one) => sum + one.inspected, 0);
    };
    const replaced = (one: FailurePeriod) => one.replaced + one.replaced_routine;
    expect(share(replaced, false)).toBeLessThan(0.2);
    expect(share(replaced, true)).toBeGreaterThan(0.6);
    expect(Math.abs(share((one) => one.failed, true) - share((one) => one.failed, false))).toBeLessThan(0.04);
  });

  test("PT12: a line that mixes several parts is refused and gets no number to order", () => {
    const mixed = advice.lines.filter((one) => one.interchange.endsWith("-MIX"));
    expect(mixed.length).toBe(8);
    expect(mixed.filter((one) => one.status !== "refused" || one.order_qty !== null)).toEqual([]);
  });

  test.each([
    ["Far Lantern Imports", "bearing 4x7x2.5 sealed", 21, 34], ["Zetfield Parts Agency", "ARC-WB40", 18, 24],
  ])("PT13: %s is late, and the observed days are used instead of the quoted ones", (supplier, part, quoted, truth) => {
    expect(line(part).supplier).toBe(supplier);
    expect(line(part).lead).toMatchObject({ source: "observed", quoted_days: quoted });
    expect(Math.abs(line(part).lead.days - truth)).toBeLessThan(6);
    expect(line(part).lead.late_share).toBeGreaterThan(0.6);
  });

  test("PT14: the 7x13x4 bearings last for decades, and none is bought", () => {
    expect(line("bearing 7x13x4 sealed").cover_years).toBeGreaterThan(20);
    expect(line("bearing 7x13x4 sealed")).toMatchObject({ status: "enough", on_hand: 63, order_qty: 0 });
    expect(line("bearing 7x13x4 sealed").reason).toContain("stop buying it");
  });

  test("PT15: the mix of openings makes the line roller bearing's rate: planned far under, complaints far over", async () => {
    const rate = async (opening: Opening) =>
      (await failureRates(engine, { ...ALL_FAILURES, position: "line_roller_bearing", opening }))[0]?.rate ?? NaN;
    expect(await rate("planned")).toBeLessThan(0.24);
    expect(await rate("complaint")).toBeGreaterThan(0.6);
    expect(Math.abs((await rate("*")) - 0.33)).toBeLessThan(0.06);
  });
});
