import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { behind, type NumberAsked } from "../../src/answers/behind/behind.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const ANY: NumberAsked = { ...ALL_WEAR, of: "reels", position: null, part: null, job: null, opening: "*", denominator: "coverage" };
const ticket = (ticket_no: string, received_on: string, more = {}) => ({
  ticket_no, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service", came_in: "planned", labour_min: 60, ...more,
});

/** Four finished full services of one reel and another, and a fly reel that waits. */
const SHOP = {
  tickets: [
    ticket("T1", "2024-01-10", { serial: "S1", salt_days: 20, water: "salt" }),
    ticket("T2", "2024-03-10", { serial: "S1", salt_days: 30, water: "salt" }),
    ticket("T3", "2024-06-01", { water: "fresh", labour_min: 1.5, labour_charge: 50 }),
    ticket("T4", "2024-07-01", { came_in: "complaint", labour_charge: 40, warranty: true, job: "line roller" }),
    ticket("T5", "2024-08-01", { reel_kind: "fly", model: "Withy 5", finished_on: null, outcome: "waiting", labour_min: null }),
  ],
  findings: [
    { ticket_no: "T1", position: "ar_clutch", action: "replaced", part_no: "ARC", qty: 2 },
    { ticket_no: "T1", position: "ar_clutch", action: "cleaned", grade: 1 },
    { ticket_no: "T2", position: "ar_clutch", grade: 4, mode: "worn" },
    { ticket_no: "T2", position: "ar_clutch", action: "wanted", part_no: "ARC" },
    { ticket_no: "T4", position: "ar_clutch", grade: 4 }, { ticket_no: "T4", position: "drag_knob_seal", grade: 4 },
  ],
};

let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, SHOP);
});
afterAll(() => engine.close());

const found = async (asked: Partial<NumberAsked>) => {
  const { n, x, things } = await behind(engine, { ...ANY, ...asked });
  return { n, x, list: things.map(({ ticket_no, counted, hit, sources }) => [ticket_no, counted, hit, sources.map(({ source_file, source_line }) => `${source_file} ${source_line}`).join(" ")]) };
};

describe("the rows behind a number", () => {
  test("of failures are the looks at the part, those without a word too, and those that do not count", async () => {
    // A full service opens the clutch: T1 failed, T2 failed, T3 nothing written. A line roller job only sees it: T4 counts as it was written.
    expect(await found({ of: "inspections", position: "ar_clutch" })).toEqual({ n: 4, x: 3, list: [
      ["T4", true, true, "tickets.csv 5 findings.csv 6"], ["T3", true, false, "tickets.csv 4"],
      ["T2", true, true, "tickets.csv 3 findings.csv 4 findings.csv 5"], ["T1", true, true, "tickets.csv 2 findings.csv 2 findings.csv 3"],
    ] });
    // Nobody opens a drag for a line roller: what T4 says of its seal stands aside.
    expect((await found({ of: "inspections", position: "drag_knob_seal" }))).toEqual({ n: 3, x: 0, list: [
      ["T4", false, false, "tickets.csv 5 findings.csv 7"], ["T3", true, false, "tickets.csv 4"], ["T2", true, false, "tickets.csv 3"], ["T1", true, false, "tickets.csv 2"],
    ] });
  });
  test("of failures follow the water, the days, the opening and the way of counting of the screen", async () => {
    const counts = async (more: Partial<NumberAsked>) => { const { n, x } = await found({ of: "inspections", position: "ar_clutch", ...more }); return [n, x]; };
    expect(await counts({ water: "fresh" })).toEqual([1, 0]);
    expect(await counts({ from: "2024-02-01", to: "2024-05-31" })).toEqual([1, 1]);
    expect(await counts({ opening: "complaint" })).toEqual([1, 1]);
    expect(await counts({ denominator: "strict" })).toEqual([3, 3]);
    expect(await counts({ reel_kind: "fly" })).toEqual([0, 0]);
  });
  test("of a part's use are its pieces, a row without a number of pieces as one", async () => {
    expect(await found({ of: "pieces", part: "ARC" })).toEqual({ n: 3, x: 1, list: [["T2", true, true, "findings.csv 5"], ["T1", true, false, "findings.csv 2"]] });
    expect((await found({ of: "pieces", part: "ARC", to: "2024-01-31" })).n).toBe(2);
  });
  test("of times are the finished jobs, with hours typed as minutes set aside and warranty jobs not among the paid", async () => {
    expect(await found({ of: "jobs", job: "full service, spinning" })).toEqual({ n: 2, x: 0, list: [["T3", false, false, "tickets.csv 4"], ["T2", true, false, "tickets.csv 3"], ["T1", true, false, "tickets.csv 2"]] });
    expect(await found({ of: "jobs", job: "line roller, spinning" })).toEqual({ n: 1, x: 0, list: [["T4", true, false, "tickets.csv 5"]] });
  });
  test("of a week are the reels that came in in its days, both ends counted", async () => {
    expect(await found({ of: "reels", from: "2024-06-01", to: "2024-08-01" })).toEqual({ n: 3, x: 2, list: [["T5", true, false, "tickets.csv 6"], ["T4", true, true, "tickets.csv 5"], ["T3", true, true, "tickets.csv 4"]] });
  });
  test("of wear are the parts with every visit that followed them", async () => {
    // The clutch of S1 was replaced on T1 after 20 days, and the new one had failed on T2 after 30 more.
    const { n, x, list } = await found({ of: "parts", position: "ar_clutch" });
    expect([n, x, list.filter(([ticket_no]) => ticket_no === "T1" || ticket_no === "T2")]).toEqual([2, 2, [
      ["T2", true, true, "tickets.csv 3 findings.csv 4 findings.csv 5"], ["T1", true, true, "tickets.csv 2 findings.csv 2 findings.csv 3"]]]);
  });
  test("of comebacks are the failures put right, with the visit at which the part had failed again", async () => {
    // T1 put the clutch right, S1 came back 60 days later; T2 was 144 days before the last ticket.
    expect(await found({ of: "comebacks", position: "ar_clutch" })).toEqual({ n: 2, x: 1, list: [
      ["T2", true, false, "tickets.csv 3 findings.csv 4 findings.csv 5"], ["T1", true, true, "tickets.csv 2 findings.csv 2 findings.csv 3 tickets.csv 3 findings.csv 4 findings.csv 5"]] });
  });
});
