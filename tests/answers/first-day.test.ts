import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { benchRecords } from "../../src/answers/bench-load/bench-records.ts";
import { NO_HOURS } from "../../src/answers/bench-load/bench-hours.ts";
import { benchLoadOf } from "../../src/answers/bench-load/weeks-ahead.ts";
import { askBudget } from "../../src/answers/budget/ask-budget.ts";
import { ALL_FAILURES, failureRates } from "../../src/answers/failures/failure-rates.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../src/answers/failures/failure-verdicts.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { NO_RATES } from "../../src/answers/labour/bench-rates.ts";
import { labourPage } from "../../src/answers/labour/labour-page.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import { morning } from "../../src/answers/morning/morning.ts";
import { askReplay } from "../../src/answers/replay/ask-replay.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import { allWear } from "../../src/answers/wear/ask-wear.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const AS_OF = "2024-03-04";
const PARTS = [
  { part_no: "LR-40", name: "Line roller 40", family: "other", supplier: "Oak Lane Parts", unit_cost: 6.5, on_hand: 0, lead_days: 9 },
  { part_no: "BS-1", name: "Body seal", family: "seal", supplier: "Oak Lane Parts", unit_cost: 1.2, on_hand: 4 },
];
const SUPPLIERS = [{ supplier: "Oak Lane Parts", order_cost: 5, review_days: 7 }];
const ticket = { ticket_no: "1", received_on: AS_OF, model: "Whinbeck 40", reel_kind: "spinning", job: "full service" };
const wanted = { ticket_no: "1", position: "line_roller_bearing", part_no: "LR-40", qty: 1, action: "wanted" };

/** Every state of a shop that has just begun. */
const SHOPS = {
  "nothing at all": {},
  "a parts list alone": { parts: PARTS, suppliers: SUPPLIERS },
  "one open ticket that waits for a part": { parts: PARTS, suppliers: SUPPLIERS, tickets: [ticket], findings: [wanted] },
  "one finished ticket, of today": { parts: PARTS, tickets: [{ ...ticket, finished_on: AS_OF, outcome: "returned", labour_min: 48 }], findings: [{ ...wanted, action: "replaced" }] },
  "one finished ticket without parts, findings or minutes": { tickets: [{ ...ticket, finished_on: AS_OF, outcome: "returned" }] },
};

/** Where a number that is none stands. */
function noNumbers(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isNaN(value) ? [path] : [];
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([name, inner]) => noNumbers(inner, `${path}.${name}`));
}

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

describe.each(Object.entries(SHOPS))("with %s", (_, shop) => {
  beforeEach(() => fill(engine, shop));

  test.each<[string, () => Promise<unknown>]>([
    ["the morning sheet", () => morning(engine, { as_of: AS_OF, rows_to_fix: 0 })],
    ["the stock advice", () => restock(engine, { as_of: AS_OF })],
    ["money against jobs", () => askBudget(engine, { as_of: AS_OF })],
    ["the advice's score", () => askReplay(engine, { as_of: AS_OF })],
    ["the shares", () => failureRates(engine, ALL_FAILURES)],
    ["the verdicts", () => failureVerdicts(engine, ALL_VERDICTS)],
    ["bad batches", () => lots(engine)],
    ["wear", () => allWear(engine, ALL_WEAR)],
    ["labour", () => labourPage(engine, EVERYTHING, NO_RATES)],
    ["the weeks ahead", async () => benchLoadOf(await benchRecords(engine, AS_OF, { hours: NO_HOURS, closures: [], rates: NO_RATES }))],
  ])("%s answers, with no number that is none", async (_, ask) => {
    expect(noNumbers(await ask())).toEqual([]);
  });
});

test("a part that the first job waits for is ordered, though nothing is known of its use", async () => {
  await fill(engine, SHOPS["one open ticket that waits for a part"]);
  const { lines } = await restock(engine, { as_of: AS_OF });
  expect(lines.find(({ part_no }) => part_no === "LR-40")).toMatchObject({ waiting: 1, on_hand: 0 });
  expect(lines.find(({ part_no }) => part_no === "LR-40")?.order_qty).toBeGreaterThanOrEqual(1);
  expect(lines.find(({ part_no }) => part_no === "BS-1")?.order_qty ?? 0).toBe(0);
});
