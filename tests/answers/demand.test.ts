import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { demandByGroup, demandByMonth } from "../../src/answers/demand/demand-by-group.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const ticket = (ticket_no: string, received_on: string, model: string) =>
  ({ ticket_no, received_on, finished_on: received_on, model, reel_kind: "spinning", job: "full service", outcome: "returned" });
const part = (part_no: string) => ({ part_no, family: "ball bearing", size: "7x11x3", name: "sealed" });

const SHOP = {
  tickets: [ticket("1", "2024-01-01", "M1"), ticket("2", "2024-03-10", "M2"), ticket("3", "2024-03-30", "M1")],
  parts: [part("B-1"), part("B-2"), { part_no: "S-1", name: "Shaft" }],
  findings: [
    { ticket_no: "1", position: "line_roller_bearing", part_no: "B-1", qty: 3, action: "replaced", routine: true },
    { ticket_no: "2", position: "line_roller_bearing", part_no: "B-2", qty: 1, action: "replaced" },
    { ticket_no: "3", position: "line_roller_bearing", part_no: "B-2", qty: 2, action: "wanted" },
    { ticket_no: "3", position: "ar_clutch", part_no: "S-1", action: "replaced" },
    { ticket_no: "3", position: "drag_knob_seal", action: "replaced", qty: 4 },
    { ticket_no: "3", position: "drag_knob_seal", action: "cleaned" },
  ],
};

let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, SHOP);
});
afterAll(() => engine.close());

describe("demandByGroup", () => {
  test("adds up all numbers of the same part, and says which model takes most", async () => {
    const { groups, months } = await demandByGroup(engine, EVERYTHING);
    // 1 January to 30 March 2024: 90 days.
    expect(months).toBeCloseTo(90 / 30.4375, 12);
    expect(groups[0]).toEqual({
      interchange: "bearing 7x11x3 sealed", part_nos: ["B-1", "B-2"], pieces: 6, replaced: 4, wanted: 2, routine: 3, tickets: 3, models: 2,
      top_model: "M1", top_model_share: 5 / 6, per_month: 6 / (90 / 30.4375), first_on: "2024-01-01", last_on: "2024-03-30",
    });
    expect(groups[1]).toMatchObject({ interchange: "S-1", pieces: 1 });
  });

  test("counts what has no part number apart, so that nothing is lost", async () => {
    const { unmapped, unmapped_pieces } = await demandByGroup(engine, EVERYTHING);
    expect([unmapped, unmapped_pieces]).toEqual([[{ position: "drag_knob_seal", name: "Drag knob seal", pieces: 4, tickets: 1 }], 4]);
  });

  test("takes the group that the model's fits agree on where no number is written, and none where they do not", async () => {
    const fit = (model: string, position: string, part_no: string) => ({ model, position, part_no });
    await fill(engine, {
      ...SHOP,
      fits: [
        fit("M1", "drag_knob_seal", "B-1"), fit("M1", "drag_knob_seal", "B-2"), fit("M1", "ar_clutch", "B-1"), fit("M1", "ar_clutch", "S-1"),
      ],
      findings: [
        { ticket_no: "3", position: "drag_knob_seal", action: "replaced", qty: 4 }, { ticket_no: "3", position: "ar_clutch", action: "replaced", qty: 2 },
      ],
    });
    const { groups, unmapped_pieces } = await demandByGroup(engine, EVERYTHING);
    expect([groups.map((row) => [row.interchange, row.pieces, row.part_nos]), unmapped_pieces]).toEqual([[["bearing 7x11x3 sealed", 4, []]], 2]);
    await fill(engine, SHOP);
  });

  test("keeps to the filter's days and model", async () => {
    const { groups, from, to } = await demandByGroup(engine, { ...EVERYTHING, model: "M1", from: "2024-02-01", to: "2025-01-01" });
    expect([from, to, groups.map((row) => [row.interchange, row.pieces])]).toEqual(["2024-02-01", "2024-03-30", [["bearing 7x11x3 sealed", 2], ["S-1", 1]]]);
  });
});

describe("demandByMonth", () => {
  test("has every month of the records, the empty ones too", async () =>
    expect(await demandByMonth(engine, { ...EVERYTHING, interchange: "bearing 7x11x3 sealed" })).toEqual([
      { interchange: "bearing 7x11x3 sealed", month: "2024-01-01", replaced: 3, wanted: 0 },
      { interchange: "bearing 7x11x3 sealed", month: "2024-02-01", replaced: 0, wanted: 0 },
      { interchange: "bearing 7x11x3 sealed", month: "2024-03-01", replaced: 1, wanted: 2 },
    ]));

  test("gives all groups when none is named", async () =>
    expect((await demandByMonth(engine, { ...EVERYTHING, interchange: null })).length).toBe(6));
});
