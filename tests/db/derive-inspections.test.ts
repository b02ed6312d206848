import { beforeEach, describe, expect, test } from "vitest";
import type { Engine, Row } from "../../src/db/engine.ts";
import { openEngine } from "./open.ts";
import { put, putAll } from "./put.ts";

/** Roller and clutch are on every reel of the kind, the charm is on some. */
const POSITIONS = [{ position: "roller", optional: false }, { position: "clutch", optional: false }, { position: "charm", optional: true }];
const COVERAGE = [
  { reel_kind: "spinning", job: "full service", position: "roller", level: "inspected" },
  { reel_kind: "spinning", job: "full service", position: "clutch", level: "inspected" },
  { reel_kind: "spinning", job: "full service", position: "charm", level: "inspected" },
  { reel_kind: "spinning", job: "external", position: "roller", level: "seen" },
  { reel_kind: "spinning", job: "external", position: "clutch", level: "inspected", not_tier: "low" },
];
const TICKET = { received_on: "2026-01-10", model: "M", reel_kind: "spinning", job: "full service", outcome: "returned" };
const FOUND = "select ticket_no, position, written, covered, counted, failed from inspections order by ticket_no, position";
const brief = (rows: Row[]) => rows.map(({ ticket_no, position, written, covered, counted, failed }) =>
  `${ticket_no} ${position}${written ? " written" : ""}${covered ? " covered" : ""}${counted ? " counted" : ""}${failed ? " failed" : ""}`);

let engine: Engine;
beforeEach(async () => {
  engine = await openEngine();
  await put(engine, "position_list", POSITIONS);
  await put(engine, "coverage", COVERAGE);
});

describe("what was inspected", () => {
  test("a finished job counts every position it opens that the shop ever names, with nothing written as good", async () => {
    await putAll(engine, {
      "ledger.tickets": [
        { ...TICKET, ticket_no: "T1" },
        { ...TICKET, ticket_no: "T2" },
        { ...TICKET, ticket_no: "T3", outcome: "waiting" },
      ],
      "ledger.findings": [{ ticket_no: "T1", position: "roller", grade: 4 }],
    });
    // No record names the clutch: the shop may not write about clutches at all, so nothing is known of them.
    expect(brief(await engine.rows(FOUND))).toEqual(["T1 roller written covered counted failed", "T2 roller covered counted"]);
  });

  test("seen counts only what was written; a job without a list counts what was written; not opened is kept apart", async () => {
    await putAll(engine, {
      "ledger.tickets": [
        { ...TICKET, ticket_no: "T1", job: "external" },
        { ...TICKET, ticket_no: "T2", job: "external" },
        { ...TICKET, ticket_no: "T3", job: "other" },
        { ...TICKET, ticket_no: "T4", job: null },
        { ...TICKET, ticket_no: "T5", job: "external" },
      ],
      "ledger.findings": [
        { ticket_no: "T1", position: "roller", grade: 1 },
        { ticket_no: "T3", position: "roller", grade: 1 },
        { ticket_no: "T4", position: "roller", grade: 1 },
        { ticket_no: "T5", position: "charm", grade: 4 },
      ],
    });
    expect(brief(await engine.rows(FOUND))).toEqual([
      "T1 roller written counted", "T3 roller written counted", "T4 roller written counted", "T5 charm written failed",
    ]);
  });

  test("a position that not every reel has counts where a fit or a finding shows it, and not where a fit of 0 denies it", async () => {
    await putAll(engine, {
      "ledger.tickets": ["A", "B", "C", "D"].map((model) => ({ ...TICKET, ticket_no: `T-${model}`, model })),
      "ledger.findings": [{ ticket_no: "T-A", position: "charm", grade: 0 }, { ticket_no: "T-A", position: "roller", grade: 0 }],
      "ledger.fits": [
        { model: "B", position: "charm", part_no: "P1" },
        { model: "D", position: "charm", qty: 0 },
        { model: "D", position: "roller", qty: 0 },
      ],
    });
    expect(brief(await engine.rows(FOUND))).toEqual([
      "T-A charm written covered counted", "T-A roller written covered counted", "T-B charm covered counted", "T-B roller covered counted",
      "T-C roller covered counted",
    ]);
  });

  test("an exception for a tier holds for that tier only, and not where the tier is unknown", async () => {
    const external = { ...TICKET, job: "external" };
    await putAll(engine, {
      "ledger.models": [{ model: "L", tier: "low", import_no: 1 }, { model: "H", tier: "high", import_no: 1 }],
      "ledger.tickets": ["L", "H", "U"].map((model) => ({ ...external, ticket_no: `T-${model}`, model })).concat({ ...TICKET, ticket_no: "T-Z", model: "U", outcome: "waiting" }),
      "ledger.findings": [{ ticket_no: "T-Z", position: "clutch", grade: 0 }],
    });
    expect(brief(await engine.rows(FOUND))).toEqual(["T-H clutch covered counted", "T-U clutch covered counted", "T-Z clutch written"]);
  });

  test("a finding of a ticket that does not exist is nowhere", async () => {
    await putAll(engine, { "ledger.findings": [{ ticket_no: "T9", position: "roller", grade: 4 }] });
    expect(await engine.rows(FOUND)).toEqual([]);
  });
});

describe("what had failed", () => {
  const FINDINGS = [
    { position: "p1", action: "replaced" },
    { position: "p2", action: "replaced", routine: true },
    { position: "p3", action: "wanted", routine: false },
    { position: "p4", action: "cleaned", grade: 2 },
    { position: "p5", action: "replaced", routine: true, grade: 3 },
    { position: "p6", grade: 1 }, { position: "p6", grade: 4 },
    { position: "p7", action: "left" },
  ].map((finding) => ({ ticket_no: "T1", ...finding }));
  const failed = async (grade: number) => {
    await putAll(engine, { "ledger.tickets": [{ ...TICKET, ticket_no: "T1", job: "other" }], "ledger.findings": FINDINGS }, grade);
    return (await engine.rows<{ position: string }>("select position from inspections where failed order by position")).map(({ position }) => position);
  };

  test("replaced or wanted and not as routine, or a grade of 3 and more; several rows of one position are one inspection", async () => {
    expect(await failed(3)).toEqual(["p1", "p3", "p5", "p6"]);
    expect(await engine.rows("select position, grade, replaced, routine from inspections where position in ('p2', 'p6') order by position")).toEqual([
      { position: "p2", grade: null, replaced: true, routine: true }, { position: "p6", grade: 4, replaced: false, routine: false },
    ]);
  });

  test("a shop that calls grade 2 failed gets one position more", async () => expect(await failed(2)).toEqual(["p1", "p3", "p4", "p5", "p6"]));
});
