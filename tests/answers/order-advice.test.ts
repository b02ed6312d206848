import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { orderAdvice } from "../../src/answers/stock/order-advice.ts";
import type { StockNow, StockPast } from "../../src/answers/stock/order-advice.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import type { Restock } from "../../src/answers/stock/restock.ts";
import { stockPast } from "../../src/answers/stock/stock-past.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

const TODAY = "2026-01-05";
let engine: Engine, room: Restock, past: StockPast;
beforeAll(async () => {
  engine = await openDemo();
  [room, past] = await Promise.all([restock(engine, { as_of: TODAY }), stockPast(engine, TODAY)]);
}, 60_000);
afterAll(() => engine.close());

const nowOf = ({ lines }: Restock): StockNow => ({
  on_hand: new Map(lines.map((line) => [line.interchange, line.on_hand ?? 0])),
  on_order: new Map(lines.map((line) => [line.interchange, line.on_order])),
  waiting: new Map(lines.map((line) => [line.interchange, line.waiting])),
});

describe("orderAdvice", () => {
  test("says of today what the Stock room says, from plain figures alone", () => {
    const figures = (lines: readonly Restock["lines"][number][]) => lines.map((line) =>
      [line.interchange, line.used, line.wanted, line.reorder_point, line.order_qty, line.status === "order" ? line.reason : ""]);
    const counted = room.lines.filter((line) => line.on_hand !== null), named = new Set(counted.map((line) => line.interchange));
    expect(counted.length).toBeGreaterThan(50);
    expect(figures(orderAdvice(past, nowOf(room), room.settings)).filter(([name]) => named.has(name as string))).toEqual(figures(counted));
  });

  test("says of a day in the past what it says when nothing later was ever written", () => {
    const settings = { ...room.settings, as_of: "2024-10-01" }, before = (day: string) => day <= settings.as_of;
    const cut = { ...past, use: past.use.filter((row) => before(row.day)), intake: past.intake.filter((row) => before(row.day)), deliveries: past.deliveries.filter((row) => before(row.arrived_on)) };
    expect(orderAdvice(past, nowOf(room), settings)).toEqual(orderAdvice(cut, nowOf(room), settings));
    expect(orderAdvice(past, nowOf(room), settings)).not.toEqual(orderAdvice(past, nowOf(room), room.settings));
  });
});
