import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { askReplay, replayRecords } from "../../src/answers/replay/ask-replay.ts";
import { dayNumber } from "../../src/answers/budget/past-jobs.ts";
import { deliveryDays } from "../../src/answers/replay/delivery-days.ts";
import { knownOn } from "../../src/answers/replay/known-book.ts";
import { replayOf, unpackedReplay } from "../../src/answers/replay/replay-of.ts";
import type { PolicyScore, Replay, ReplayRecords } from "../../src/answers/replay/replay.ts";
import { verdictOf } from "../../src/answers/replay/replay-words.ts";
import { openingShelf, worldOf } from "../../src/answers/replay/world-of.ts";
import type { ReplayWorld } from "../../src/answers/replay/world-of.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

let engine: Engine, records: ReplayRecords, there: ReplayWorld;
const AS_OF = "2026-01-05";
beforeAll(async () => {
  engine = await openDemo();
  records = unpackedReplay(await replayRecords(engine, { as_of: AS_OF }));
  there = worldOf(records) as ReplayWorld;
});
afterAll(() => engine.close());

describe("a day's decision", () => {
  const day = dayNumber("2024-08-14");
  const known = (given: ReplayRecords) => knownOn(day, there.world.groups.map((one) => one.interchange), given.past, given.settings);
  /** The same records, with everything after the day thrown out or doubled. */
  const later = (of: string) => of > "2024-08-14";

  test("is the same whatever the future holds", () => {
    const { past } = records, none = { ...records, parts: records.parts.filter((row) => !later(row.day)),
      past: { ...past, use: past.use.filter((row) => !later(row.day)), intake: past.intake.filter((row) => !later(row.day)), deliveries: past.deliveries.filter((row) => !later(row.arrived_on)) } };
    const double = { ...records,
      past: { ...past, use: past.use.map((row) => (later(row.day) ? { ...row, pieces: row.pieces * 9 } : row)), intake: past.intake.map((row) => (later(row.day) ? { ...row, tickets: row.tickets * 9 } : row)),
        deliveries: past.deliveries.map((row) => (later(row.arrived_on) ? { ...row, days: row.days * 9 } : row)) } };
    const now = known(records);
    expect(known(none)).toEqual(now);
    expect(known(double)).toEqual(now);
  });

  test("is another when the past is another", () => {
    const busier = { ...records, past: { ...records.past, use: records.past.use.map((row) => ({ ...row, pieces: row.pieces * 3 })) } };
    const [now, then] = [known(records), known(busier)], of = (all: typeof now, value: (one: (typeof now)[number]) => number | null | undefined) => all.reduce((sum, one) => sum + (value(one) ?? 0), 0);
    for (const value of [(one: (typeof now)[number]) => one.levels[0], (one: (typeof now)[number]) => one.levels[3], (one: (typeof now)[number]) => one.daily_use]) expect(of(then, value)).toBeGreaterThan(of(now, value));
  });
});

test("every way of ordering waits the same days for an order of the same day, and another draw waits others", () => {
  const of = (seed: number) => { const days = deliveryDays(there.world, records.past, there.lines, seed); return there.world.suppliers.map((_, i) => days(i, there.world.first + 14)); };
  expect(of(1)).toEqual(of(1));
  expect(Array.from({ length: 8 }, (_, seed) => of(seed).join()).filter((one, i, all) => all.indexOf(one) === i).length).toBeGreaterThan(4);
});

test("the first shelf is today's, with what was used since put back and what came in since taken away", () => {
  const line = there.lines[0];
  if (!line) throw new Error("the demo has lines");
  const use = (day: string, pieces: number, wanted = false) => ({ interchange: line.interchange, day, opening: null, pieces, wanted, together: "1" });
  const order = (arrived_on: string | null, pieces: number) => ({ order_no: null, supplier: null, interchange: line.interchange, ordered_on: "2024-01-01", arrived_on, pieces, unit_cost: null });
  // 9 on hand + 4 used since (of which the wanted 2 never were there) − 5 that came since = 8; the use and goods before do not count.
  expect(openingShelf({ ...line, on_hand: 9 }, "2024-02-01", {
    past: { ...records.past, use: [use("2024-01-31", 7), use("2024-02-01", 4), use("2024-03-01", 2, true)] }, orders: [order("2024-01-31", 3), order("2024-02-01", 5), order(null, 6)],
  })).toBe(8);
});

describe("the replay of the demo", () => {
  let replay: Replay;
  beforeAll(async () => { replay = await askReplay(engine, { as_of: AS_OF }); });
  const of = (policy: string) => replay.scores.find((score) => score.policy === policy) as PolicyScore;

  test("begins after a year to learn from, and compares the advice at four levels of care, two habits and what happened", () => {
    expect([replay.status, replay.from]).toEqual(["ok", "2024-01-03"]);
    expect(replay.scores.map(({ kind }) => kind)).toEqual(["advice", "advice", "advice", "advice", "habit", "habit", "happened"]);
    expect(new Set(replay.scores.slice(0, 6).map(({ jobs }) => jobs)).size).toBe(1);
  });

  test("for each habit some level of the advice leaves fewer jobs waiting with less money on the shelf, or the verdict says that none does", () => {
    for (const habit of replay.scores.filter(({ kind }) => kind === "habit")) {
      const better = replay.scores.filter((score) => score.kind === "advice" && (score.waited?.mean ?? Infinity) < (habit.waited?.mean ?? 0) && (score.stock_value_mean?.mean ?? Infinity) < (habit.stock_value_mean?.mean ?? 0));
      if (better.length === 0) expect(replay.verdict.join(" ")).toContain("no other level of the advice is");
    }
    expect(replay.verdict[0]).toMatch(/^Ordered as advised, \d+ of 1.\d{3} jobs would have waited for a part, with stock worth /);
  });

  test("the more careful the advice, the fewer jobs wait and the more lies on the shelf", () => {
    const careful = ["advised, running out three times as often", "advised, running out twice as often", "as advised", "advised, running out half as often"].map(of);
    careful.slice(1).forEach((one, i) => {
      expect(one.waited?.mean).toBeLessThan(careful[i]?.waited?.mean ?? 0);
      expect(one.stock_value_mean?.mean).toBeGreaterThan(careful[i]?.stock_value_mean?.mean ?? Infinity);
    });
  });

  test("says what the advice is worth where it is not better on both counts", () => {
    const score = (policy: string, kind: PolicyScore["kind"], waited: number, stock: number) => ({ ...of("as advised"), policy, kind, jobs: 100, waited: { mean: waited, low: 0, high: 0 }, stock_value_mean: { mean: stock, low: 0, high: 0 } });
    expect(verdictOf([score("as advised", "advice", 5, 100), score("advised, running out half as often", "advice", 3, 120), score("habit A", "habit", 6, 130), score("habit B", "habit", 4, 150), score("habit C", "habit", 9, 50)]).join(" ")).toBe(
      "Ordered as advised, 5 of 100 jobs would have waited for a part, with stock worth 100 on average. Against “habit A” (6 waited, stock worth 130): 1 fewer wait, with 30 less on the shelf, better on both counts. " +
      "Against “habit B” (4 waited, stock worth 150): 1 more wait, with 50 less on the shelf, so not better on both counts; “advised, running out half as often” is (3 waited, stock worth 120). " +
      "Against “habit C” (9 waited, stock worth 50): 4 fewer wait, with 50 more on the shelf, so not better on both counts, and no other level of the advice is.");
  });

  test("a cancel ends it with the signal's reason", async () => {
    const cancel = new AbortController(), reason = new Error("enough");
    await expect(replayOf(records, { signal: cancel.signal, report: () => cancel.abort(reason) })).rejects.toBe(reason);
  });

  test("under a year and a half of records there is nothing to try the advice on, and it says so", async () => {
    const short = { ...records, past: { ...records.past, intake: records.past.intake.filter(({ day }) => day < "2024-03-01") } };
    expect(await replayOf(short)).toMatchObject({ status: "too short", scores: [], verdict: ["Under a year and a half of records: a year is needed to learn from and half a year to try the advice on."] });
  });
});
