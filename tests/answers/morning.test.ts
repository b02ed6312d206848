import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CAME_IN_CAUTION } from "../../src/answers/morning/came-in-caution.ts";
import { morning } from "../../src/answers/morning/morning.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const MODELS = ["A", "B", "C", "D", "E"];

/** Twenty planned full services a model; on model number n the clutch has failed n times. Two more jobs beside. */
function shop(came_in: string) {
  const ticket = (ticket_no: string, model: string, more: Record<string, SqlValue> = {}) => ({
    ticket_no, model, maker: "Brackhelm", reel_kind: "spinning", job: "full service", came_in, received_on: "2024-03-01",
    finished_on: "2024-03-05", labour_min: 60, outcome: "returned", ...more,
  });
  const full = MODELS.flatMap((model) => Array.from({ length: 20 }, (_, i) => ticket(`${model}${i}`, model)));
  const quick = Array.from({ length: 10 }, (_, i) => ticket(`L${i}`, "A", { job: "line roller", labour_min: 15 + i }));
  return {
    tickets: [...full, ...quick, ticket("W1", "A", { finished_on: null, outcome: "waiting", labour_min: null })],
    findings: [
      ...MODELS.flatMap((model, n) => Array.from({ length: n + 1 }, (_, i) => ({ ticket_no: `${model}${i}`, position: "ar_clutch", grade: 4 }))),
      { ticket_no: "W1", position: "ar_clutch", part_no: "ARC-1", action: "wanted", qty: 1 },
    ],
    parts: [{ part_no: "ARC-1", name: "Clutch", on_hand: 0, unit_cost: 11.5, supplier: "ZET", lead_days: 18 }],
  };
}

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

describe("morning", () => {
  test("brings together what to order, what waits, what fails, what takes long and what to fix", async () => {
    await fill(engine, shop("planned"));
    const sheet = await morning(engine, { as_of: "2024-03-06", rows_to_fix: 3 });
    expect(sheet.restock.sheets.map((one) => [one.supplier, one.lines.map((line) => line.part_no)])).toEqual([["ZET", ["ARC-1"]]]);
    expect(sheet.waiting).toEqual([{ interchange: "ARC-1", name: "Clutch", pieces: 1, on_hand: 0 }]);
    expect(sheet.most_failing.map((rate) => [rate.position, rate.model, rate.failed, rate.inspected])).toEqual([
      ["ar_clutch", "E", 5, 20], ["ar_clutch", "D", 4, 20], ["ar_clutch", "C", 3, 20], ["ar_clutch", "B", 2, 20], ["ar_clutch", "A", 1, 20],
    ]);
    expect(sheet.failing_positions.map((rate) => [rate.position, rate.failed, rate.inspected])).toEqual([["ar_clutch", 15, 100]]);
    expect(sheet.slowest.map((row) => [row.job, row.n, row.median])).toEqual([["full service", 100, 60], ["line roller", 10, 19.5]]);
    expect([sheet.rows_to_fix, sheet.span.tickets, sheet.span.open_tickets]).toEqual([3, 111, 1]);
    expect([sheet.most_failing_opening, sheet.cautions]).toEqual(["planned", [CAME_IN_CAUTION]]);
  });

  test("ranks all openings when planned ones do not suffice, and warns", async () => {
    await fill(engine, shop("complaint"));
    const sheet = await morning(engine, { as_of: "2024-03-06", rows_to_fix: 0 });
    expect(sheet.most_failing_opening).toBe("*");
    expect(sheet.most_failing[0]).toMatchObject({ model: "E", opening: "*" });
    expect(sheet.cautions).toHaveLength(2);
  });

  test("is empty, not failing, without records", async () => {
    await fill(engine, {});
    expect(await morning(engine, { as_of: "2024-03-06", rows_to_fix: 0 })).toMatchObject({ most_failing: [], slowest: [], waiting: [], span: { tickets: 0 } });
  });
});
