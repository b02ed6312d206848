import { describe, expect, test } from "vitest";
import type { Morning } from "../../src/answers/morning/morning.ts";
import { morningFacts, morningParts, type Part } from "../../src/rooms/morning/morning-items.ts";
import { waryPart } from "../../src/rooms/morning/wary-items.ts";
import { job, line, rate, supplierSheet, verdict } from "./rows.ts";

const nothing: Morning = {
  as_of: "2025-12-23", rows_to_fix: 0, slowest: [], most_failing: [], failing_positions: [], most_failing_opening: "planned", waiting: [], cautions: [],
  span: { from: null, to: null, latest: null, tickets: 0, findings: 0, models: 0, parts: 0, orders: 0, open_tickets: 0, tickets_with_serial: 0 },
  restock: {
    settings: { as_of: "2025-12-23", review_days: 14, targets: { A: 0.95, B: 0.9, C: 0.8 }, lead_days: 14, rule_changes: [], marks: [], free_from: {} }, used_from: null, used_to: "2025-12-23",
    lines: [], sheets: [], total: 0, unmapped_pieces: 0, notes: [],
  },
};
const restock = (lines: ReturnType<typeof line>[]) => ({ ...nothing.restock, lines, sheets: [supplierSheet(lines.filter((one) => one.status === "order"))], total: 18 });
const read = (part: Part | undefined) => part?.items.map((item) => `${item.before}[${item.figure}](${item.href})${item.after}`.replaceAll("\u00a0", " "));
const part = (morning: Morning, title: string) => morningParts(morning, "cu", "en-GB").find((one) => one.title === title);

describe("morningParts", () => {
  test("say plainly that there is nothing to do, part by part", () => {
    const parts = morningParts(nothing, "cu", "en-GB");
    expect(parts.flatMap((one) => one.items)).toEqual([]);
    expect(parts.map((one) => one.nothing.slice(0, 16))).toEqual(["Nothing to order", "Too few reels op", "No job has been ", "Nothing to fix: "]);
  });

  test("name what to order with number, supplier, cost and reason, what jobs wait for first", () => {
    const lines = [line({ name: "Dear", interchange: "dear", cost: 90, waiting: 0 }), line()];
    const order = part({ ...nothing, restock: restock(lines) }, "Order");
    expect(read(order)).toEqual([
      "[12 × Bearing 7×11×3](#/stock?line=bearing+7x11x3) from Far Lantern, 18 cu, 1 piece waited for on the bench.",
      "[12 × Dear](#/stock?line=dear) from Far Lantern, 90 cu.",
    ]);
    expect(order?.items[0]?.why).toBe(line().reason);
  });

  test("name at most six lines and say how long the whole order is", () => {
    const lines = Array.from({ length: 9 }, (_, at) => line({ interchange: `line ${at}` }));
    const order = part({ ...nothing, restock: restock(lines) }, "Order");
    expect(order?.items).toHaveLength(6);
    expect(order?.more.words.replaceAll("\u00a0", " ")).toBe("The whole order with its reasons, on Stock: 9 lines from 1 supplier, 18 cu");
  });

  test("lead from every failing part to its own sheet, with the range in words", () => {
    const morning = { ...nothing, failing_positions: [rate(208, 1082, { model: "*", maker: "*", position: "line_roller_bearing", position_name: "Line roller bearing" })], most_failing: [rate(26, 201)] };
    expect(read(part(morning, "Look at these twice"))).toEqual([
      "Line roller bearing had failed in [208 of 1,082](#/failures?position=line_roller_bearing) planned services, likely between 17 and 22 %.",
      "One-way clutch on Brackhelm Whinbeck 40 had failed in [26 of 201](#/failures?position=ar_clutch&model=Brackhelm+Whinbeck+40) planned services, likely between 9 and 18 %.",
    ]);
  });

  test("say so when planned services were too few and all openings are counted", () => {
    const morning = { ...nothing, most_failing: [rate(26, 201, { opening: "*" })], most_failing_opening: "*" as const };
    expect(read(part(morning, "Look at these twice"))?.[0]).toMatch(/#\/failures\?opening=both.*openings of all kinds/);
  });

  test("tell what to do about parts that jobs wait for, and not to trust an assorted drawer", () => {
    const wait = (interchange: string, on_hand: number | null) => ({ interchange, name: interchange, pieces: 2, on_hand });
    const morning = { ...nothing, waiting: [wait("there", 5), wait("short", 1), wait("uncounted", null), wait("mixed", 11)], restock: restock([line({ status: "refused", interchange: "mixed" })]) };
    expect(part(morning, "Jobs waiting for parts")?.items.map((item) => item.after)).toEqual([
      " waited for, and 5 on the shelf: fit them.", " waited for, 1 on the shelf.", " waited for; the shelf count is not known.",
      " waited for: is the right one in the drawer?",
    ]);
  });

  test("name the long jobs with the time for a quote, and the cells to fix", () => {
    expect(read(part({ ...nothing, slowest: [job()] }, "Long jobs"))).toEqual([
      "Full service, spinning usually takes 1 h 07; [4 in 5 are done within 1 h 26](#/labour?job=full+service%2C+spinning) (612 jobs).",
    ]);
    expect(read(part({ ...nothing, rows_to_fix: 14 }, "Records"))?.[0]).toMatch(/^Fix \[14 cells\]\(#\/records\)/);
  });
});

describe("morningFacts", () => {
  test("show a dash for days while there is no ticket", () => {
    expect(morningFacts(nothing, "en-GB").map((fact) => fact.value)).toEqual(["0", "–", "–", "0"]);
  });
});

describe("waryPart", () => {
  test("names only parts that stand out, with the counts of both sides, and counts what is not yet sure", () => {
    const part = waryPart([verdict(), verdict({ word: "worse than most, not yet sure" }), verdict({ word: "no different" })], "en-GB");
    expect(read(part)).toEqual([
      "Brackhelm Whinbeck 40: one-way clutch had failed in [32 of 236](#/failures?model=Brackhelm+Whinbeck+40) planned services, on the other models in 34 of 1,239, 5.1 times as often as on reels used alike.",
    ]);
    expect(part.more.words).toBe("Reels to be wary of, on Failures: 1 part not yet sure");
  });

  test("says plainly that nothing stands out", () => {
    const part = waryPart([verdict({ word: "no different" })], "en-GB");
    expect([part.items, part.nothing, part.more.words]).toEqual([[], "No part of any model fails clearly more often than on the others.", "Reels to be wary of, on Failures"]);
  });
});
