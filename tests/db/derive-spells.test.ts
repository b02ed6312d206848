import { afterAll, beforeAll, expect, test } from "vitest";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import { fill, openShop } from "../answers/shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

const ticket = (ticket_no: string, received_on: string, salt_days: number | null, more: Record<string, SqlValue> = {}) => ({
  ticket_no, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "line roller", serial: "W-1", water: "salt",
  use_days: salt_days, came_in: "planned", salt_days, ...more,
});
const finding = (ticket_no: string, action: string, grade: number | null = null, more: Record<string, SqlValue> = {}) => ({ ticket_no, position: "line_roller_bearing", action, grade, ...more });
type Spell = { part: number; first_sight: boolean; sights: number; failed: boolean; salt_good: number | null; salt_failed: number | null };

async function spells(tickets: ReturnType<typeof ticket>[], findings: ReturnType<typeof finding>[]): Promise<Spell[]> {
  await fill(engine, { tickets, findings });
  await followParts(engine);
  return engine.rows<Spell>(`select part, first_sight, sights, failed, salt_good, salt_failed from spells join places using (place) where position = 'line_roller_bearing' order by abs(reel), part, salt_good nulls last`);
}

test("a part is followed from its fitting: days add up over visits, and it failed between the last good sight and the next", async () => {
  // Good at 20, failed and replaced 30 days later; the new one is good after 15 more and gone by 40.
  const found = await spells(
    [ticket("1", "2024-01-10", 20), ticket("2", "2024-06-10", 30), ticket("3", "2024-09-10", 15), ticket("4", "2025-02-10", 25)],
    [finding("1", "cleaned", 1), finding("2", "replaced", 3, { routine: false }), finding("4", "replaced", 4, { routine: false })],
  );
  expect(found).toEqual([
    { part: 0, first_sight: true, sights: 2, failed: true, salt_good: 20, salt_failed: 50 },
    { part: 1, first_sight: false, sights: 2, failed: true, salt_good: 15, salt_failed: 40 },
  ]);
});

test("a part replaced as routine was good to the end, and its successor starts anew", async () => {
  const found = await spells([ticket("1", "2024-01-10", 20), ticket("2", "2024-06-10", 30)], [finding("1", "replaced", 2, { routine: true }), finding("2", "cleaned", 1)]);
  expect(found.map(({ part, failed, salt_good, salt_failed }) => [part, failed, salt_good, salt_failed])).toEqual([[0, false, 20, null], [1, false, 30, null]]);
});

test("days nobody wrote down break the sum on that clock only, and what was known before stays known", async () => {
  const found = await spells(
    [ticket("1", "2024-01-10", 20), ticket("2", "2024-06-10", null, { use_days: 40 }), ticket("3", "2025-01-10", 10)], [finding("3", "replaced", 4, { routine: false })]);
  expect(found).toEqual([{ part: 0, first_sight: true, sights: 3, failed: true, salt_good: 20, salt_failed: null }]);
  const [used] = await engine.rows("select use_good, use_failed, round(months_failed, 1)::double as months_failed from spells join places using (place) where position = 'line_roller_bearing' order by part");
  expect(used).toEqual({ use_good: 60, use_failed: 70, months_failed: null });
});

test("a part found failed but not replaced has no further life until it is renewed", async () => {
  const found = await spells(
    [ticket("1", "2024-01-10", 20), ticket("2", "2024-06-10", 30), ticket("3", "2024-12-10", 10), ticket("4", "2025-03-10", 5)],
    [finding("1", "wanted", 3), finding("2", "cleaned", 4), finding("3", "replaced", 4, { routine: false }), finding("4", "cleaned", 1)]);
  expect(found.map(({ part, failed, salt_good, salt_failed }) => [part, failed, salt_good, salt_failed])).toEqual([[0, true, null, 20], [3, false, 5, null]]);
});

test("without a serial every inspection stands alone", async () => {
  const found = await spells([ticket("1", "2024-01-10", 20, { serial: null }), ticket("2", "2024-06-10", 30, { serial: null })], [finding("2", "replaced", 3, { routine: false })]);
  expect(found.map(({ sights, salt_good, salt_failed }) => [sights, salt_good, salt_failed])).toEqual([[1, 20, null], [1, null, 30]]);
});

test("months that are far fewer than lie between two visits mean a service elsewhere, which breaks every clock", async () => {
  const found = await spells([ticket("1", "2023-01-10", 20), ticket("2", "2025-01-10", 30, { months_since_service: 6 })], [finding("1", "cleaned", 1), finding("2", "replaced", 4, { routine: false })]);
  expect(found).toEqual([{ part: 0, first_sight: true, sights: 2, failed: true, salt_good: 20, salt_failed: null }]);
});
