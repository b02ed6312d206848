import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { labour } from "../../src/answers/labour/labour.ts";
import { slip, withSlips } from "../../src/answers/labour/slips.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import dataCsv from "../reference/11-labour/figure-finding-times/data.csv?raw";
import reference from "../reference/11-labour/figure-finding-times/expected.json";
import { fill, openShop } from "./shop.ts";

let engine: Engine, next = 0;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

const ticket = (labour_min: number | null, more: Record<string, SqlValue> = {}) => ({
  ticket_no: String((next += 1)).padStart(4, "0"), received_on: "2024-03-01", finished_on: "2024-03-05", model: "Whinbeck 40", maker: "Brackhelm",
  reel_kind: "spinning", job: "full service", labour_min, ...more,
});

describe("slip", () => {
  test("takes a few minutes for hours only where the job is long", () =>
    expect([slip(5.9, 16), slip(6, 16), slip(5, 15)]).toEqual(["typed as hours", null, null]));
  test("sees waiting only over ten hours and over four times the usual", () =>
    expect([slip(601, 150), slip(600, 60), slip(601, 151)]).toEqual(["with waiting", null, null]));
  test("holds each job on each kind of reel against its own median", () => {
    const rows = [1, 60, 62].map((labour_min) => ({ job: "full service", reel_kind: "fly", labour_min }));
    expect(withSlips([...rows, { job: "handle", reel_kind: "fly", labour_min: 4 }]).map((one) => one.slip)).toEqual(["typed as hours", null, null, null]);
  });
});

describe("labour", () => {
  test("gives the published figures of 24 times: figure-finding times, HSAUR3 EFT, computed with R (tests/reference/11-labour)", async () => {
    const times = dataCsv.trim().split("\n").slice(1).map((line) => line.split(","));
    await fill(engine, { tickets: times.map(([group, time]) => ticket(Number(time), { model: group ?? "" })) });
    const { rows } = await labour(engine, EVERYTHING);
    for (const [name, model] of [["all", "*"], ["corner", "corner"], ["row", "row"]] as const) {
      const row = rows.find((one) => one.model === model), values = reference.values[name];
      expect(row?.n).toBe(values.n);
      expect(row?.median).toBeCloseTo(values.median, 9);
      expect(row?.mean).toBeCloseTo(values.mean, 9);
      expect(row?.mean_low).toBeCloseTo(values.modified_cox_lo, 6);
      expect(row?.mean_high).toBeCloseTo(values.modified_cox_hi, 6);
    }
    // Both models are drawn toward each other, so each median lies between its own logarithmic mean and the other's.
    const [corner, row] = ["corner", "row"].map((model) => rows.find((one) => one.model === model)?.pooled_median ?? NaN);
    expect(corner).toBeGreaterThan(Math.exp(reference.values.corner.log_mean));
    expect(row).toBeLessThan(Math.exp(reference.values.row.log_mean));
  });

  test("sets slips and blanks aside, and counts every one of them", async () => {
    await fill(engine, { tickets: [60, 62, 64, 66, 68, 1.5, 900, null].map((minutes) => ticket(minutes)) });
    const { rows, set_aside, tickets, blank } = await labour(engine, EVERYTHING);
    expect(rows[0]).toMatchObject({ n: 5, median: 64, mean: 64, blank: 1, typed_as_hours: 1, with_waiting: 1 });
    expect(set_aside.map((one) => [one.labour_min, one.reason, one.source_file])).toEqual([[1.5, "typed as hours", "tickets.csv"], [900, "with waiting", "tickets.csv"]]);
    expect([tickets, blank, (rows[0]?.n ?? 0) + set_aside.length + blank]).toEqual([8, 1, 8]);
  });

  test("gives a model a row from ten jobs on, and P80 from five on, with the words", async () => {
    const many = (model: string, count: number) => Array.from({ length: count }, (_, i) => ticket(50 + i, { model }));
    await fill(engine, { tickets: [...many("A", 10), ...many("B", 9), ticket(20, { job: "handle" }), ticket(24, { job: "handle" })] });
    const { rows } = await labour(engine, EVERYTHING);
    expect(rows.map((row) => [row.job, row.model, row.n])).toEqual([["full service", "*", 19], ["full service", "A", 10], ["handle", "*", 2]]);
    expect(rows[1]?.note).toBe("few models: drawn only weakly toward the others");
    expect(rows[2]).toMatchObject({ p80: null, note: "too few for P80; pooled figures stand by model" });
    // Type 7 of 50 … 59: place 9 × 0.8 = 7.2.
    expect(rows[1]?.p80).toBeCloseTo(57.2, 12);
  });

  test("keeps jobs, kinds of reel and the unwritten apart, leaves open tickets out, and flags warranty and batches", async () => {
    await fill(engine, {
      tickets: [
        ticket(60, { warranty: true, batch: "club" }), ticket(70, { job: null }), ticket(30, { reel_kind: "fly" }),
        ticket(10, { outcome: "waiting", finished_on: null }), ticket(12, { job: "diagnosis" }),
      ],
    });
    const { rows, tickets } = await labour(engine, EVERYTHING);
    expect(tickets).toBe(4);
    expect(rows.map((row) => [row.job, row.reel_kind, row.n, row.warranty, row.in_batches])).toEqual([
      ["diagnosis", "spinning", 1, 0, 0], ["full service", "fly", 1, 0, 0], ["full service", "spinning", 1, 1, 1], [null, "spinning", 1, 0, 0],
    ]);
  });

  test("has figures for a job whose minutes are all the same, and none for one without minutes", async () => {
    await fill(engine, { tickets: [ticket(30), ticket(30), ticket(null, { job: "handle" })] });
    const { rows } = await labour(engine, EVERYTHING);
    expect(rows[0]).toMatchObject({ n: 2, median: 30, mean_low: null, note: "too few for P80; no range: all times the same; pooled figures stand by model" });
    expect(rows[1]).toMatchObject({ n: 0, median: null, blank: 1 });
  });
});
