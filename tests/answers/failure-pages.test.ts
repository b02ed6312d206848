import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { evidenceSheet } from "../../src/answers/failure-pages/evidence-sheet.ts";
import { funnel } from "../../src/answers/failure-pages/funnel.ts";
import { modelPage } from "../../src/answers/failure-pages/model-page.ts";
import { positionPage } from "../../src/answers/failure-pages/position-page.ts";
import { sideBySide } from "../../src/answers/failure-pages/side-by-side.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../src/answers/failures/failure-verdicts.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

const WHINBECK = { maker: "Brackhelm", model: "Whinbeck 40" }, DOVEKIN = { maker: "Brackhelm", model: "Dovekin 25" }, JARNVIK = { maker: "Uffenby", model: "Jarnvik 30-II" };
let engine: Engine, verdicts: readonly Verdict[];
beforeAll(async () => {
  engine = await openDemo();
  verdicts = await failureVerdicts(engine, ALL_VERDICTS);
});
afterAll(() => engine.close());

describe("a model's page", () => {
  test("says in a sentence whether to warn customers, of what, and how sure that is", async () => {
    const page = await modelPage(engine, WHINBECK, verdicts, ALL_VERDICTS);
    expect(page.answer).toBe("yes");
    expect(page.advice).toMatch(/^Yes, warn customers\. The anti-reverse clutch .* of the Brackhelm Whinbeck 40 fails clearly more often than on other models: \d\.\d times as often as on reels used alike\.$/);
    expect(page.verdicts[0]).toMatchObject({ position: "ar_clutch", word: "stands out" });
    expect(page.tickets).toBeGreaterThan(page.reels);
    expect(page.comebacks.rows.some((row) => row.model === "Whinbeck 40")).toBe(true);
    expect(page.complaint_share.value).not.toBeNull();
  });

  test("does not warn of a model that is too rare to say anything", async () => {
    const page = await modelPage(engine, JARNVIK, verdicts, ALL_VERDICTS);
    expect(page.answer).toBe("cannot say");
    expect(page.verdicts.every(({ word }) => word !== "stands out")).toBe(true);
  });
});

describe("a part's page", () => {
  test("names who stands out, with the funnel, time, and the rule changes that touch it", async () => {
    const change = { from: "2024-07-01", position: "drag_knob_seal", text: "changed at every service" };
    const page = await positionPage(engine, "ar_clutch", verdicts, ALL_VERDICTS, [change, { ...change, position: "ar_clutch" }]);
    expect(page.summary).toMatch(/^Anti-reverse clutch.*: Brackhelm Whinbeck 40 stands out, /);
    expect(page.rule_changes.map(({ position }) => position)).toEqual(["ar_clutch"]);
    const point = page.funnel.points.find(({ model }) => model === "Whinbeck 40"), limit = page.funnel.limits.find(({ inspected }) => inspected >= (point?.inspected ?? 0));
    expect(point?.share).toBeGreaterThan(limit?.high998 ?? page.funnel.limits.at(-1)?.high998 ?? 1);
    expect(page.over_time.length).toBeGreaterThan(10);
    await expect(positionPage(engine, "no_part", verdicts, ALL_VERDICTS, [])).rejects.toThrow("positionPage: position must be one of the verdicts', got no_part");
  });

  test("a funnel of several parts is refused", () => {
    expect(() => funnel(verdicts, "planned")).toThrow(RangeError);
  });
});

describe("two models side by side", () => {
  test("the clutch of the first fails more often than that of the second, like with like", async () => {
    const { rows, summary } = await sideBySide(engine, WHINBECK, DOVEKIN, verdicts, ALL_VERDICTS), clutch = rows.find((row) => row.position === "ar_clutch");
    expect(clutch?.ratio.value).toBeGreaterThan(1.5);
    expect(clutch?.sentence).toMatch(/^Anti-reverse clutch/);
    expect(summary.length).toBeGreaterThan(20);
    const turned = (await sideBySide(engine, DOVEKIN, WHINBECK, verdicts, ALL_VERDICTS)).rows.find((row) => row.position === "ar_clutch");
    expect((turned?.ratio.value ?? 0) * (clutch?.ratio.value ?? 0)).toBeCloseTo(1, 9);
    expect(rows.some((row) => row.position === "knob_bearing")).toBe(false);
  });
});

describe("the evidence sheet", () => {
  test("holds counts, comparison, method, cautions and the tickets behind, newest first", async () => {
    const sheet = await evidenceSheet(engine, verdicts[0] as Verdict, verdicts, ALL_VERDICTS);
    expect(sheet.title).toMatch(/Brackhelm Whinbeck 40: stands out$/);
    expect(sheet.comparison).toMatch(/^In planned services it had failed in \d+ of \d+ \(\d+ %\); on the other models in /);
    expect(sheet.method.length).toBe(3);
    expect(sheet.findings.length).toBeGreaterThan(50);
    expect(sheet.findings.map((one) => one.received_on)).toEqual(sheet.findings.map((one) => one.received_on).sort().reverse());
    expect([sheet.from?.slice(0, 4), sheet.to?.slice(0, 4)]).toEqual(["2023", "2025"]);
  });
});

describe("lots of the demo", () => {
  test("the bad batch is told with its months, models, technicians, lot words and the reels that still carry one", async () => {
    const { rows: [worst, ...others], note } = await lots(engine);
    expect(worst).toMatchObject({ size_or_part: "4x7x2.5", supplier: "Far Lantern Imports", verdict: "bad batch" });
    expect(worst?.lots_written[0]).toBe("FL-2404");
    expect(worst?.share).toBeGreaterThan(1.25 * (worst?.expected_share ?? 1));
    expect(worst?.models.filter(({ fitted }) => fitted >= 3).length).toBeGreaterThan(2);
    expect(worst?.reasons.join(" ")).toContain("so it is the parts and not one model");
    expect(worst?.carriers.every(({ fitted_on }) => fitted_on >= (worst.from) && fitted_on <= worst.to)).toBe(true);
    expect(others.filter(({ verdict }) => verdict === "bad batch")).toEqual([]);
    expect(note).toBe("");
  });
});
