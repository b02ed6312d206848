import { afterAll, beforeAll, expect, test } from "vitest";
import { behind, type NumberAsked } from "../../src/answers/behind/behind.ts";
import { comebacks } from "../../src/answers/comebacks/comebacks.ts";
import { findingsBehind } from "../../src/answers/failures/findings-behind.ts";
import { ALL_FAILURES, failureCounts } from "../../src/answers/failures/failure-rates.ts";
import { EVERYTHING, type RecordsFilter } from "../../src/answers/filter.ts";
import { earnings } from "../../src/answers/labour/earnings.ts";
import { jobName } from "../../src/answers/labour/job-name.ts";
import { labour } from "../../src/answers/labour/labour.ts";
import { timedWork } from "../../src/answers/labour/work.ts";
import { NO_RATES } from "../../src/answers/labour/bench-rates.ts";
import type { DayCount } from "../../src/answers/season/open-days.ts";
import receivedSql from "../../src/answers/season/received-by-day.sql?raw";
import { seasonOf } from "../../src/answers/season/season-forecast.ts";
import { dayAfter } from "../../src/answers/days.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import { wearOf } from "../../src/answers/wear/all-wear.ts";
import { ALL_WEAR, wearRecords } from "../../src/answers/wear/wear-records.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openDemo(); }, 120_000);
afterAll(() => engine.close());

const ANY: NumberAsked = { ...ALL_WEAR, of: "reels", position: null, part: null, job: null, opening: "*", denominator: "coverage" };
const counts = async (asked: Partial<NumberAsked>) => {
  const { n, x, things } = await behind(engine, { ...ANY, ...asked });
  expect(things.filter(({ sources }) => sources.length === 0)).toEqual([]);
  return [n, x];
};
const FILTERS: readonly Partial<RecordsFilter>[] = [
  {}, { reel_kind: "spinning", water: "salt" }, { from: "2024-04-01", to: "2024-09-30" }, { water: "fresh", from: "2023-06-15" },
];

test("the list behind a share of failures counts exactly as the share does, for every filter of the room, over all models and on one", async () => {
  for (const some of FILTERS) for (const opening of ["*", "planned", "complaint"] as const) for (const denominator of ["coverage", "strict"] as const) {
    const filter = { ...ALL_FAILURES, ...some, opening, denominator, position: "line_roller_bearing" }, [all, one] = await failureCounts(engine, filter);
    expect(await counts({ of: "inspections", ...filter })).toEqual([all?.inspected ?? 0, all?.failed ?? 0]);
    const told = await findingsBehind(engine, filter);
    expect([told.inspected, told.failed]).toEqual([all?.inspected ?? 0, all?.failed ?? 0]);
    if (one) expect(await counts({ of: "inspections", ...filter, maker: one.maker, model: one.model })).toEqual([one.inspected, one.failed]);
  }
}, 120_000);

test("the list behind the use of a part counts the pieces that Stock counts, line by line", async () => {
  const { lines } = await restock(engine, { as_of: "2026-01-05" }), used = lines.filter((line) => line.used > 0);
  expect(used.length).toBeGreaterThan(30);
  for (const line of used.slice(0, 60)) expect(await counts({ of: "pieces", part: line.interchange, from: line.used_from, to: line.used_to })).toEqual([line.used, line.wanted]);
}, 120_000);

test("the list behind the times of a job counts the jobs that Labour counts, and those paid", async () => {
  for (const some of FILTERS) {
    const filter = { ...EVERYTHING, ...some }, { rows, set_aside, blank } = await labour(engine, filter), paid = earnings(await timedWork(engine, filter), NO_RATES);
    const whole = rows.filter(({ model }) => model === "*");
    for (const row of whole.slice(0, 8)) {
      const money = paid.rows.find((one) => one.tier === "*" && one.model === "*" && jobName(one) === jobName(row));
      expect(await counts({ of: "jobs", ...filter, job: jobName(row) })).toEqual([row.n, money?.jobs ?? 0]);
    }
    const { things, n, x } = await behind(engine, { ...ANY, of: "jobs", ...filter });
    expect([n, x, things.length - n]).toEqual([whole.reduce((sum, row) => sum + row.n, 0), paid.all?.jobs ?? 0, set_aside.length + blank]);
  }
}, 120_000);

test("the list behind a curve counts the parts followed and failed, on every clock", async () => {
  for (const clock of ["salt_days", "use_days", "months"] as const) for (const some of FILTERS.slice(0, 2)) {
    const filter = { ...ALL_WEAR, ...some, clock }, { rows } = await wearOf(await wearRecords(engine, filter)), row = rows.find(({ position }) => position === "line_roller_bearing");
    expect(row?.n).toBeGreaterThan(100);
    expect(await counts({ of: "parts", ...filter, position: "line_roller_bearing" })).toEqual([row?.n, row?.failed]);
  }
}, 120_000);

test("the list behind comebacks counts the failures put right and those that came back", async () => {
  for (const some of FILTERS) {
    const filter = { ...EVERYTHING, ...some, group: null, position: "line_roller_bearing", watched_until: "records end" as const, curves: false };
    const all = (await comebacks(engine, filter)).rows.find(({ model }) => model === "*");
    expect(await counts({ of: "comebacks", ...filter })).toEqual([all?.failures ?? 0, all?.back ?? 0]);
  }
}, 120_000);

test("the list behind a week counts the reels of that week", async () => {
  const { past } = seasonOf({ days: await engine.rows<DayCount>(receivedSql), as_of: "2026-01-05", closures: [], weeks: 4 });
  for (const week of past.slice(-20)) expect((await counts({ of: "reels", from: week.monday, to: dayAfter(week.monday, 6) }))[0]).toBe(week.tickets);
  const first = past[0], last = past.at(-1);
  expect((await counts({ of: "reels", from: first?.monday ?? null, to: last ? dayAfter(last.monday, 6) : null }))[0]).toBe(past.reduce((sum, week) => sum + week.tickets, 0));
}, 120_000);
