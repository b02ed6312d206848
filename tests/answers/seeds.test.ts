import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ALL_FAILURES, failureCounts } from "../../src/answers/failures/failure-rates.ts";
import { failuresOverTime } from "../../src/answers/failures/failures-over-time.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../src/answers/failures/failure-verdicts.ts";
import { sideOf } from "../../src/answers/failures/verdict.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import type { LotRow } from "../../src/answers/lots/lot.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { fillSeed } from "./seed-shop.ts";

/** What eight invented shops of other seeds than the demo's say; each planted truth has to be found in every one of them. */
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8] as const;

interface Shop { seed: number; verdicts: readonly Verdict[]; lot: LotRow | undefined; seal: { before: number[]; after: number[] }; roller: number[] }

async function sealBeforeAndAfter(engine: Engine) {
  const periods = await failuresOverTime(engine, { ...ALL_FAILURES, reel_kind: "spinning", position: "drag_knob_seal", months: 6 });
  const shares = (after: boolean) => {
    const some = periods.filter((one) => (one.period >= "2024-07-01") === after), inspected = some.reduce((sum, one) => sum + one.inspected, 0);
    return [some.reduce((sum, one) => sum + one.replaced + one.replaced_routine, 0) / inspected, some.reduce((sum, one) => sum + one.failed, 0) / inspected];
  };
  return { before: shares(false), after: shares(true) };
}

async function shopOf(engine: Engine, seed: number): Promise<Shop> {
  await fillSeed(engine, seed);
  const roller = [];
  for (const opening of ["planned", "complaint"] as const) {
    const [all] = await failureCounts(engine, { ...ALL_FAILURES, opening, position: "line_roller_bearing" });
    roller.push(all?.rate ?? NaN);
  }
  return { seed, verdicts: await failureVerdicts(engine, ALL_VERDICTS), lot: (await lots(engine)).rows[0], seal: await sealBeforeAndAfter(engine), roller };
}

let shops: Shop[];
beforeAll(async () => {
  const engine = await openNodeEngine();
  shops = [];
  for (const seed of SEEDS) shops.push(await shopOf(engine, seed));
  await engine.close();
}, 400_000);
afterAll(() => { shops = []; });

const of = ({ verdicts }: Shop, position: string, model: string, series = false) =>
  verdicts.find((one) => one.position === position && one.model === model && one.series === series) as Verdict;
/** Seeds for which a claim does not hold. */
const failing = (holds: (shop: Shop) => boolean) => shops.filter((shop) => !holds(shop)).map(({ seed }) => seed);

describe("planted truths in eight shops", () => {
  test("PT1: the Whinbeck 40's clutch stands out, and the like-with-like range holds 2.6 to 4.0", () => {
    expect(failing((shop) => of(shop, "ar_clutch", "Whinbeck 40").word === "stands out")).toEqual([]);
    expect(failing((shop) => {
      const { low, high } = sideOf(of(shop, "ar_clutch", "Whinbeck 40"), "planned").adjusted;
      return low !== null && high !== null && low <= 2.6 && high >= 4;
    })).toEqual([]);
  });

  test("nothing else stands out but the clutch of PT1 and the seals of PT2", () => {
    const others = shops.flatMap(({ seed, verdicts }) => verdicts.filter((one) => one.word === "stands out")
      .filter((one) => !(one.position === "ar_clutch" && one.model === "Whinbeck 40") && !(one.position === "body_seal" && one.model.startsWith("Ekholt")))
      .map((one) => `${seed} ${one.position} ${one.model}`));
    expect(others.length).toBeLessThanOrEqual(1);
  });

  test("PT2: the Ekholts' body seals are seen as a series, worse than most, and pinching is named", () => {
    expect(failing((shop) => ["stands out", "worse than most, not yet sure"].includes(of(shop, "body_seal", "Ekholt", true).word))).toEqual([]);
    expect(failing((shop) => of(shop, "body_seal", "Ekholt", true).fault?.mode === "pinched")).toEqual([]);
    expect(failing((shop) => of(shop, "body_seal", "Ekholt", true).models.length === 2)).toEqual([]);
  });

  test("PT4: the bad batch is the worst lot, both ends of its months within one of May to September 2024 in seven shops of eight, and no model or technician is blamed", () => {
    expect(failing(({ lot }) => lot?.verdict === "bad batch" && lot.size_or_part === "4x7x2.5" && lot.supplier === "Far Lantern Imports")).toEqual([]);
    const month = (day: string | undefined) => Number(day?.slice(0, 4)) * 12 + Number(day?.slice(5, 7)), near = (day: string | undefined, truth: string) => Math.abs(month(day) - month(truth)) <= 1;
    expect(failing(({ lot }) => near(lot?.from, "2024-05") && near(lot?.to, "2024-09")).length).toBeLessThanOrEqual(1);
    expect(failing(({ lot }) => (lot?.began?.earliest ?? "?") <= "2024-05-01" && (lot?.ended?.latest ?? "") >= "2024-09-01")).toEqual([]);
    expect(failing((shop) => of(shop, "line_roller_bearing", "Slipdene 45").word !== "stands out")).toEqual([]);
  });

  test("PT6: the Slipdene's clutch cannot be told apart from how these reels come in", () => {
    expect(failing((shop) => of(shop, "ar_clutch", "Slipdene 45").word === "cannot tell apart from how these reels come in")).toEqual([]);
  });

  test("PT9: there are too few Jarnviks to say anything of their clutch", () => {
    expect(failing((shop) => of(shop, "ar_clutch", "Jarnvik 30-II").word === "too few")).toEqual([]);
  });

  test("PT10: the new habit shows in what is replaced, not in what failed, and no seal stands out for it", () => {
    expect(failing(({ seal }) => (seal.before[0] ?? 1) < 0.25 && (seal.after[0] ?? 0) > 0.55)).toEqual([]);
    expect(failing(({ seal }) => Math.abs((seal.after[1] ?? 1) - (seal.before[1] ?? 0)) < 0.05)).toEqual([]);
    expect(failing(({ verdicts }) => verdicts.every((one) => one.position !== "drag_knob_seal" || one.word !== "stands out"))).toEqual([]);
  });

  test("PT15: planned openings and complaints of the line roller bearing are far apart and never mixed", () => {
    expect(failing(({ roller: [planned = NaN, complaint = NaN] }) => planned < 0.24 && complaint > 0.6)).toEqual([]);
  });
});
