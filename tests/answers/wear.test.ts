import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { advise, allWear, wearPage } from "../../src/answers/wear/ask-wear.ts";
import { wearOf } from "../../src/answers/wear/all-wear.ts";
import { fittedSteps } from "../../src/answers/wear/fitted-steps.ts";
import { ALL_WEAR, wearRecords } from "../../src/answers/wear/wear-records.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { emptied, openBench } from "../records/bench.ts";
import type { Bench } from "../records/bench.ts";
import { expectNear, numberOf, numbersOf } from "../stats/reference-case.ts";
import type { Nested } from "../stats/reference-case.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { fill, openShop } from "./shop.ts";

// Open data reshaped as inspections; tests/reference/15-records/inspections/SOURCE.md, values from R 4.2.2.
describe("inspections, through the importer", () => {
  const folder = new URL("../reference/15-records/inspections/", import.meta.url), text = (file: string) => readFileSync(new URL(file, folder), "utf8");
  const { values } = JSON.parse(text("expected.json")) as { values: Nested };
  const of = (from: Nested, ...keys: string[]) => keys.map((key) => numberOf(from[key]));
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench();
    await emptied(bench);
    await bench.bringIn({ "data.csv": text("data.csv"), "mapping.json": text("mapping.json") });
    await prepareAnswers(bench.engine);
  });

  test("shape, scale, log-likelihood and the profile limits are R's to 1e-5", async () => {
    const { rows: [row] } = await allWear(bench.engine, ALL_WEAR), relative = 1e-5, b10 = (values["quantiles"] as Nested)["B10"] as Nested, b50 = (values["quantiles"] as Nested)["B50"] as Nested;
    expect(row).toMatchObject({ position: "body_seal", clock: "salt_days", method: "current status", n: 371, failed: 82, status: "ok", unlinked: 0 });
    expectNear([row?.shape.value ?? null, row?.shape.low ?? null, row?.shape.high ?? null, row?.scale.value ?? null], of(values, "shape_beta", "beta_profile_lo", "beta_profile_hi", "scale_eta"), { relative });
    expectNear([row?.log_likelihood ?? null], of(values, "loglik_bernoulli"), { absolute: 1e-7 });
    expectNear([row?.b10.value ?? null, row?.b10.low ?? null, row?.b10.high ?? null], of(b10, "estimate", "profile_lo", "profile_hi"), { relative });
    expectNear([row?.b50.value ?? null, row?.b50.low ?? null, row?.b50.high ?? null], of(b50, "estimate", "profile_lo", "profile_hi"), { relative });
  });

  test("the steps without a shape are R's, with the inspections behind each", async () => {
    const { lines } = await wearRecords(bench.engine, ALL_WEAR), { points } = fittedSteps(lines, 20), npmle = values["npmle"] as Nested;
    expect(points.map(({ n }) => n)).toEqual(numbersOf(npmle["inspected"]));
    expectNear(points.map(({ observed }) => observed), numbersOf(npmle["F"]), { relative: 1e-10 });
    expect(points.every(({ fitted, fitted_low, fitted_high }) => (fitted_low ?? 1) < (fitted ?? 0) && (fitted ?? 1) < (fitted_high ?? 0))).toBe(true);
  });
});

let engine: Engine, next = 0;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

type Seen = { days: number | null; failed: boolean; count?: number; more?: Record<string, SqlValue> };
/** Line rollers inspected once each, on reels with serials of their own. */
async function shop(seen: readonly Seen[]): Promise<void> {
  const each = seen.flatMap(({ count = 1, ...one }) => Array.from({ length: count }, () => ({ ...one, ticket_no: `T${(next += 1)}` })));
  const tickets = each.map(({ ticket_no, days, more = {} }) => ({
    ticket_no, received_on: "2024-05-01", finished_on: "2024-05-03", maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "line roller",
    serial: ticket_no, water: "salt", rinse: "always", came_in: "planned", salt_days: days, use_days: days, ...more }));
  const findings = each.map(({ ticket_no, failed }) => ({ ticket_no, position: "line_roller_bearing", action: failed ? "replaced" : "cleaned", grade: failed ? 3 : 1, routine: failed ? false : null }));
  await fill(engine, { tickets, findings, models: [{ maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", sealed: false, tier: "mid" }] });
}
const first = async (filter = ALL_WEAR) => (await allWear(engine, filter)).rows[0];
/** No figure anywhere is one that is none. */
const noNaN = (value: unknown) => expect(JSON.stringify(value, (_, one: unknown) => (typeof one === "number" && !Number.isFinite(one) ? "no number" : one))).not.toContain("no number");

describe("records from which no curve can be had", () => {
  test.each<[string, Seen[], Record<string, unknown>]>([
    ["none failed", [{ days: 10, failed: false, count: 6 }, { days: 20, failed: false, count: 5 }, { days: 45, failed: false, count: 2 }], { status: "none failed", status_text: "None has failed." }],
    ["all failed", [{ days: 30, failed: true, count: 4 }, { days: 60, failed: true, count: 3 }], { status: "all failed" }],
    ["one failed", [{ days: 8, failed: false, count: 9 }, { days: 30, failed: true }], { status: "too few failures", failed: 1 }],
    ["few good", [{ days: 8, failed: false, count: 2 }, { days: 30, failed: true, count: 9 }], { status: "too few good" }],
    ["one exposure", [{ days: 25, failed: false, count: 9 }, { days: 25, failed: true, count: 7 }], { status: "one exposure" }],
    ["missing exposure", [{ days: null, failed: false, count: 9 }, { days: null, failed: true, count: 7 }], { status: "no exposure", n: 0, clock_missing: 16 }],
    ["zero exposure", [{ days: 0, failed: false, count: 9 }, { days: 0, failed: true, count: 7 }], { status: "no exposure", n: 0, failed_without_exposure: 7 }],
    ["younger ones fail", [{ days: 5, failed: true, count: 12 }, { days: 5, failed: false, count: 9 }, { days: 60, failed: true, count: 5 }, { days: 60, failed: false, count: 30 }], { status: "not wear-out" }],
  ])("%s: the status says so, in words, and no figure is invented", async (_name, seen, wanted) => {
    await shop(seen);
    const row = await first(), page = await wearPage(engine, ALL_WEAR, "line_roller_bearing");
    expect(row).toMatchObject({ ...wanted, b10: { value: null, low: null, high: null } });
    expect(row?.status_text).toMatch(/^[A-Z].*\.$/);
    expect(page.curve).toEqual([]);
    noNaN([row, page, await advise(engine, { reel_kind: "spinning", maker: null, model: null, water: "salt", rinse: "always", risk: 0.1 })]);
  });

  test("none failed still bounds the life from below, all failed from above, with the usual shape", async () => {
    await shop([{ days: 10, failed: false, count: 6 }, { days: 20, failed: false, count: 5 }, { days: 45, failed: false, count: 2 }]);
    // Σ n t^1.5 = 1240.7 over −ln 0.05, to the 1/1.5; B10 is that by (−ln 0.9)^(1/1.5): 55.6 × 0.2231.
    expect((await first())?.b10_bound.low).toBeCloseTo(55.57 * 0.22309, 1);
    await shop([{ days: 30, failed: true, count: 4 }, { days: 60, failed: true, count: 3 }]);
    expect((await first())?.b10_bound).toMatchObject({ low: null, high: expect.any(Number) });
  });

  test("with too few parts behind every step nothing is said of how well the curve follows them", async () => {
    await shop([8, 15, 24, 36, 52, 70].flatMap((days, i): Seen[] => [{ days, failed: true, count: 1 + (i >> 1) }, { days, failed: false, count: 2 }]));
    expect((await wearPage(engine, ALL_WEAR, "line_roller_bearing")).misfit).toMatchObject({ bad: false, text: "Too few parts stand behind the steps to tell whether the curve follows the records." });
  });

  test("separated failures get a rough curve that is called one", async () => {
    await shop([{ days: 10, failed: false, count: 9 }, { days: 30, failed: false, count: 8 }, { days: 50, failed: true, count: 7 }]);
    const row = await first();
    expect(row).toMatchObject({ status: "separated", note: expect.stringContaining("weak prior") });
    expect(row?.b50.value).toBeGreaterThan(30);
    noNaN(row);
  });
});

describe("what counts", () => {
  const mixed: Seen[] = [5, 12, 25, 40, 70].flatMap((days, i): Seen[] => [{ days, failed: true, count: 1 + 2 * i }, { days, failed: false, count: 12 - 2 * i }]);

  test("a reel first seen with something wrong is left out, and counted when asked", async () => {
    await shop([...mixed, { days: 3, failed: true, count: 10, more: { came_in: "complaint" } }]);
    expect(await first()).toMatchObject({ n: 65, failed: 25, chosen_by_fault: 10 });
    expect(await first({ ...ALL_WEAR, first_sights: "all" })).toMatchObject({ n: 75, failed: 35, chosen_by_fault: 0 });
    expect(await first({ ...ALL_WEAR, first_sights: "none" })).toMatchObject({ n: 0, chosen_by_fault: 75 });
  });

  test("a part fitted here that brings its reel in before it was ever looked at is left out; once seen good on planned work its failure counts", async () => {
    const visit = (ticket_no: string, received_on: string, came_in: string, serial: string) => ({
      ticket_no, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "line roller", serial, water: "salt", came_in, salt_days: 20, use_days: 20 });
    const replaced = (ticket_no: string) => ({ ticket_no, position: "line_roller_bearing", action: "replaced", grade: 3, routine: false });
    await fill(engine, {
      tickets: [
        visit("A1", "2024-01-10", "planned", "S-A"), visit("A2", "2024-06-10", "complaint", "S-A"),
        visit("B1", "2024-01-10", "planned", "S-B"), visit("B2", "2024-06-10", "planned", "S-B"), visit("B3", "2025-01-10", "complaint", "S-B"),
      ],
      findings: [replaced("A1"), replaced("A2"), replaced("B1"), replaced("B3")],
    });
    const { lines } = await wearRecords(engine, ALL_WEAR);
    expect(lines.map(({ low, high, left_out, parts }) => [low, high, left_out, parts])).toEqual([[0, 20, "chosen by fault", 1], [0, 20, null, 2], [20, 40, null, 1]]);
    expect((await wearRecords(engine, { ...ALL_WEAR, first_sights: "all" })).lines.map(({ left_out }) => left_out)).toEqual([null, null]);
    expect((await wearRecords(engine, { ...ALL_WEAR, first_sights: "none" })).lines.map(({ low, high, left_out, parts }) => [low, high, left_out, parts]))
      .toEqual([[0, 20, "chosen by fault", 3], [20, 40, null, 1]]);
  });

  test("fresh-water reels are not counted by salt days but by months", async () => {
    await shop([...mixed, { days: 0, failed: true, count: 4, more: { water: "fresh", months_since_service: 12, use_days: 30 } }]);
    expect(await first()).toMatchObject({ n: 65, failed_without_exposure: 0 });
    expect(await first({ ...ALL_WEAR, clock: "months" })).toMatchObject({ n: 4, failed: 4 });
  });

  test("twice the wear of reels never rinsed comes out as two, and the advice follows it and stays inside the records", async () => {
    const halved = mixed.map((one) => ({ ...one, days: (one.days ?? 0) / 2, more: { rinse: "never" } }));
    await shop([...mixed, ...halved]);
    const page = await wearPage(engine, ALL_WEAR, "line_roller_bearing"), [never] = page.effects;
    expect(never).toMatchObject({ condition: "rinse", level: "never", reference: "always", n: 65, failed: 25, status: "ok" });
    expect(never?.time_ratio.value).toBeCloseTo(2, 3);
    expect(never?.time_ratio.low).toBeGreaterThan(1);
    expect(page.curve.filter(({ beyond }) => beyond).every(({ exposure }) => exposure > 70)).toBe(true);
    const ask = (rinse: string, risk = 0.1) => advise(engine, { reel_kind: "spinning", maker: null, model: null, water: "salt", rinse, risk });
    const rinsed = await ask("always"), salty = await ask("never");
    expect((rinsed.positions[0]?.due.value ?? 0) / (salty.positions[0]?.due.value ?? 1)).toBeCloseTo(2, 3);
    expect(rinsed.by_days).toMatchObject({ status: "ok", set_by: "line_roller_bearing" });
    expect(rinsed.slip.lines[0]).toMatch(/^Please bring it in after \d+ days in salt or brackish water/);
    expect(await ask("always", 0.99)).toMatchObject({ by_days: { status: "beyond the records", after: null } });
    await expect(ask("always", 1)).rejects.toThrow("adviceOf: risk must lie between 0 and 1, got 1");
  });

  test("a cancel stops the fitting with the signal's reason", async () => {
    await shop(mixed);
    const records = await wearRecords(engine, ALL_WEAR), stop = new AbortController();
    const many = { ...records, lines: Array.from({ length: 400 }, (_, i) => records.lines.map((line) => ({ ...line, position: `p${i}` }))).flat() };
    const steps: number[] = [], going = wearOf(many, { signal: stop.signal, report: ({ done }) => { steps.push(done); stop.abort(new Error("called off")); } });
    await expect(going).rejects.toThrow("called off");
    expect(steps.length).toBe(1);
  });
});
