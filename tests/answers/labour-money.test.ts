import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { benchRatesText, NO_RATES, readBenchRates } from "../../src/answers/labour/bench-rates.ts";
import { drifts } from "../../src/answers/labour/drift.ts";
import { earnings } from "../../src/answers/labour/earnings.ts";
import { labour } from "../../src/answers/labour/labour.ts";
import { quote } from "../../src/answers/labour/quote.ts";
import { timedWork, type TimedWork } from "../../src/answers/labour/work.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

let next = 0;
const work = (labour_min: number, labour_charge: number | null, rest: Partial<TimedWork> = {}): TimedWork => ({
  ticket_no: `W-${(next += 1)}`, received_on: "2024-03-01", job: "full service", reel_kind: "spinning", maker: "Brackhelm", model: "Whinbeck 40", tier: "mid",
  technician: null, labour_min, warranty: false, in_batch: false, source_file: null, source_line: null, parts_replaced: 0, stuck_screws: false, labour_charge, ...rest,
});
const times = <Row>(count: number, row: (at: number) => Row) => Array.from({ length: count }, (_, at) => row(at));
const RATES = { hour_price: 54, hour_cost: 31, beside_min: 17 };

describe("earnings", () => {
  test("are all charges over all hours: 60 in 60 and 90 minutes at 50 and 40 make 90 over 2.5 hours", () => {
    const { rows } = earnings([work(60, 50), work(90, 40)], RATES);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ jobs: 2, hours: 2.5, charged: 90, per_hour: 36, per_hour_low: null, usual_charge: 45, fair_charge: 67.5, gap_per_year: null, standing: "too few jobs" });
  });

  test("leave warranty and what was not charged apart, and count them", () => {
    const { warranty, uncharged, all } = earnings([work(60, 50), work(90, 0, { warranty: true }), work(30, null)], RATES);
    expect([warranty, uncharged, all?.jobs]).toEqual([{ jobs: 1, hours: 1.5 }, { jobs: 1, hours: 0.5 }, 1]);
  });

  test("say where a job stands beside the hour's price and cost, with its range", () => {
    const at = (charge: number) => earnings(times(12, (i) => work(60, charge + (i % 2))), RATES).rows[0]?.standing;
    expect([at(20), at(40), at(53.5), at(70)]).toEqual(["below its cost", "under your price", "about your price", "over your price"]);
    expect(earnings(times(12, () => work(60, 40)), NO_RATES).rows[0]).toMatchObject({ standing: "no rate written", fair_charge: null, gap_per_year: null });
  });

  test("take the usual charge from the last twelve months, and put what falls shortest in a year first", () => {
    const older = times(12, () => work(60, 40, { received_on: "2022-03-01" })), newer = times(12, () => work(60, 50, { received_on: "2024-03-01" }));
    const well = times(12, () => work(20, 30, { job: "handle", received_on: "2024-03-02" }));
    const { rows } = earnings([...older, ...newer, ...well], RATES);
    expect(rows.filter((row) => row.model === "*" && row.tier === "*").map((row) => [row.job, row.usual_charge])).toEqual([["full service", 50], ["handle", 30]]);
    // 24 hours at 54 are 1296; 1080 were charged, in 2.0041 years.
    expect(rows[0]?.gap_per_year).toBeCloseTo(-216 / (732 / 365.25), 6);
  });
});

describe("drifts", () => {
  test("see a job that takes a tenth longer every year, and none where only the technician changed", () => {
    const days = times(60, (i) => `${2022 + Math.floor(i / 20)}-${String(1 + (i % 12)).padStart(2, "0")}-15`);
    const slower = days.map((received_on) => work(60 * 1.1 ** ((Date.parse(received_on) - Date.parse("2022-01-01")) / (365.25 * 86_400_000)), 50, { received_on }));
    const hands = days.map((received_on, i) => work((i < 30 ? 50 : 80) + (i % 3), 50, { received_on, job: "bail", technician: i < 30 ? "T1" : "T2" }));
    const [first, second] = drifts([...slower, ...hands]);
    expect(first?.per_year?.ratio).toBeCloseTo(1.1, 6);
    expect([first?.verdict, second?.verdict]).toEqual(["longer", "no change to be seen"]);
    expect(first?.halves.map(({ from, n }) => [from, n])).toEqual([["2022-01-01", 12], ["2022-07-01", 8], ["2023-01-01", 10], ["2023-07-01", 10], ["2024-01-01", 8], ["2024-07-01", 12]]);
  });
  test("say nothing of a trend in fewer than twenty jobs", () => expect(drifts(times(19, (i) => work(60 + i, 50)))[0]).toMatchObject({ n: 19, per_year: null, verdict: "too few jobs" }));
});

describe("bench rates", () => {
  test("come back as they were kept; what is no rate is named and left out", () => {
    expect(readBenchRates(benchRatesText(RATES))).toEqual({ rates: RATES, faults: [] });
    expect(readBenchRates(null)).toEqual({ rates: NO_RATES, faults: [] });
    expect(readBenchRates('{"hour_price":-1,"hour_cost":31}')).toEqual({ rates: { hour_price: null, hour_cost: 31, beside_min: null }, faults: ["A rate of the bench was left out: hour_price is -1."] });
    expect(readBenchRates("[]").faults).toHaveLength(1);
    expect(readBenchRates("{").faults).toHaveLength(1);
    expect(() => benchRatesText({ ...RATES, hour_cost: Number.NaN })).not.toThrow();
    expect(() => benchRatesText({ ...RATES, hour_cost: -3 })).toThrow(RangeError);
  });
});

describe("the demo shop", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openDemo(); });
  afterAll(() => engine.close());

  test("PT11: two-speed lever drags are charged 78 and at 54 an hour their usual 112 to 115 minutes would be 101 to 104 (TRADE.md 5.9)", async () => {
    const { rows } = await labour(engine, EVERYTHING), money = earnings(await timedWork(engine, EVERYTHING), RATES);
    const named = quote(rows, money.rows, RATES, { job: "full service", reel_kind: "conventional", maker: "Uffenby", model: "Jarnvik 30-II" });
    expect(named).toMatchObject({ from: "this model", usual_charge: 78 });
    expect(named?.usual_min).toBeGreaterThan(105);
    expect(named?.usual_min).toBeLessThan(122);
    expect(named?.price_usual).toBeGreaterThan(95);
    expect(money.rows.find((row) => row.model === "Jarnvik 30-II")).toMatchObject({ standing: "under your price", jobs: 29 });
  });

  test("a model with too few jobs is quoted by all models of its kind, and says so; a job never done has no quote", async () => {
    const { rows } = await labour(engine, EVERYTHING);
    expect(quote(rows, [], NO_RATES, { job: "full service", reel_kind: "spinning", maker: "Nobody", model: "Nothing 1" })).toMatchObject({
      from: "all models", usual_charge: null, price_usual: null, note: "too few of this model: the times of all models of its kind; no hour's price written: the price is what was charged",
    });
    expect(quote(rows, [], NO_RATES, { job: "level wind", reel_kind: "fly", maker: null, model: null })).toBeNull();
  });
});
