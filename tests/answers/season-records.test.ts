import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { NO_HOURS } from "../../src/answers/bench-load/bench-hours.ts";
import { benchRecords } from "../../src/answers/bench-load/bench-records.ts";
import { benchLoadOf } from "../../src/answers/bench-load/weeks-ahead.ts";
import { dayAfter } from "../../src/answers/days.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { NO_RATES } from "../../src/answers/labour/bench-rates.ts";
import { openBench, tallyOf } from "../records/bench.ts";
import type { Bench } from "../records/bench.ts";
import { fill, openShop } from "./shop.ts";
import type { Engine } from "../../src/db/engine.ts";

const settings = { hours: NO_HOURS, closures: [], rates: NO_RATES };
const PATH = new URL("../reference/15-records/weekly-intake/", import.meta.url);
const text = (name: string) => readFileSync(new URL(name, PATH), "utf8");

describe("weekly-intake, through the importer", () => {
  let bench: Bench;
  beforeAll(async () => { bench = await openBench(); });

  test("the weeks are the published ones, and without minutes there are reels ahead but no hours", { timeout: 60_000 }, async () => {
    // tests/reference/15-records/weekly-intake: Salmonella Agona as tickets; weekly counts from R 4.2.2.
    const { values } = JSON.parse(text("expected.json")) as { values: { first_monday: string; weeks: number; total: number; weekly_counts: number[] } };
    const done = await bench.bringIn({ "data.csv": text("data.csv"), "mapping.json": text("mapping.json") });
    expect(tallyOf(done, "data.csv").tables).toEqual(["tickets"]);
    await prepareAnswers(bench.engine);
    const load = await benchLoadOf(await benchRecords(bench.engine, dayAfter(values.first_monday, 7 * values.weeks - 1), settings)), { past, ahead, status } = load.season;
    expect([past[0]?.monday, past.length, past.map(({ tickets }) => tickets)]).toEqual([values.first_monday, values.weeks, values.weekly_counts]);
    expect([status, ahead.length, load.status, load.weeks]).toEqual(["ok", 26, "no minutes", []]);
  });
});

describe("a shop of a few tickets", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openShop(); });
  afterAll(() => engine.close());
  const ticket = (no: number, received_on: string, more: Record<string, string | number | null> = {}) =>
    ({ ticket_no: `T${no}`, received_on, model: "Withy 5", reel_kind: "fly", job: "full service", labour_min: 60, finished_on: dayAfter(received_on, 2), outcome: "returned", ...more });

  test("one week of records says that it is too little, in words, and gives no number", async () => {
    await fill(engine, { tickets: [0, 1, 2, 3, 4].map((at) => ticket(at, dayAfter("2026-03-02", at))) });
    const load = await benchLoadOf(await benchRecords(engine, "2026-03-08", settings));
    expect([load.season.status, load.status, load.status_text, load.weeks, load.promises, load.kept]).toEqual(["too few weeks", "no forecast", "Without a forecast of the reels there are no hours to lay out.", [], [], null]);
  });

  test("a reel taken in today comes after what is in the shop: ten open hours at two hours a day are ready on the sixth open day", async () => {
    const done = Array.from({ length: 120 }, (_, at) => dayAfter("2025-09-01", 2 * at)).filter((day) => new Date(day).getUTCDay() % 6 !== 0).map((day, at) => ticket(at, day));
    const open = Array.from({ length: 10 }, (_, at) => ticket(900 + at, "2026-04-24", { finished_on: null, outcome: "waiting", labour_min: null }));
    await fill(engine, { tickets: [...done, ...open] });
    const load = await benchLoadOf(await benchRecords(engine, "2026-04-26", { hours: { people: [{ name: "A", hours_a_week: 10 }] }, closures: [], rates: { ...NO_RATES, beside_min: 0 } }));
    // 2026-04-26 is a Sunday. Every job takes 60 minutes: ten before it fill Monday to Friday, it is done on the Monday after.
    expect([load.status, load.backlog.open, load.backlog.hours, load.promises[0]?.promise]).toEqual(["ok", 10, expect.closeTo(10, 6), "2026-05-04"]);
  });

  test("without anybody's hours and without ends of jobs there are hours of work, but no line and no promise", async () => {
    const tickets = Array.from({ length: 150 }, (_, at) => ticket(at, dayAfter("2025-09-01", at), { finished_on: null }));
    await fill(engine, { tickets });
    const load = await benchLoadOf(await benchRecords(engine, "2026-01-25", settings));
    expect([load.status, load.promises, load.weeks[3]?.capacity_hours, (load.weeks[3]?.hours.mean ?? 0) > 5]).toEqual(["no hours", [], null, true]);
  });
});
