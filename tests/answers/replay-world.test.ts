import { describe, expect, test } from "vitest";
import { dayNumber } from "../../src/answers/budget/past-jobs.ts";
import { whatHappened } from "../../src/answers/replay/happened.ts";
import type { ReplayRecords } from "../../src/answers/replay/replay.ts";
import { scoreOf } from "../../src/answers/replay/score.ts";
import { worldOf } from "../../src/answers/replay/world-of.ts";
import type { ReplayWorld } from "../../src/answers/replay/world-of.ts";
import type { Outcome, World } from "../../src/answers/replay/world.ts";
import { RESTOCK_DEFAULTS } from "../../src/answers/stock/restock.ts";
import { line } from "../rooms/rows.ts";

/** Records from 2023-01-01 to 2024-07-18: the replay begins after a year, on 2024-01-01, and runs 200 days. */
const FIRST = "2023-01-01", LAST = "2024-07-18", AS_OF = "2024-12-31";
const part = (ticket_no: string, day: string, interchange: string, pieces = 1) => ({ ticket_no, day, interchange, pieces });
const use = (day: string, interchange: string, pieces: number, wanted = false) => ({ interchange, day, opening: "planned" as const, pieces, wanted, together: day });
const order = (interchange: string, ordered_on: string, arrived_on: string | null, pieces: number, unit_cost: number | null = null) =>
  ({ order_no: `${ordered_on}-1`, supplier: "Far Lantern", interchange, ordered_on, arrived_on, pieces, unit_cost });

const RECORDS: ReplayRecords = {
  settings: { ...RESTOCK_DEFAULTS, as_of: AS_OF },
  lines: [
    line({ interchange: "a", on_hand: 5, unit_cost: 2, pack_qty: 1, min_order_qty: 0 }), line({ interchange: "b", on_hand: 0, unit_cost: 10, pack_qty: 1, min_order_qty: 0 }),
    line({ interchange: "mix", status: "refused" }), line({ interchange: "uncounted", on_hand: null }), line({ interchange: "unpriced", unit_cost: null }),
  ],
  past: {
    shelf: [], deliveries: [], positions: [], intake: [{ day: FIRST, opening: "planned", tickets: 1 }, { day: LAST, opening: "planned", tickets: 1 }],
    use: [use("2023-05-01", "a", 9), use("2024-01-11", "a", 3), use("2024-02-01", "b", 1, true)],
  },
  parts: [
    part("1", "2023-05-01", "a", 9), part("2", "2024-01-11", "a", 3), part("3", "2024-02-01", "b"), part("3", "2024-02-01", "a"), part("4", "2024-03-01", "a"), part("4", "2024-03-01", "mix"),
  ],
  orders: [order("a", "2023-12-20", "2024-01-21", 4), order("a", "2024-02-01", "2024-02-10", 2, 1.5), order("mix", "2024-02-01", "2024-02-10", 7, 5), order("b", "2024-06-01", null, 1)],
  waits: [{ ticket_no: "2", wait_days: 0 }, { ticket_no: "3", wait_days: 12 }, { ticket_no: "4", wait_days: 30 }],
};

describe("worldOf", () => {
  const there = worldOf(RECORDS) as ReplayWorld, { world } = there;
  test("begins a year after the first day, ends with the last reel, and leaves out what is refused, uncounted or without a price", () => {
    expect([world.first, world.last]).toEqual([dayNumber("2024-01-01"), dayNumber(LAST)]);
    expect(world.groups.map(({ interchange }) => interchange)).toEqual(["a", "b"]);
  });

  test("tells the first shelf back from today's, and takes an empty one where the books do not add up", () => {
    // a: 5 on hand + 3 used − 6 that came = 2. b: nothing used from the shelf, nothing came: 0. With 3 on hand a would be at 0, with 2 below.
    expect(world.groups.map(({ opening }) => opening)).toEqual([2, 0]);
    const short = worldOf({ ...RECORDS, lines: RECORDS.lines.map((one) => (one.interchange === "a" ? { ...one, on_hand: 2 } : one)) }) as ReplayWorld;
    expect([short.unbalanced, short.world.groups[0]?.opening]).toEqual([1, 0]);
  });

  test("lets orders sent before it come in, whatever is decided, and no others", () => expect(world.coming).toEqual([{ day: dayNumber("2024-01-21"), group: 0, pieces: 4 }]));

  test("counts a job only when all its parts are in the replay", () =>
    expect(world.jobs.map(({ day, parts, counts }) => [day - world.first, parts, counts])).toEqual([[10, [[0, 3]], true], [31, [[1, 1], [0, 1]], true], [60, [[0, 1]], false]]));

  test("is too short under half a year after the first, and has no parts where no job needs any", () => {
    const until = (day: string) => ({ ...RECORDS, past: { ...RECORDS.past, intake: [{ day: FIRST, opening: "planned" as const, tickets: 1 }, { day, opening: "planned" as const, tickets: 1 }] } });
    // The 182nd day of the replay is 2024-06-30.
    expect([worldOf(until("2024-06-29")), typeof worldOf(until("2024-06-30")), worldOf({ ...RECORDS, parts: [] })]).toEqual(["too short", "object", "no parts"]);
  });

  test("what happened is told by hand: one of two jobs waited 12 days, one order went out for 2 pieces at 1.50, and one for a part at 10", () => {
    const happened = whatHappened(RECORDS, there);
    expect(happened).toMatchObject({ jobs: 2, waited: { mean: 1 }, jobs_without_wait: 0.5, wait_days: 12, orders: 2, spend: 2 * 1.5 + 10, carriage: null, dead_stock: null });
    // On the shelf: 2 for days 0 to 9, below nothing (taken as 0) for days 10 to 19, 3 for days 20 to 39, 5 for days 40 to 199; worth 2 each.
    expect(happened.stock_value_mean?.mean).toBeCloseTo((2 * (10 * 2 + 20 * 3 + 160 * 5)) / 200, 10);
  });

  test("what happened is unknown where no ticket says how long it waited", () =>
    expect(whatHappened({ ...RECORDS, waits: [] }, there)).toMatchObject({ waited: null, jobs_without_wait: null, wait_days: null }));
});

describe("scoreOf", () => {
  const world: World = { first: 0, last: 364, groups: [{ interchange: "a", supplier: null, unit_cost: 4, pack_qty: 1, min_order_qty: 0, opening: 0 }], suppliers: [], coming: [], jobs: [{ day: 3, parts: [[0, 5]], counts: true }] };
  const outcome = (waited: number, on_hand: number): Outcome =>
    ({ jobs: 10, waited, wait_days: 6 * waited, never_came: 0, stock_value_mean: 100 * waited, orders: 3, spend: 20, carriage: 6, on_hand: [on_hand], on_order: [0], ordered: [0], arrived: [0], handed_out: [0] });

  test("means over the draws, with what one draw in ten lies under and over, and the wait of a job that waited", () => {
    const { waited, jobs_without_wait, wait_days, stock_value_mean } = scoreOf({ policy: "x", kind: "habit" }, [1, 2, 3, 4, 5, 6, 7, 8, 9, 0, 5].map((one) => outcome(one, 0)), world);
    // Sorted 0 1 2 3 4 5 5 6 7 8 9: mean 50 / 11; the tenth part lies at place 1 of 0…10, the ninth at place 9.
    expect([waited?.low, waited?.high, wait_days]).toEqual([1, 8, 6]);
    expect(waited?.mean).toBeCloseTo(50 / 11, 10);
    expect(jobs_without_wait).toBeCloseTo(1 - 50 / 110, 10);
    expect(stock_value_mean?.mean).toBeCloseTo(5000 / 11, 8);
  });

  test("calls dead what two years of the use seen would not take: 5 a year, 13 on the shelf, 3 dead at 4 each", () => expect(scoreOf({ policy: "x", kind: "habit" }, [outcome(1, 13)], world).dead_stock).toBe(12));
  test("gives no mean wait where nobody waited", () => expect(scoreOf({ policy: "x", kind: "habit" }, [outcome(0, 0)], world).wait_days).toBeNull());
});
