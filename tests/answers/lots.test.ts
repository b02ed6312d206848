import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { dayAfter } from "../../src/answers/days.ts";
import { carriersOf } from "../../src/answers/lots/carriers.ts";
import { scanLots, WITHIN_DAYS } from "../../src/answers/lots/lot-scan.ts";
import type { LotGroup, LotScan } from "../../src/answers/lots/lot-scan.ts";
import type { RefittedRow } from "../../src/answers/lots/lot-shares.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import refittedSql from "../../src/answers/lots/refitted.sql?raw";
import { answerIn, askWorker } from "../../src/answers/worker-work.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

type Cells = Record<string, SqlValue>;
const PARTS = [
  { part_no: "RB-1", size: "4x7x2.5", supplier: "North" }, { part_no: "RB-2", size: "4x7x2.5", supplier: "North" }, { part_no: "RB-3", size: "4x7x2.5", supplier: "South" },
];
const job = (ticket_no: string, serial: string | null, received_on: string, more: Cells = {}): Cells => ({
  ticket_no, serial, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service", came_in: "planned", water: "salt", salt_days: 20, ...more,
});
const fitted = (ticket_no: string, part_no: string, more: Cells = {}): Cells => ({ ticket_no, position: "line_roller_bearing", action: "replaced", routine: true, qty: 1, part_no, ...more });
const graded = (ticket_no: string, grade: number): Cells => ({ ticket_no, position: "line_roller_bearing", grade });

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

describe("parts fitted and looked at again, by hand", () => {
  test("the next look on a later day counts, of the same reel and part, once for parts alike", async () => {
    await fill(engine, {
      parts: PARTS,
      tickets: [
        job("A1", "S1", "2024-01-10"), job("A2", "S1", "2024-03-01"), job("A3", "S1", "2024-04-01"),
        job("B1", "S2", "2024-01-10"), job("B2", "S2", "2024-01-10"), job("B3", "S2", "2024-06-01", { water: "fresh", use_days: 50 }),
        job("C1", "S3", "2024-02-05"), job("C2", "S3", "2025-12-01", { salt_days: null }),
        job("D1", "S1", "2024-02-01", { model: "Dovekin 25" }), job("E1", "S4", "2024-01-31", { finished_on: "2024-02-20" }), job("E2", "S4", "2024-03-20", { salt_days: 14 }),
        job("F1", null, "2024-01-10"), job("F2", null, "2024-02-10"),
      ],
      // A1 took two bearings alike and a third from elsewhere; a good finding sees to it that a job counts.
      findings: [
        fitted("A1", "RB-1"), fitted("A1", "RB-2"), fitted("A1", "RB-3"), graded("A2", 4), graded("A3", 0), fitted("B1", "RB-1"), graded("B2", 4), graded("B3", 0), fitted("C1", "RB-1"), graded("C2", 4),
        graded("D1", 0), fitted("E1", "RB-1"), graded("E2", 0), fitted("F1", "RB-1"), graded("F2", 4),
      ],
    });
    const rows = await engine.rows<RefittedRow>(refittedSql, { within_days: WITHIN_DAYS }), january = 2024 * 12;
    expect(rows.map(({ supplier, month, model, fished, soon, failed, fitted: pieces }) => [supplier, month - january, model, fished, soon, failed, pieces])).toEqual([
      ["North", 0, "Whinbeck 40", 2, true, true, 1],
      ["North", 0, "Whinbeck 40", 3, true, false, 1],
      ["North", 1, "Whinbeck 40", 0, false, true, 1],
      ["North", 1, "Whinbeck 40", 1, true, false, 1],
      ["South", 0, "Whinbeck 40", 2, true, true, 1],
    ]);
  });
});

/** Six reels a month from January 2024, each looked at 100 days later: all of May and June failed, and one each of January and October. */
const REELS = Array.from({ length: 60 }, (_, i) => {
  const month = Math.floor(i / 6), on = `2024-${String(month + 1).padStart(2, "0")}-1${i % 6}`;
  return { i, on, again: dayAfter(on, 100), failed: month === 4 || month === 5 || i === 0 || i === 54 };
});

describe("a bad batch by hand", () => {
  beforeAll(() => fill(engine, {
    parts: PARTS,
    tickets: [
      ...REELS.flatMap(({ i, on, again }) => [job(`A${i}`, `S${i}`, on, { technician: i % 2 === 0 ? "Ann" : "Ben" }), job(`B${i}`, `S${i}`, again)]),
      job("X1", "T1", "2024-05-20"), job("X2", "T1", "2024-06-20"),
    ],
    // Three of the batch were replaced when they had failed, with the other supplier's part.
    findings: [
      ...REELS.map(({ i }) => fitted(`A${i}`, "RB-1", { note: i === 24 || i === 30 ? "lot N-7" : i === 25 ? "lot N-6" : null })),
      ...REELS.map(({ i, failed }) => ({ ...graded(`B${i}`, failed ? 4 : 0), ...(i >= 24 && i < 27 ? fitted(`B${i}`, "RB-3", { routine: false }) : {}) })),
      fitted("X1", "RB-3", { note: "lot S-1" }), graded("X2", 0),
    ],
  }));

  test("is found with its months, its counts, what was to be expected and the reels that still carry one", async () => {
    const { rows: [worst, other, ...more], within_days, note } = await lots(engine);
    expect(worst).toMatchObject({
      size_or_part: "4x7x2.5", supplier: "North", verdict: "bad batch", from: "2024-05-01", to: "2024-06-30", fitted: 12, failed_early: 12, share: 1, expected_share: 2 / 48, p_value: 1 / 2000,
      lots_written: ["N-7", "N-6"], began: { latest: "2024-05-01" }, ended: { earliest: "2024-06-01" },
    });
    expect(worst?.technicians).toEqual([
      { name: "Ann", fitted: 6, failed_early: 6, others_fitted: 24, others_failed_early: 2 }, { name: "Ben", fitted: 6, failed_early: 6, others_fitted: 24, others_failed_early: 0 },
    ]);
    expect(worst?.carriers.map(({ ticket_no }) => ticket_no).sort()).toEqual([27, 28, 29, 30, 31, 32, 33, 34, 35].map((i) => `A${i}`));
    expect([other?.supplier, other?.verdict, other?.carriers, more, within_days, note]).toEqual(["South", "too few", [], [], WITHIN_DAYS, ""]);
  });

  test("lots that are looked up together keep their reels and lot words apart, and asking again forgets the first", async () => {
    const may = { size_or_part: "4x7x2.5", from: "2024-05-01", to: "2024-05-31" }, north = { ...may, supplier: "North" }, south = { ...may, supplier: "South" };
    const both = await carriersOf(engine, [north, south]);
    expect(both(north)).toMatchObject({ lots_written: ["N-6", "N-7"], carriers: [{ ticket_no: "A27" }, { ticket_no: "A28" }, { ticket_no: "A29" }] });
    expect(both(south)).toEqual({ lots_written: ["S-1"], carriers: [expect.objectContaining({ ticket_no: "X1", serial: "T1", fitted_on: "2024-05-20", last_seen_on: "2024-06-20" })] });
    expect((await carriersOf(engine, [south]))(north)).toEqual({ lots_written: [], carriers: [] });
    expect((await carriersOf(engine, []))(south)).toEqual({ lots_written: [], carriers: [] });
  });

  test("a worker gives what the same scan gives here, and tells how far it is", async () => {
    const { port1, port2 } = new MessageChannel(), steps: string[] = [];
    const page = Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker;
    answerIn(port2 as unknown as DedicatedWorkerGlobalScope, scanLots);
    port1.start();
    port2.start();
    const there = await lots(engine, undefined, {
      report: ({ step }) => { steps.push(step); }, work: (asked, means) => askWorker<readonly LotGroup[], readonly LotScan[]>(() => page, asked, means),
    });
    expect(there).toEqual(await lots(engine));
    expect(steps[0]).toBe("Counting what was fitted");
  });

  test("near the limit, where the word hangs on it, the chance is shuffled out ten times as finely", async () => {
    const half = (month: number, failed: boolean, pieces: number): RefittedRow => ({
      size_or_part: "x", supplier: null, month, position: "p", maker: null, model: "m", technician: null, fished: 1, soon: true, failed, fitted: pieces,
    });
    const rows = [half(0, true, 8), half(0, false, 7), half(1, true, 2), half(1, false, 13)];
    // 10 failed of 15 and 15, at least 8 in one month: 2 (C(15,8) C(15,2) + C(15,9) 15 + C(15,10)) / C(30,10) = 1 507 506 / 30 045 015.
    const [found] = await scanLots([{ rows, names: [] }], {}), p = found?.scan?.p ?? NaN;
    expect(Math.abs(p - 1_507_506 / 30_045_015)).toBeLessThan(0.004);
    expect(p * 20_000).toBeCloseTo(Math.round(p * 20_000), 6);
    expect(Math.abs(p * 2000 - Math.round(p * 2000))).toBeGreaterThan(0.05);
  });

  test("called off, while counting or while scanning, it ends with the reason and gives no rows", async () => {
    await expect(lots(engine, AbortSignal.abort(new Error("not wanted")))).rejects.toThrow("not wanted");
    const cancel = new AbortController(), group: LotGroup = { names: [], rows: REELS.map(({ failed, i }): RefittedRow => ({
      size_or_part: "x", supplier: null, month: Math.floor(i / 6), position: "p", maker: null, model: "m", technician: null, fished: 1, soon: true, failed, fitted: 400,
    })) };
    const scanning = scanLots(Array.from({ length: 200 }, () => group), { signal: cancel.signal, report: () => cancel.abort(new Error("enough")) });
    await expect(scanning).rejects.toThrow("enough");
  });
});
