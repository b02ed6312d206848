import { readFileSync } from "node:fs";
import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { contingency } from "../../src/stats/contingency.ts";
import { croston, demandPattern, tsb } from "../../src/stats/intermittent.ts";
import { counts, emptied, openBench, tallyOf } from "./bench.ts";
import type { Bench } from "./bench.ts";

// Open data reshaped as a shop's sheets; sources in tests/reference/15-records/*/SOURCE.md, values from R 4.2.2.
const folder = (name: string) => new URL(`../reference/15-records/${name}/`, import.meta.url);
const text = (name: string, file: string) => readFileSync(new URL(file, folder(name)), "utf8");
const expected = <V>(name: string): { values: V; tolerance: { default_rel: number } } => JSON.parse(text(name, "expected.json")) as { values: V; tolerance: { default_rel: number } };
const sheet = (name: string) => ({ "data.csv": text(name, "data.csv"), "mapping.json": text(name, "mapping.json") });

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

describe("parts-by-model, through the importer", () => {
  const { values, tolerance } = expected<{ n: number; chi2: number; df: number; p: number; cells: { row: string[]; col: string[]; observed: number[] } }>("parts-by-model");
  const OURS: Record<string, string> = { ring_North: "line_roller", ring_Centre: "line_roller_bearing", ring_South: "ar_clutch" };
  const COUNTS = "select v.model, f.position, count(*) filter (where f.grade = 4) as failed from findings f join visits v using (ticket_no) group by all order by all";

  test("the counts by model and position are the published table's, and so is its chi-square", async () => {
    const done = await bench.bringIn(sheet("parts-by-model"));
    expect(counts(done, "data.csv")).toEqual([166, 166, 0, 0, 0]);
    const rows = await bench.engine.rows<{ model: string; position: string; failed: number }>(COUNTS);
    const { row, col, observed } = values.cells;
    const ours = row.map((model, at) => rows.find((one) => one.model === model && one.position === OURS[col[at] ?? ""])?.failed);
    expect(ours).toEqual(observed);
    const table = [...new Set(row)].map((model) => ours.filter((_, at) => row[at] === model).map(Number));
    const result = contingency(table);
    expect("chiSquare" in result && [result.total, result.degrees]).toEqual([values.n, values.df]);
    expect("chiSquare" in result && Math.abs(result.chiSquare / values.chi2 - 1)).toBeLessThan(tolerance.default_rel);
  });
  test("without its mapping every row goes to the rows to fix, because the part is not one of a reel", async () => {
    const done = await bench.bringIn({ "data.csv": text("parts-by-model", "data.csv") });
    expect(counts(done, "data.csv")).toEqual([166, 0, 0, 166, 0]);
    expect(done.rejects[0]).toMatchObject({ file: "data.csv", line: 2, column: "part", value: "ring_North", reason: "“ring_North” is not a part of a reel that we know by this name; call it as the drawing of a reel does, such as line roller bearing" });
  });
});

describe("labour-hours, through the importer", () => {
  type Statistics = { n: number; mean: number; sd: number; median: number; log_mean: number; log_sd: number };
  const { values, tolerance } = expected<{ all: Statistics; by_part: Record<string, Statistics>; by_model: Record<string, Statistics> }>("labour-hours");
  const JOB: Record<string, string> = JSON.parse(text("labour-hours", "mapping.json")).values.job;
  const HOURS = `count(*) as n, avg(labour_min / 60) as mean, stddev_samp(labour_min / 60) as sd, median(labour_min / 60) as median,
    avg(ln(labour_min / 60)) as log_mean, stddev_samp(ln(labour_min / 60)) as log_sd from visits`;
  const near = (found: Statistics | undefined, wanted: Partial<Statistics>) => {
    for (const [name, value] of Object.entries(wanted)) if (name in (found ?? {})) expect(found?.[name as keyof Statistics]).toBeCloseTo(value, 5);
    expect(found?.n).toBe(wanted.n);
  };

  test("hours become minutes whose statistics, over all and by job and model, are R's", async () => {
    const done = await bench.bringIn(sheet("labour-hours"));
    expect([counts(done, "data.csv"), tallyOf(done, "data.csv").tables]).toEqual([[94, 94, 0, 0, 0], ["tickets"]]);
    expect(tallyOf(done, "data.csv").remarks).toContain("labour_hours was read as hours and kept as minutes.");
    expect(tolerance.default_rel).toBeGreaterThan(1e-7);
    near((await bench.engine.rows<Statistics>(`select ${HOURS}`))[0], values.all);
    const jobs = await bench.engine.rows<Statistics & { job: string }>(`select job, ${HOURS} group by job order by job`);
    for (const [part, wanted] of Object.entries(values.by_part)) near(jobs.find(({ job }) => job === JOB[part]), wanted);
    const models = await bench.engine.rows<Statistics & { model: string }>(`select model, ${HOURS} group by model order by model`);
    for (const [model, wanted] of Object.entries(values.by_model)) near(models.find((one) => one.model === model), wanted);
  });
});

describe("part-usage, through the importer", () => {
  const { values } = expected<{ first_monday: string; weeks: number; nonzero: number; total: number; mean: number; variance: number }>("part-usage");
  const WEEKS = `with weeks as (
      select unnest(generate_series('${values.first_monday}'::timestamp, '${values.first_monday}'::timestamp + to_days(7 * ${values.weeks - 1}), to_days(7)))::date as week
    ), used as (select date_trunc('week', day)::date as week, sum(qty) as qty from demand where part_no = 'washer' group by 1)
    select count(*) as n, count(qty) as nonzero, sum(coalesce(qty, 0))::integer as total, avg(coalesce(qty, 0)) as mean, var_samp(coalesce(qty, 0)) as variance
    from weeks left join used using (week)`;

  test("the demand by week is the published series'", async () => {
    const done = await bench.bringIn(sheet("part-usage"));
    expect(counts(done, "data.csv")).toEqual([72, 72, 0, 0, 0]);
    const [week] = await bench.engine.rows<{ n: number; nonzero: number; total: number; mean: number; variance: number }>(WEEKS);
    expect([week?.n, week?.nonzero, week?.total]).toEqual([values.weeks, values.nonzero, values.total]);
    expect(week?.mean).toBeCloseTo(values.mean, 10);
    expect(week?.variance).toBeCloseTo(values.variance, 8);
  });

  test("and its class and the forecasts of Croston, Syntetos-Boylan and Teunter-Syntetos-Babai are the published ones", async () => {
    await bench.bringIn(sheet("part-usage"));
    const { values: wanted } = expected<{ class_syntetos_boylan_croston: string; methods: { "alpha_0.1": Record<"demand_size" | "demand_interval" | "croston" | "sba" | "tsb", number> } }>("part-usage");
    const rows = await bench.engine.rows<{ qty: number }>(WEEKS.replace(/select count\(\*\)[^]*?\n {4}from weeks/, "select coalesce(qty, 0)::double as qty from weeks") + " order by week");
    const series = rows.map((row) => row.qty), said = wanted.methods["alpha_0.1"], kept = croston(series, 0.1);
    expect(demandPattern(series).pattern).toBe(wanted.class_syntetos_boylan_croston);
    expect([kept.size, kept.interval, kept.croston, kept.sba, tsb(series, 0.1, 0.1).forecast].map((one) => one?.toPrecision(9)))
      .toEqual([said.demand_size, said.demand_interval, said.croston, said.sba, said.tsb].map((one) => one.toPrecision(9)));
  });
});
