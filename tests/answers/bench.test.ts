import { afterAll, beforeAll, expect, test } from "vitest";
import { counterFacts, modelFacts, reelBefore, ticketKnown } from "../../src/answers/bench/bench.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, {
    tickets: [
      { ticket_no: "R-1", received_on: "2025-01-10", finished_on: "2025-01-12", maker: "Eldmere", model: "Withy 5", reel_kind: "fly", serial: "W-05", job: "full service" },
      { ticket_no: "R-2", received_on: "2026-01-09", maker: "Eldmere", model: "Withy 5", reel_kind: "fly", serial: "w 05", job: "drag" },
      { ticket_no: "R-3", received_on: "2026-01-08", maker: null, model: "Ombry 8", serial: "Mr Smith" },
    ],
    findings: [{ ticket_no: "R-1", position: "fly_click", grade: 3 }, { ticket_no: "R-1", position: "?ball bearing", action: "replaced" }],
    models: [{ maker: "Eldmere", model: "Withy 5", reel_kind: "fly", tier: "mid" }, { maker: "Ostvarg", model: "Ekholt 30", reel_kind: "spinning", tier: "premium" }],
    parts: [{ part_no: "P-1", name: "click pawl", family: "lever or pawl", on_hand: 3 }, { part_no: "P-2", size: "4x7x2.5" }],
    fits: [
      { maker: "Eldmere", model: "Withy 5", position: "fly_click", part_no: "P-1" }, { maker: "Eldmere", model: "Withy 5", position: "fly_hub_seal", part_no: "P-9" },
      { maker: "Eldmere", model: "Withy 5", position: "fly_latch", part_no: null, qty: 0 }, { maker: "Ostvarg", model: "Ekholt 30", position: "rotor", part_no: "P-2" },
    ],
  });
});
afterAll(() => engine.close());

test("the counter knows the last numbers and the shop's reels, those often seen first and those only listed too", async () => {
  const { numbers, reels } = await counterFacts(engine);
  expect(numbers).toEqual([{ ticket_no: "R-2", received_on: "2026-01-09" }, { ticket_no: "R-3", received_on: "2026-01-08" }, { ticket_no: "R-1", received_on: "2025-01-10" }]);
  expect(reels.map(({ maker, model, reel_kind, tier, tickets }) => [maker, model, reel_kind, tier, tickets])).toEqual([
    ["Eldmere", "Withy 5", "fly", "mid", 2], [null, "Ombry 8", null, null, 1], ["Ostvarg", "Ekholt 30", "spinning", "premium", 0]]);
});

test("a number is taken however it is written", async () => {
  expect(await ticketKnown(engine, "r 1")).toEqual({ ticket_no: "R-1", received_on: "2025-01-10", maker: "Eldmere", model: "Withy 5" });
  expect(await ticketKnown(engine, "R-4")).toBeNull();
});

test("a serial finds its visits with the months since, newest first; a person's name finds none", async () => {
  const before = await reelBefore(engine, "W05", "2026-02-09");
  // 31 and 395 days of 30.4375 a month.
  expect(before.map(({ ticket_no, months }) => [ticket_no, Math.round(months * 100) / 100])).toEqual([["R-2", 1.02], ["R-1", 12.98]]);
  expect(await reelBefore(engine, "Mr Smith", "2026-02-09")).toEqual([]);
});

test("of a model it is known which positions it has and has not, and which parts sit there", async () => {
  const { there, parts } = await modelFacts(engine, { maker: "Eldmere", model: "Withy 5" });
  expect([...there]).toEqual([["fly_click", true], ["fly_hub_seal", true], ["fly_latch", false]]);
  expect(parts.map(({ part_no, on_hand, positions }) => [part_no, on_hand, positions])).toEqual([["P-1", 3, ["fly_click"]], ["P-2", null, []], ["P-9", null, ["fly_hub_seal"]]]);
  expect((await modelFacts(engine, { maker: null, model: null })).there.size).toBe(0);
});
