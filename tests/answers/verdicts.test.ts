import { describe, expect, test } from "vitest";
import { judge, verdictsOf } from "../../src/answers/failures/failure-verdicts.ts";
import type { JudgeAsk } from "../../src/answers/failures/failure-verdicts.ts";
import { seriesName } from "../../src/answers/failures/peers.ts";
import type { ConditionRow } from "../../src/answers/failures/peers.ts";
import { sideOf, VERDICT_WORDS } from "../../src/answers/failures/verdict.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import type { VerdictRecords } from "../../src/answers/failures/verdict-records.ts";
import { answerIn, askWorker } from "../../src/answers/worker-work.ts";

/** Planned openings in salt (condition 259) or fresh water (257); 512 more for complaints. */
const SALT = 259, FRESH = 257, COMPLAINT = 256;
const row = (position: string, model: string, condition: number, failed: number, inspected: number, maker: string | null = "Brackhelm"): ConditionRow =>
  ({ position, maker, model, reel_kind: "spinning", condition, season: 2024, shop: 0, inspected, failed });
const NAMES = ["a", "b", "c", "d"].map((position) => ({ position, name: `Part ${position}`, group_code: "AR", group_name: "Anti-reverse", family: position }));
const NOTHING = { mates: [], faults: [], costs: [] };

async function judged(conditions: readonly ConditionRow[], more: Partial<VerdictRecords> = {}) {
  const list = await verdictsOf({ ...NOTHING, conditions, ...more }, { names: NAMES, denominator: "coverage", drawn: "all" });
  const of = (position: string, model: string) => list.find((one) => one.position === position && one.model === model) as Verdict;
  return { list, of };
}

const MODELS = ["Alder", "Birch", "Cedar", "Elder", "Hazel"];
/** Five models that fail alike: 5 in 100 in salt, 2 in 100 in fresh water, at three parts. */
const ALIKE = ["a", "b", "c"].flatMap((position) => MODELS.flatMap((model) => [row(position, model, SALT, 5, 100), row(position, model, FRESH, 2, 100)]));

describe("verdictsOf", () => {
  test("models that fail alike are no different, and nothing stands out", async () => {
    const { list } = await judged(ALIKE);
    expect(list.length).toBe(15);
    expect([...new Set(list.map(({ word }) => word))].filter((word) => word === "stands out" || word === "worse than most, not yet sure")).toEqual([]);
    expect(list.every((one) => sideOf(one, "planned").adjusted.value === 1)).toBe(true);
  });

  test("one part of one model that fails five times as often stands out, with its reasons first", async () => {
    const bad = ALIKE.filter((one) => !(one.position === "a" && one.model === "Alder"));
    const { list, of } = await judged([...bad, row("a", "Alder", SALT, 25, 100), row("a", "Alder", FRESH, 10, 100)]);
    const verdict = of("a", "Alder"), side = sideOf(verdict, "planned");
    expect(list[0]).toBe(verdict);
    expect([verdict.word, verdict.decided_on]).toEqual(["stands out", "planned"]);
    // The others' shares are 5 and 2 in 100: seen over expected is 35 / 7, and Mantel–Haenszel the same here.
    expect(side.expected).toBeCloseTo(7, 12);
    expect(side.seen_over_expected.value).toBeCloseTo(5, 12);
    expect(side.adjusted.value).toBeCloseTo(5, 12);
    expect(verdict.reasons[0]).toMatch(/^It fails clearly more often than the others/);
    expect(verdict.reasons[1]).toBe("In planned services it had failed in 35 of 200 (18 %); on the other models in 28 of 800 (4 %).");
    expect(list.filter(({ word }) => word === "stands out").length).toBe(1);
    expect(of("a", "Birch").left_out).toEqual(["Brackhelm Alder"]);
    expect(sideOf(of("a", "Birch"), "planned").others_inspected).toBe(600);
  });

  test("a model whose parts all fail five times as often is told apart from none of its parts", async () => {
    const sound = ALIKE.filter((one) => one.model !== "Alder");
    const { of } = await judged([...sound, ...["a", "b", "c"].flatMap((position) => [row(position, "Alder", SALT, 25, 100), row(position, "Alder", FRESH, 10, 100)])]);
    expect(of("a", "Alder").word).toBe("cannot tell apart from how these reels come in");
    expect(of("a", "Alder").reasons[0]).toContain("so do all its parts");
    expect(sideOf(of("a", "Alder"), "planned").own_level).toBeGreaterThan(2.5);
  });

  test("a model that only lives in salt looks worse and is not", async () => {
    const mixed = ALIKE.filter((one) => one.model !== "Alder").map((one) => ({ ...one, failed: one.condition === SALT ? 30 : 2 }));
    const { of } = await judged([...mixed, ...["a", "b", "c"].map((position) => row(position, "Alder", SALT, 60, 200))]);
    const side = sideOf(of("a", "Alder"), "planned");
    expect(side.p_value).toBeLessThan(0.01);
    expect(side.adjusted.value).toBeCloseTo(1, 12);
    expect(of("a", "Alder").word).toBe("cannot tell apart from how these reels come in");
    expect(of("a", "Alder").reasons[0]).toContain("it looks worse, but compared like with like that does not hold");
  });

  test("complaints alone never make a model stand out, however bad", async () => {
    const complaints = ALIKE.map((one) => ({ ...one, condition: one.condition + COMPLAINT, failed: one.model === "Alder" && one.position === "a" ? 60 : one.failed }));
    const { list, of } = await judged(complaints);
    expect(list.filter(({ word }) => word === "stands out")).toEqual([]);
    expect(of("a", "Alder")).toMatchObject({ word: "worse than most, not yet sure", decided_on: "*" });
  });

  test("few inspections, or few failures to expect, are too few whatever they show", async () => {
    const { of } = await judged([...ALIKE, row("a", "Rowan", SALT, 3, 15), row("a", "Sorb", SALT, 2, 40)]);
    expect([of("a", "Rowan").word, of("a", "Sorb").word]).toEqual(["too few", "too few"]);
    expect(of("a", "Rowan").reasons[0]).toBe("Inspected 15 times: under 20 nothing can be ranked.");
  });

  test("reels that came together widen the limits and leave the ratio", async () => {
    const mates = [{ position: "a", maker: "Brackhelm", model: "Alder", opening: "planned", pairs: 1800, alike_failed: 40, failed_in_pairs: 90 }];
    const once = (await judged(ALIKE)).of("a", "Alder"), widened = (await judged(ALIKE, { mates })).of("a", "Alder");
    const width = (one: Verdict) => (sideOf(one, "planned").adjusted.high ?? 0) / (sideOf(one, "planned").adjusted.low ?? 1);
    expect(widened.widened).toBeGreaterThan(1.2);
    expect(width(widened)).toBeGreaterThan(width(once));
    expect(sideOf(widened, "planned").adjusted.value).toBe(sideOf(once, "planned").adjusted.value);
    expect(widened.reasons.some((sentence) => sentence.startsWith("Some of these reels came together"))).toBe(true);
  });

  test("sizes of one model are judged together too, and not against each other", async () => {
    const sized = ALIKE.map((one) => ({ ...one, model: one.model === "Alder" ? "Ekholt 30" : one.model === "Birch" ? "Ekholt 50" : one.model }));
    const { list } = await judged(sized);
    const series = list.filter((one) => one.series && one.position === "a"), size = list.find((one) => one.model === "Ekholt 30" && one.position === "a") as Verdict;
    expect(series.map(({ model, models }) => [model, models])).toEqual([["Ekholt", ["Ekholt 30", "Ekholt 50"]]]);
    expect(sideOf(size, "planned").others_inspected).toBe(600);
    expect(sideOf(series[0] as Verdict, "planned").inspected).toBe(400);
    expect([seriesName("Jarnvik 30-II"), seriesName("Dovekin"), seriesName("7 Up")]).toEqual(["Jarnvik", "Dovekin", ""]);
  });

  test("each season is set like with like by itself: one in which a model only came from salt water is not worse for that", async () => {
    // 2024: Alder only in salt, 10 of 50 against 80 of 400; as counted nine times (20 % against 2.2 %). 2025: twice as often in both waters.
    const others = MODELS.slice(1).flatMap((model) => [row("a", model, SALT, 20, 100), row("a", model, FRESH, 0, 800), { ...row("a", model, SALT, 20, 100), season: 2025 }, { ...row("a", model, FRESH, 8, 400), season: 2025 }]);
    const mine = [row("a", "Alder", SALT, 10, 50), { ...row("a", "Alder", SALT, 20, 50), season: 2025 }, { ...row("a", "Alder", FRESH, 4, 100), season: 2025 }];
    const { seasons, seasons_told, seasons_agree } = (await judged([...others, ...mine])).of("a", "Alder");
    expect(seasons.map(({ season, inspected, failed, others_inspected, others_failed, compared }) => [season, inspected, failed, others_inspected, others_failed, compared]))
      .toEqual([[2024, 50, 10, 3600, 80, 50], [2025, 150, 24, 2000, 112, 150]]);
    expect(seasons.map(({ adjusted }) => adjusted.value)).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
    expect([seasons_told, seasons_agree]).toEqual([2, 1]);
  });

  test("a worker gives what the same judging gives here", async () => {
    const { port1, port2 } = new MessageChannel(), of = (position: string) => ALIKE.filter((one) => one.position === position);
    port1.start();
    port2.start();
    const cells = ["a", "b"].flatMap((position) => MODELS.map((model) => {
      const own = of(position).filter((one) => one.model === model);
      return { position, maker: "Brackhelm", model, reel_kind: "spinning", cells: own.map(({ condition }) => 124 * 1024 + condition), inspected: own.map(({ inspected }) => inspected), failed: own.map(({ failed }) => failed) };
    }));
    const asked: JudgeAsk = { records: { mates: [], faults: [], costs: [], cells }, names: NAMES, denominator: "coverage" };
    answerIn(port2 as unknown as DedicatedWorkerGlobalScope, judge);
    const there = await askWorker<JudgeAsk, readonly Verdict[]>(() => Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker, asked, {});
    expect(there).toEqual((await judged(ALIKE.filter(({ position }) => position !== "c"))).list.map((one) => ({ ...one, sides: expect.anything() as unknown })));
    expect(there.length).toBe(10);
  });

  test("within a word the dearest comes first, and a bench minute is worth what the shop earns with it", async () => {
    const cost = (position: string, minutes: number, parts: number) => ({ position, maker: "Brackhelm", model: "Cedar", minutes, parts, waiting_days: 2, comebacks: 1, minute_worth: 0.5 });
    const { list, of } = await judged(ALIKE, { costs: [cost("b", 100, 40), cost("c", 10, 400)] });
    // 40 + 0.5 × (100 + 5 × 2 + 20 × 1) = 105; 400 + 0.5 × 40 = 420.
    expect([of("b", "Cedar").cost.money, of("c", "Cedar").cost.money]).toEqual([105, 420]);
    const words = list.map(({ word }) => VERDICT_WORDS.indexOf(word));
    expect(words).toEqual([...words].sort((a, b) => a - b));
    const same = list.filter(({ word }) => word === of("c", "Cedar").word);
    expect(same[0]).toBe(of("c", "Cedar"));
  });

  test("a single model has nothing to be compared with, and records without anything give nothing", async () => {
    const { of } = await judged([row("d", "Alder", SALT, 30, 100)]);
    expect(of("d", "Alder").word).toBe("too few");
    expect(sideOf(of("d", "Alder"), "planned")).toMatchObject({ others_inspected: 0, p_value: null, adjusted: { value: null, low: null, high: null } });
    expect((await judged([])).list).toEqual([]);
  });

  test("is called off with the signal's reason", async () => {
    const signal = AbortSignal.abort(new Error("not wanted"));
    const many = Array.from({ length: 60 }, (_, i) => ALIKE.map((one) => ({ ...one, position: `${one.position}${i}` }))).flat();
    await expect(verdictsOf({ ...NOTHING, conditions: many }, { names: [], denominator: "coverage", signal })).rejects.toThrow("not wanted");
  });
});
