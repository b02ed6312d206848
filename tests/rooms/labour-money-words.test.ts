import { describe, expect, test } from "vitest";
import type { Earning, Earnings } from "../../src/answers/labour/earnings.ts";
import { driftSentence, driverSentences, longerBy, technicianSentence, yearSentences } from "../../src/rooms/labour/longer-words.ts";
import { insideName, moneySentence, quoteSentence, shortReels, unpaidSentences } from "../../src/rooms/labour/money-words.ts";
import { rateOf } from "../../src/rooms/labour/rate-of.ts";

const plain = (text: string | undefined) => text?.replaceAll("\u00a0", " ");
const earning = (rest: Partial<Earning> = {}): Earning => ({
  job: "full service", reel_kind: "spinning", tier: "*", maker: "*", model: "*", jobs: 40, hours: 50, charged: 2000, per_hour: 40, per_hour_low: 38, per_hour_high: 42,
  usual_charge: 50, fair_charge: 67, gap_per_year: -350, standing: "under your price", ...rest,
});
const earned = (rows: readonly Earning[]): Earnings => ({ rows, warranty: { jobs: 2, hours: 3 }, uncharged: { jobs: 0, hours: 0 }, all: earning({ job: "*", reel_kind: "*" }) });
const RATES = { hour_price: 54, hour_cost: 31, beside_min: 17 };

describe("words about money", () => {
  test("say what an hour brings in, beside what price, and what falls furthest short", () => {
    expect(plain(moneySentence(earned([earning()]), RATES, "cu"))).toBe("An hour at the bench brought in 40 cu over 40 paid jobs, parts not counted; your price is 54 cu. 1 job falls clearly short of it. Furthest short in a year: full service, spinning, 350 cu under what its hours would cost at your price.");
    expect(plain(moneySentence(earned([earning({ standing: "no rate written" })]), { ...RATES, hour_price: null }, "cu"))).toContain("Write your hour's price above");
    expect(moneySentence({ ...earned([]), all: null }, RATES, "cu")).toContain("nothing can be said about money");
  });
  test("name the single reels whose charge falls short, never one that is about right or over", () => {
    const rows = [earning(), earning({ maker: "Uffenby", model: "Jarnvik 30-II", usual_charge: 78, fair_charge: 108, jobs: 29 }), earning({ maker: "Eldmere", model: "Withy 5", usual_charge: 40, fair_charge: 42, standing: "about your price" }), earning({ maker: "Eldmere", model: "Ombry 8", usual_charge: 80, fair_charge: 42, standing: "over your price" })];
    expect(shortReels(earned(rows), "cu").map(plain)).toEqual(["Uffenby Jarnvik 30-II, full service: charged 78 cu, its time comes to 108 cu at your price (29 paid jobs)."]);
  });
  test("count what was unpaid, and name tiers and models", () => {
    expect(unpaidSentences(earned([]))).toEqual(["Under warranty, unpaid and not in these figures: 2 jobs, 3 hours."]);
    expect([earning({ tier: "budget" }), earning({ tier: null }), earning({ maker: "Uffenby", model: "Jarnvik 30-II" })].map(insideName)).toEqual(["all budget reels", "tier not written", "Uffenby Jarnvik 30-II"]);
  });
  test("give a quote in one sentence, and none where there is no time", () => {
    const found = { jobs: 29, from: "this model", usual_min: 112, four_in_five_min: 147, nine_in_ten_min: null, usual_charge: 78, price_usual: 101, price_four_in_five: 132, note: "" } as const;
    expect(plain(quoteSentence(found, "cu"))).toBe("Usually 1 h 52 at the bench; 4 in 5 are done within 2 h 27 (29 jobs, this model). Usually charged: 78 cu.");
    expect(quoteSentence({ ...found, usual_min: null, jobs: 1 }, "cu")).toBe("Done 1 time: too few to name a time.");
  });
});

describe("rateOf", () => {
  test("refuses what is no amount with a sentence, and takes nothing for nothing", () => {
    expect([rateOf("54"), rateOf(" 54,50 "), rateOf("")]).toEqual([54, 54.5, null]);
    for (const wrong of ["-5", "fifty", "1e9", "5.555", "=1+1"]) expect(() => rateOf(wrong)).toThrow(/is not an amount/);
  });
});

describe("words about longer jobs", () => {
  test("say how much longer or shorter with the range, and keep quiet where there is none", () => {
    expect(longerBy({ ratio: 1.06, low: 1.05, high: 1.07 }, "en-GB")).toBe("6 % longer (likely 5 to 7 % longer)");
    expect(longerBy({ ratio: 0.9, low: 0.85, high: 0.95 }, "en-GB")).toBe("10 % shorter (likely 5 to 15 % shorter)");
    expect(longerBy({ ratio: 0.97, low: 0.93, high: 1.01 }, "en-GB")).toBe("no difference to be seen (likely 7 % shorter to 1 % longer)");
    expect(longerBy({})).toBe("");
    expect(driverSentences({ reason: null, jobs: 9, beside: null, technicians: [], years: [], drivers: [{ name: "a stuck screw", jobs: 4 }] }, "en-GB")).toEqual(["A stuck or stripped screw: too few jobs to say, 4 jobs."]);
  });
  const year = (technician: string, at: number, ratio: number) => ({ technician, year: at, jobs: 300, ratio, low: ratio - 0.04, high: ratio + 0.04, unadjusted: 1.2 });
  test("tell learning from a first and a last year whose ranges do not touch, and rank nobody", () => {
    const longer = { reason: null, jobs: 900, drivers: [], years: [], beside: "T1", technicians: [year("OWN", 2023, 1.06), year("OWN", 2025, 1.05), year("T2", 2023, 1.35), year("T2", 2025, 1.15)] };
    expect(technicianSentence(longer, "en-GB")).toBe("Beside T1, who did most jobs, and on the same jobs and models: OWN took 1.06 times as long in 2023 and 1.05 times as long in 2025. T2 took 1.35 times as long in 2023 and 1.15 times as long in 2025: learning shows.");
    expect(technicianSentence({ ...longer, technicians: [], beside: null })).toContain("Too few jobs have a technician's initials");
  });
  test("tell a change over the years, and that none is to be seen", () => {
    const drift = { job: "bail", reel_kind: "spinning", n: 60, halves: [], per_year: { ratio: 1.1, low: 1.05, high: 1.16 }, verdict: "longer" as const };
    expect(driftSentence(drift, "en-GB")).toBe("Bail, spinning: takes longer than it did; likely 5 to 16 % longer with each year, the same models by the same hands (60 jobs).");
    expect(driftSentence({ ...drift, per_year: null, verdict: "too few jobs", n: 8 }, "en-GB")).toBe("Bail, spinning: too few jobs to say (8 jobs).");
    expect(yearSentences([{ year: 2024, jobs: 8 }])).toEqual([]);
  });
});
