import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { conditionsBehind } from "../../src/answers/failure-pages/conditions-behind.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../src/answers/failures/failure-verdicts.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const ticket = (ticket_no: string, model: string, rest: Record<string, string | number | null> = {}) => ({
  ticket_no, received_on: "2026-02-02", maker: "Brackhelm", model, reel_kind: "spinning", job: "full service", came_in: "planned", finished_on: "2026-02-03", outcome: "returned", water: "salt", rinse: "never", salt_days: 20, ...rest,
});
const broken = (ticket_no: string) => ({ ticket_no, position: "ar_clutch", action: "replaced" });
let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, {
    tickets: [
      ticket("1", "Whinbeck 40"), ticket("2", "Whinbeck 40"), ticket("3", "Whinbeck 40", { water: "fresh", salt_days: null }), ticket("4", "Dovekin 25"),
      ticket("5", "Dovekin 25", { salt_days: 60 }), ticket("6", "Teal 30", { rinse: "always" }), ticket("7", "Whinbeck 40", { water: null, rinse: null, salt_days: null }),
    ],
    findings: [broken("1"), broken("4")],
  });
});
afterAll(() => engine.close());

describe("conditionsBehind", () => {
  test("sets the model beside the others under the same water, rinsing and days, and keeps what has no like", async () => {
    const verdicts = await failureVerdicts(engine, ALL_VERDICTS), clutch = verdicts.find((one) => one.position === "ar_clutch" && one.model === "Whinbeck 40");
    if (!clutch) throw new Error("the clutch of this test's model has no verdict");
    const rows = await conditionsBehind(engine, clutch, ALL_VERDICTS), planned = { opening: "planned", sealed: null };
    // Tickets 1 and 2 have ticket 4 as their like (salt, never rinsed, 15 to 39 days); ticket 5 has 60 days and ticket 6 is always rinsed.
    expect(rows[0]).toEqual({ ...planned, water: "salt", rinse: "never", days: "15 to 39", inspected: 2, failed: 1, others_inspected: 1, others_failed: 1 });
    expect(rows).toHaveLength(3);
    expect(rows).toContainEqual({ ...planned, water: "fresh", rinse: "never", days: null, inspected: 1, failed: 0, others_inspected: 0, others_failed: 0 });
    expect(rows).toContainEqual({ ...planned, water: null, rinse: null, days: null, inspected: 1, failed: 0, others_inspected: 0, others_failed: 0 });
  });

  test("adds up to the counts of the verdict it stands behind", async () => {
    for (const verdict of (await failureVerdicts(engine, ALL_VERDICTS)).filter(({ series }) => !series)) {
      const rows = await conditionsBehind(engine, verdict, ALL_VERDICTS), all = verdict.sides.find(({ opening }) => opening === "*");
      expect([rows.reduce((sum, row) => sum + row.inspected, 0), rows.reduce((sum, row) => sum + row.failed, 0)]).toEqual([all?.inspected, all?.failed]);
    }
  });
});
