import { describe, expect, test } from "vitest";
import type { Look } from "../../src/answers/morning/last-look.ts";
import type { OrderToday } from "../../src/answers/morning/order-today.ts";
import type { Watch } from "../../src/answers/morning/worth-watching.ts";
import { listChanges, sinceSentence } from "../../src/rooms/morning/change-words.ts";
import { morningFacts, orderPart, waitingPart } from "../../src/rooms/morning/order-items.ts";
import { recordsPart, scorePart } from "../../src/rooms/morning/record-items.ts";
import type { Part } from "../../src/rooms/morning/sheet-part.ts";
import { watchPart } from "../../src/rooms/morning/watch-items.ts";
import { line, supplierSheet, verdict } from "./rows.ts";

const nothing: OrderToday = {
  as_of: "2025-12-23", waiting: [],
  span: { from: null, to: null, latest: null, tickets: 0, findings: 0, models: 0, parts: 0, orders: 0, open_tickets: 0, tickets_with_serial: 0 },
  restock: {
    settings: { as_of: "2025-12-23", review_days: 14, targets: { A: 0.95, B: 0.9, C: 0.8 }, lead_days: 14, rule_changes: [], marks: [], free_from: {} }, used_from: null, used_to: "2025-12-23",
    lines: [], sheets: [], total: 0, unmapped_pieces: 0, notes: [],
  },
};
const restock = (lines: ReturnType<typeof line>[]) => ({ ...nothing.restock, lines, sheets: [supplierSheet(lines.filter((one) => one.status === "order"))], total: 18 });
const read = (part: Part | null) => part?.items.map((item) => `${item.before}[${item.figure}](${item.href})${item.after}`.replaceAll("\u00a0", " "));
const look = (figures: Partial<Look["figures"]>): Look => ({ day: "2026-11-24", records: "1 a", figures: { order: [], watch: [], backlog_hours: null, to_answer: 0, ...figures } });
const NO_WATCH: Watch = { out: [], unsure: 0, lots: [], comeback: null, within_days: 90 };

describe("orderPart", () => {
  test("is one sentence a supplier with money and whether it goes now, what jobs wait for named first", () => {
    const part = orderPart({ ...nothing, restock: restock([line({ name: "Dear", interchange: "dear", cost: 90, waiting: 0 }), line()]) }, "cu", null, "en-GB");
    expect(read(part)).toEqual(["Far Lantern: [2 lines, 108 cu](#/stock?show=order&supplier=Far+Lantern). Send it now: waiting 14 days would hold up about 4 jobs in 10 such orders."]);
    expect(part.items[0]?.why).toBe("12 × Bearing 7×11×3, 12 × Dear.");
  });

  test("names what goes now before what can wait, and at most three lines a supplier", () => {
    const lines = Array.from({ length: 5 }, (_, at) => line({ interchange: `line ${at}`, name: `Part ${at}` })), now = supplierSheet([line()]);
    const wait = supplierSheet(lines, { supplier: "Zet", joint: { ...now.joint, decision: "wait", sentence: "It can wait." } });
    const part = orderPart({ ...nothing, restock: { ...nothing.restock, sheets: [wait, now], total: 108 } }, "cu", null, "en-GB");
    expect(part.items.map(({ before }) => before)).toEqual(["Far Lantern: ", "Zet: "]);
    expect(part.items[1]?.why).toBe("12 × Part 0, 12 × Part 1, 12 × Part 2 and 2 other lines.");
  });

  test("says plainly that there is nothing to order", () => {
    const { items, nothing: said, changed } = orderPart(nothing, "cu", null, "en-GB");
    expect([items, said.slice(0, 16), changed]).toEqual([[], "Nothing to order", ""]);
  });

  test("tells which parts are new on the order and which have gone since the last look", () => {
    const before = look({ order: [{ key: "gone", name: "Spool seal" }] });
    expect(orderPart({ ...nothing, restock: restock([line()]) }, "cu", before, "en-GB").changed).toBe("new: Bearing 7×11×3; no longer to order: Spool seal.");
  });
});

describe("waitingPart", () => {
  test("tells what to do about parts that jobs wait for, and not to trust an assorted drawer", () => {
    const wait = (interchange: string, on_hand: number | null) => ({ interchange, name: interchange, pieces: 2, on_hand });
    const order = { ...nothing, waiting: [wait("there", 5), wait("short", 1), wait("uncounted", null), wait("mixed", 11)], restock: restock([line({ status: "refused", interchange: "mixed" })]) };
    expect(waitingPart(order, "en-GB")?.items.map((item) => item.after)).toEqual([
      " waited for, and 5 on the shelf: fit them.", " waited for, 1 on the shelf.", " waited for; the shelf count is not known.",
      " waited for: is the right one in the drawer?",
    ]);
    expect(waitingPart(nothing)).toBeNull();
  });
});

describe("watchPart", () => {
  test("names only parts that stand out, with the counts of both sides, and counts what is not yet sure", () => {
    const part = watchPart({ ...NO_WATCH, out: [verdict()], unsure: 1 }, null, "en-GB");
    expect(read(part)).toEqual([
      "Brackhelm Whinbeck 40: one-way clutch had failed in [32 of 236](#/failures?position=ar_clutch&model=Brackhelm+Whinbeck+40) planned services, on the other models in 34 of 1,239, 5.1 times as often as on reels used alike.",
    ]);
    expect(part.more.words).toBe("Reels to be wary of, on Failures: 1 part not yet sure");
  });

  test("puts what is new since the last look first, so that it is never among those not named", () => {
    const known = ["A", "B", "C"].map((model) => verdict({ model })), before = look({ watch: known.map(({ model }) => ({ key: JSON.stringify(["ar_clutch", "Brackhelm", model]), name: model })) });
    const part = watchPart({ ...NO_WATCH, out: [...known, verdict({ model: "D" })] }, before, "en-GB");
    expect(part.items[0]?.before).toMatch(/^Brackhelm D:/);
    expect(part.changed).toBe("new: One-way clutch on Brackhelm D.");
  });

  test("says plainly that nothing stands out", () => {
    const part = watchPart(NO_WATCH, null, "en-GB");
    expect([part.items, part.nothing.slice(0, 24)]).toEqual([[], "No part of any model fai"]);
  });
});

describe("recordsPart and scorePart", () => {
  test("count what waits for an answer, each kind with its own sentence, and the change since the last look", () => {
    const part = recordsPart({ rows: 14, conflicts: 1, names: 0, sizes: 0, words: 0 }, look({ to_answer: 9 }), "en-GB");
    expect(read(part)).toEqual([expect.stringMatching(/^\[14 rows\]\(#\/records\) could not/), expect.stringMatching(/^\[1 ticket number\]\(#\/records\) comes with two contents/)]);
    expect(part.changed).toBe("9 waited for an answer then, 15 now.");
    expect(recordsPart({ rows: 0, conflicts: 0, names: 0, sizes: 0, words: 0 }, null).nothing).toMatch(/^Nothing waits for an answer/);
  });

  test("the score carries its count, its period and the habits, or why there is none", () => {
    const score = { from: "2025-01-01", to: "2025-12-23", jobs: 412, waited: 31, habits: [{ policy: "one when one goes", waited: 58 }] };
    expect(read(scorePart(score, "", "en-GB"))).toEqual(["Had orders gone out as advised, [31 of 412 jobs](#/stock) would have waited for a part from 1 Jan 2025 to 23 Dec 2025; by “one when one goes” 58."]);
    expect(scorePart(null, "Under a year and a half.").nothing).toBe("Under a year and a half.");
  });
});

describe("what changed", () => {
  test("is told against a day by its name, or a look earlier the same day", () => {
    expect(sinceSentence({ day: "2026-11-24" }, "2026-11-30", { whole: true, changed: false }, "en-GB")).toBe("Nothing has changed since Tuesday 24 November.");
    expect(sinceSentence({ day: "2026-11-24" }, "2026-11-30", { whole: false, changed: false }, "en-GB")).toBe("What changed since Tuesday 24 November is marked.");
    expect(sinceSentence({ day: "2026-11-30" }, "2026-11-30", { whole: true, changed: true }, "en-GB")).toBe("What changed since your look earlier today is marked.");
    expect(sinceSentence(null, "2026-11-30", { whole: true, changed: false })).toMatch(/^From the next day on/);
  });

  test("names three things and counts the rest", () => {
    const things = ["a", "b", "c", "d", "e"].map((key) => ({ key, name: key }));
    expect(listChanges([], things, "gone", "en-GB")).toBe("new: a, b, c and 2 others.");
    expect([listChanges(things, things, "gone"), listChanges(null, things, "gone")]).toEqual(["", ""]);
  });
});

describe("morningFacts", () => {
  test("show a dash for days while there is no ticket", () => {
    expect(morningFacts(nothing, "en-GB").map((fact) => fact.value)).toEqual(["0", "–", "–", "0"]);
  });
});
