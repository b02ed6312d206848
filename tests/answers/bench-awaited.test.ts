import { afterAll, beforeAll, expect, test } from "vitest";
import awaitedSql from "../../src/answers/bench-load/awaited-parts.sql?raw";
import { openJobs } from "../../src/answers/bench-load/queue-plan.ts";
import type { BenchTicket } from "../../src/answers/bench-load/job-times.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

const AS_OF = "2026-01-05";
const delivery = (at: number, arrived_on: string) => ({ order_no: `O-${at}`, supplier: "Far Lantern", part_no: "OTHER", qty: 1, ordered_on: "2025-10-01", arrived_on, line_no: 1 });

/** A shop in which one open job waits for one part. */
async function awaited(arrivals: readonly string[], quoted: number | null, due_on: string | null = null) {
  await fill(engine, {
    tickets: [{ ticket_no: "W-1", received_on: "2026-01-02", outcome: "waiting", maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service" }],
    findings: [{ ticket_no: "W-1", position: "ar_clutch", part_no: "ARC", action: "wanted", qty: 1 }],
    parts: [{ part_no: "ARC", name: "Clutch", supplier: "Far Lantern", on_hand: 0, due_on }, { part_no: "OTHER", name: "Other", supplier: "Far Lantern", on_hand: 0 }],
    suppliers: [{ supplier: "Far Lantern", lead_days: quoted }], orders: arrivals.map((day, at) => delivery(at, day)),
  });
  return engine.rows(awaitedSql, { as_of: AS_OF });
}

test("what a job waits for comes after the days that five deliveries took, 30 to 38 days make 34, not the 21 quoted", async () => {
  expect(await awaited(["2025-10-31", "2025-11-02", "2025-11-04", "2025-11-06", "2025-11-08"], 21)).toEqual([{ ticket_no: "W-1", due_on: null, lead_days: 34 }]);
});
test("four deliveries are too few to speak against the quote, and one that comes later is not known yet", async () => {
  expect(await awaited(["2025-10-31", "2025-11-02", "2025-11-04", "2025-11-06", "2026-02-01"], 21)).toEqual([{ ticket_no: "W-1", due_on: null, lead_days: 21 }]);
});
test("where no time is known it stays unknown, and the job is kept waiting as long as deliveries usually take, never done at once", async () => {
  const parts = await awaited([], null) as { ticket_no: string; due_on: string | null; lead_days: number | null }[];
  expect(parts).toEqual([{ ticket_no: "W-1", due_on: null, lead_days: null }]);
  const ticket = (ticket_no: string) => ({ ticket_no }) as BenchTicket;
  const times = { placeOf: () => 3 }, on = (awaiting: typeof parts) => openJobs({ season: { as_of: AS_OF }, awaited: awaiting }, [ticket("W-1"), ticket("W-2")], times);
  // Day 0 is 6 January. A job that waits for nothing can be done on it; a part due on the 12th is there on day 6.
  expect(on(parts)).toEqual([{ job: 3, not_before: 14 }, { job: 3, not_before: 0 }]);
  expect(on([{ ticket_no: "W-1", due_on: "2026-01-12", lead_days: 34 }])[0]).toEqual({ job: 3, not_before: 6 });
  expect(on([{ ticket_no: "W-1", due_on: null, lead_days: 33.5 }])[0]).toEqual({ job: 3, not_before: 34 });
});
