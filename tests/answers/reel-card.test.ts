import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { causesOf, type UsualCause } from "../../src/answers/card/causes.ts";
import { likelyCauses, partChances, type PartChance } from "../../src/answers/card/chances.ts";
import { complaintOf } from "../../src/answers/card/complaint-of.ts";
import { partsToPull } from "../../src/answers/card/parts-to-pull.ts";
import { reelCard, type ReelOnBench } from "../../src/answers/card/reel-card.ts";
import type { Engine } from "../../src/db/engine.ts";
import { benchNotes, cautions, complaints, complaintShares, positions } from "../../src/records/vocabulary.ts";
import { line } from "../rooms/rows.ts";
import { openDemo } from "./demo-shop.ts";

const USUAL: readonly UsualCause[] = [
  { code: "C01", reel_kind: "spinning", cause: "ar_clutch", positions: ["ar_clutch"], share: 72 },
  { code: "C01", reel_kind: "spinning", cause: "ar_selector", positions: ["ar_selector"], share: 8 },
  { code: "C01", reel_kind: "spinning", cause: "lubricant", positions: [], share: 20 },
];
const SAID = "slips back";
const faults = (rows: readonly (readonly [string, number])[]) => rows.map(([failed, tickets]) => ({ complaint: SAID, failed, tickets }));
const chance = (position: string, at: number, usual: number | null): PartChance =>
  ({ position, position_name: position, group_code: null, group_name: null, chance: at, low: at / 2, high: at * 1.5, n: 100, failed: 10, from: "this model", usual });
const REEL: ReelOnBench = { reel_kind: "spinning", maker: "Brackhelm", model: "Whinbeck 40", water: "salt", rinse: "never", days: null, months: null, complaint: null };

describe("complaintOf", () => {
  test("takes the complaint named first, whatever the case and the dots, and none where none is named", () => {
    expect(complaintOf("Bail won't close. Also line twist", complaints)).toBe("C12");
    expect(complaintOf("line twist; BAIL WONT CLOSE", complaints)).toBe("C11");
    expect(complaintOf("please engrave my name", complaints)).toBeNull();
  });
  test("knows every spelling of the trade's list as itself or as one that begins there and is longer", () => {
    const wrong = complaints.flatMap(({ code, spellings }) => spellings.filter((spelling) => complaintOf(spelling, complaints) !== code).map((spelling) => `${code} ${spelling}`));
    // "slips" words that two complaints share are settled by the longer; "pulsing drag" and the like are their own.
    expect(wrong).toEqual([]);
  });
});

describe("causesOf", () => {
  const of = (own: readonly (readonly [string, number])[]) => causesOf("C01", "spinning", USUAL, faults(own), complaints);
  test("without own tickets is common practice as it stands, with a range as wide as ten tickets deserve", () => {
    const found = of([]);
    expect(found).toMatchObject({ own_tickets: 0, leans_on: "common practice" });
    expect(found?.causes.map(({ cause, chance: at }) => [cause, Number(at.toFixed(4))])).toEqual([["ar_clutch", 0.72], ["lubricant", 0.2], ["ar_selector", 0.08]]);
    // Beta(7.2, 2.8): mean 0.72, sd √(0.72 × 0.28 / 11) = 0.135, so the range is near 0.42 to 0.94.
    expect(found?.causes[0]?.low).toBeCloseTo(0.43, 1);
    expect(found?.causes[0]?.high).toBeCloseTo(0.94, 1);
  });
  test("adds own tickets to the ten by hand: 6 of 10 with the clutch make 13.2 of 20", () => {
    const found = of([["ar_clutch", 6], ["", 3], ["bail_spring", 1]]);
    expect(found).toMatchObject({ own_tickets: 10, leans_on: "common practice" });
    const at = (cause: string) => found?.causes.find((one) => one.cause === cause);
    expect(at("ar_clutch")).toMatchObject({ own: 6, chance: 13.2 / 20 });
    expect(at("nothing found wrong")).toMatchObject({ own: 3, chance: 3 / 20, usual: null });
    expect(at("something else")).toMatchObject({ own: 1, chance: 1 / 20 });
    expect(found?.causes.reduce((sum, one) => sum + one.chance, 0)).toBeCloseTo(1, 12);
  });
  test("says from the eleventh ticket on that it leans on the shop's own jobs, and shares a ticket with two faults", () => {
    const found = of([["ar_clutch;ar_selector", 11]]);
    expect(found?.leans_on).toBe("this shop's own jobs");
    expect(found?.causes.map(({ own }) => own).sort()).toEqual([0, 5.5, 5.5]);
  });
  test("knows nothing of a complaint that neither the list nor the shop has", () => expect(causesOf("C07", "spinning", USUAL, [], complaints)).toBeNull());
});

describe("likelyCauses", () => {
  test("weighs a cause by how much likelier its part has failed here than usual, and adds up to one", () => {
    const found = causesOf("C01", "spinning", USUAL, [], complaints);
    if (!found) throw new Error("no causes");
    const causes = likelyCauses(found, [chance("ar_clutch", 0.1, 0.05), chance("ar_selector", 0.02, 0.02)]);
    // 0.72 × 2, 0.08 × 1 and 0.20 × 1 are 1.44, 0.08 and 0.20 of 1.72.
    expect(causes.map(({ cause, here }) => [cause, Number(here.toFixed(6))])).toEqual([["ar_clutch", 0.837209], ["lubricant", 0.116279], ["ar_selector", 0.046512]]);
  });
  test("never turns a list over by more than four times, and counts a part of which nothing is known as usual", () => {
    const found = causesOf("C01", "spinning", USUAL, [], complaints);
    if (!found) throw new Error("no causes");
    expect(likelyCauses(found, [chance("ar_clutch", 0.9, 0.01), chance("ar_selector", 0.5, null)]).map(({ cause, times_as_likely }) => [cause, times_as_likely]))
      .toEqual([["ar_clutch", 4], ["lubricant", 1], ["ar_selector", 1]]);
  });
});

describe("partsToPull", () => {
  const lines = [line({ interchange: "4x7x2.5", part_no: "NEW", part_nos: ["OLD", "NEW"], on_hand: 3, waiting: 1 }), line({ interchange: "MIX", part_no: "MIX", part_nos: ["MIX"], on_hand: 50, status: "refused" })];
  test("takes two numbers of one thing at one place for alternatives, and adds up places", () => {
    const fitted = [{ position: "roller", part_no: "OLD", qty: 2 }, { position: "roller", part_no: "NEW", qty: 2 }, { position: "knob", part_no: "OLD", qty: 1 }];
    const { parts, unwritten } = partsToPull(["roller", "knob", "bail"], fitted, lines);
    expect(parts.map(({ part_no, qty, positions: at, shelf }) => [part_no, qty, at, shelf])).toEqual([["NEW", 3, ["roller", "knob"], "not enough"]]);
    expect(unwritten).toEqual(["bail"]);
  });
  test("trusts no count of a drawer that holds several kinds, and none that nobody wrote", () => {
    const { parts } = partsToPull(["a", "b"], [{ position: "a", part_no: "MIX", qty: 1 }, { position: "b", part_no: "UNKNOWN", qty: 1 }], lines);
    expect(parts.map(({ shelf, on_hand }) => [shelf, on_hand])).toEqual([["look into the drawer", 50], ["not known", null]]);
  });
});

describe("the trade's lists for the card", () => {
  test("every cause names positions that exist, and every bench note groups and a mark of its source", () => {
    const known = new Set(positions.map(({ position }) => position)), groups = new Set(positions.map(({ group }) => group));
    expect(complaintShares.flatMap((one) => one.positions).filter((position) => !known.has(position))).toEqual([]);
    expect(benchNotes.flatMap((note) => note.groups).filter((group) => !groups.has(group))).toEqual([]);
    expect(benchNotes.filter(({ source, text }) => source === "" || text === "")).toEqual([]);
    expect(cautions.filter(({ source, text }) => source === "" || text === "")).toEqual([]);
  });
});

describe("the reel card of the demo shop", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openDemo(); });
  afterAll(() => engine.close());
  const card = (rest: Partial<ReelOnBench>) => reelCard(engine, { ...REEL, ...rest }, { usual: complaintShares, complaints }, []);

  test("an unrinsed Whinbeck that slips back is its clutch, by 32 own jobs and by the model's own record (planted: PT1)", async () => {
    const { causes, look_at } = await card({ complaint: "C01", days: 40 });
    expect(causes?.leans_on).toBe("this shop's own jobs");
    expect(causes?.causes[0]).toMatchObject({ cause: "ar_clutch", positions: ["ar_clutch"] });
    expect(causes?.causes[0]?.times_as_likely).toBeGreaterThan(2);
    expect(look_at[0]).toBe("ar_clutch");
  });
  test("forty unrinsed salt days make the line roller bearing likelier to have failed than ten", async () => {
    const of = async (days: number) => (await card({ days })).chances.find(({ position }) => position === "line_roller_bearing");
    const [short, long] = [await of(10), await of(40)];
    expect([short?.from, long?.from]).toEqual(["salt days", "salt days"]);
    expect(long?.chance).toBeGreaterThan((short?.chance ?? 1) * 1.5);
    expect(long?.low).toBeGreaterThan(short?.low ?? 1);
  });
  test("with nothing known but the kind it leans on all such reels, and names every chance between 0 and 1 with its count", async () => {
    const { chances, causes } = await card({ maker: null, model: null, water: null, rinse: null });
    expect(causes).toBeNull();
    expect(chances.length).toBeGreaterThan(15);
    expect(chances.every(({ from, low, high, chance: at, n, failed }) => from === "all reels of the kind" && low <= at && at <= high && low >= 0 && high <= 1 && failed <= n)).toBe(true);
  });
  test("beyond the exposures seen it falls back on counts, and refuses days below nought", async () => {
    expect((await card({ days: 5000 })).chances.every(({ from }) => from !== "salt days")).toBe(true);
    await expect(card({ days: -1 })).rejects.toThrow(new RangeError("reelCard: days must be 0 or more, got -1"));
  });
});

describe("partChances", () => {
  test("gives no chance of a part that nobody has enough of", () => expect(partChances([], [], { maker: null, model: null })).toEqual([]));
});
