import { describe, expect, test } from "vitest";
import { verdictsOf } from "../../src/answers/failures/failure-verdicts.ts";
import { fieldOf, shopStrata } from "../../src/answers/failures/peers.ts";
import type { ConditionRow } from "../../src/answers/failures/peers.ts";
import { looksWorse } from "../../src/answers/failures/judged.ts";
import { sideOf } from "../../src/answers/failures/verdict.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import type { Field, Peer } from "../../src/answers/failures/peers.ts";

/** Planned, in salt. */
const PLANNED = 259;
const row = (shop: number, model: string, failed: number, inspected: number): ConditionRow =>
  ({ position: "a", maker: "Brackhelm", model, reel_kind: "spinning", condition: PLANNED, season: 2024, shop, inspected, failed });
const NAMES = [{ position: "a", name: "Part a", group_code: "AR", group_name: "Anti-reverse", family: "a" }];

async function verdictOf(rows: readonly ConditionRow[], model: string): Promise<Verdict> {
  const list = await verdictsOf({ conditions: rows, mates: [], faults: [], costs: [] }, { names: NAMES, denominator: "coverage", drawn: "all" });
  return list.find((one) => one.model === model) as Verdict;
}

/**
 * Simpson's paradox, worked by hand. In shop 1 both models fail 30 in 100 and most Alders come there; in shop 2 both fail 5 in
 * 100 and most Birches come there. All together Alder fails 61 of 220, Birch 16 of 220: 3.8 times as often. Within shops the
 * Mantel–Haenszel ratio is (60 × 20 / 220 + 1 × 200 / 220) / (6 × 200 / 220 + 10 × 20 / 220) = 1400 / 1400 = 1.
 */
const PARADOX = (second: number) => [row(1, "Alder", 60, 200), row(1, "Birch", 6, 20), row(second, "Alder", 1, 20), row(second, "Birch", 10, 200)];

describe("models of several shops", () => {
  test("thrown together look worse for coming to the harder shop", async () => {
    const side = sideOf(await verdictOf(PARADOX(1), "Alder"), "planned");
    expect(side.adjusted.value).toBeCloseTo((61 * 220) / (16 * 220), 10);
    expect(side.others_share).toBeCloseTo(16 / 220, 12);
    expect([looksWorse(side), side.p_value !== null && side.p_value < 1e-6]).toEqual([true, true]);
  });

  test("compared within shops are no different when they fail alike in each", async () => {
    const verdict = await verdictOf(PARADOX(2), "Alder"), side = sideOf(verdict, "planned");
    expect([side.inspected, side.failed, side.others_inspected, side.others_failed]).toEqual([220, 61, 220, 16]);
    expect(side.adjusted.value).toBeCloseTo(1, 12);
    // 200 × 6/20 + 20 × 10/200 = 61 failures to expect among 220.
    expect([side.expected, side.seen_over_expected.value]).toEqual([61, 1]);
    expect(side.others_share).toBeCloseTo(61 / 220, 12);
    expect([side.p_value, looksWorse(side), verdict.word]).toEqual([1, false, "no different"]);
  });

  test("that fail more often in every shop are found although all together they look alike", async () => {
    // Shop 1: 2 of 200 against 1 of 200; shop 2: 20 of 50 against 80 of 400. Twice as often in both.
    const rows = [row(1, "Alder", 2, 200), row(1, "Birch", 1, 200), row(2, "Alder", 20, 50), row(2, "Birch", 80, 400)];
    const side = sideOf(await verdictOf(rows, "Alder"), "planned");
    // (2 × 200 / 400 + 20 × 400 / 450) / (1 × 200 / 400 + 80 × 50 / 450) = (1 + 17.778) / (0.5 + 8.889) = 2
    expect(side.adjusted.value).toBeCloseTo(2, 10);
    expect(side.failed / side.inspected).toBeLessThan(side.others_failed / side.others_inspected);
    // 200 × 1/200 + 50 × 80/400 = 11 failures to expect, 22 seen.
    expect([side.expected, looksWorse(side)]).toEqual([11, true]);
  });

  test("say nothing where no other model came to the same shop", async () => {
    const side = sideOf(await verdictOf([row(1, "Alder", 9, 30), row(2, "Birch", 1, 30)], "Alder"), "planned");
    expect([side.adjusted.value, side.compared, side.others_share, side.p_value]).toEqual([null, 0, null, null]);
  });

  test("make one stratum a shop, and of one's own records just one", () => {
    const field = fieldOf("a", PARADOX(2)) as Field, alder = field.models.find(({ model }) => model === "Alder") as Peer;
    expect(shopStrata(field, alder, [alder], "planned")).toEqual([
      { inspected: 200, failed: 60, others_inspected: 20, others_failed: 6 }, { inspected: 20, failed: 1, others_inspected: 200, others_failed: 10 }]);
    expect(shopStrata(field, alder, [alder], "complaint")).toEqual([]);
  });
});
