import { describe, expect, test } from "vitest";
import type { LikelyCause, PartChance } from "../../src/answers/card/chances.ts";
import type { PartToPull } from "../../src/answers/card/parts-to-pull.ts";
import type { ReelCard, ReelOnBench } from "../../src/answers/card/reel-card.ts";
import { causeColumns, causeName, causesSentence, CHANCE_COLUMNS, drawnChances, notesOf, pullColumns, reelLine, toldCauses, toldChances, unwrittenSentence } from "../../src/rooms/card/card-words.ts";
import { complaintMeant, notWhole, reelOnBench, wholeOf } from "../../src/rooms/card/card-filters.ts";
import { cautionsOn } from "../../src/records/cautions.ts";
import { benchNotes, complaints } from "../../src/records/vocabulary.ts";
import { cellText } from "../../src/ui/table-rows.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const REEL: ReelOnBench = { reel_kind: "spinning", maker: "Brackhelm", model: "Whinbeck 40", water: "salt", rinse: null, days: 1, months: 14, complaint: "C01" };
const cause = (rest: Partial<LikelyCause> = {}): LikelyCause => ({ cause: "ar_clutch", positions: ["ar_clutch"], chance: 0.8, low: 0.7, high: 0.9, usual: 0.72, own: 5.5, times_as_likely: 1, here: 0.8, ...rest });
const part = (rest: Partial<PartChance> = {}): PartChance => ({ position: "ar_clutch", position_name: "Anti-reverse clutch", group_code: "AR", group_name: "Anti-reverse", chance: 0.3, low: 0.2, high: 0.4, n: 40, failed: 12, from: "this model", usual: 0.1, ...rest });
const card = (rest: Partial<ReelCard> = {}): ReelCard => ({ reel: REEL, causes: { code: "C01", own_tickets: 12, leans_on: "this shop's own jobs", causes: [cause()] }, chances: [part(), part({ position: "bail_spring", position_name: "Bail spring", n: 4, failed: 1 })], look_at: ["ar_clutch"], pull: { parts: [], unwritten: ["bail_spring"] }, ...rest });
const values = { reel: "Brackhelm Whinbeck 40", fished: "", rinse: "", days: "", months: "", complaint: "", said: "", job: "" };
const models = [{ maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", tickets: 9 }];

describe("the reel asked about", () => {
  test("is none until a reel is chosen; what is not told stays not known; routine work is no complaint", () => {
    expect(reelOnBench({ ...values, reel: "" }, models, complaints)).toBeNull();
    expect(reelOnBench(values, models, complaints)).toEqual({ reel_kind: "spinning", maker: "Brackhelm", model: "Whinbeck 40", water: null, rinse: null, days: null, months: null, complaint: null });
    expect(reelOnBench({ ...values, reel: "any fly", said: "annual service", days: "12", months: "x" }, models, complaints)).toMatchObject({ reel_kind: "fly", model: null, days: 12, months: null, complaint: null });
  });
  test("takes the complaint chosen before the one that the words name", () => {
    expect([complaintMeant({ complaint: "", said: "bail wont close" }, complaints), complaintMeant({ complaint: "C03", said: "bail wont close" }, complaints), complaintMeant({ complaint: "", said: " " }, complaints)]).toEqual(["C12", "C03", null]);
  });
  test("reads whole numbers and nothing else", () => {
    expect(["7", " 12 ", "", "-3", "1.5", "many"].map(wholeOf)).toEqual([7, 12, null, null, null, null]);
    expect(["7", "", "many"].map(notWhole)).toEqual([false, false, true]);
  });
  test("is told in one line with what is not known", () => expect(reelLine(REEL)).toBe("Brackhelm Whinbeck 40, spinning, salt water, rinsing not known, 1 salt day, 14 months since service"));
});

describe("the card's tables", () => {
  test("show each cause with this reel's chance, the shop's own count and common practice", () => {
    const cells = causeColumns(card().chances, 12).map((column) => plain(cellText(column, cause())));
    expect(cells).toEqual(["Anti-reverse clutch", "about 80 %", "5.5 of 12", "72 in 100"]);
    expect(causeColumns([], 0).map((column) => cellText(column, cause({ usual: null, own: 0 }))).slice(2)).toEqual(["–", "–"]);
  });
  test("name a cause without a part as the trade does, and two parts with or", () => {
    expect(causeName(cause({ positions: [], cause: "grit in hub" }), [])).toBe("grit in hub");
    expect(causeName(cause({ positions: ["ar_clutch", "bail_spring"] }), card().chances)).toBe("Anti-reverse clutch or Bail spring");
  });
  test("leave out what is rare, and parts that the causes tell already", () => {
    expect(toldCauses([cause(), cause({ here: 0.01 }), cause({ here: 0.02 }), cause({ here: 0.05 })]).map(({ here }) => here)).toEqual([0.8, 0.01, 0.05]);
    expect(toldChances(card()).map(({ position }) => position)).toEqual(["bail_spring"]);
  });
  test("give no percentage of fewer than ten", () => {
    expect(CHANCE_COLUMNS.map((column) => plain(cellText(column, part({ n: 4, failed: 1 }))))).toEqual(["Anti-reverse clutch", "–", "too few to say", "1 of 4", "this model, planned services"]);
    expect(drawnChances(card(), (position) => `#${position}`).map(({ figures, word, tone }) => [plain(figures), word, tone])).toEqual([["20–40 % failed", "look here first", "step-5"], ["1 of 4", null, "few"]]);
  });
  test("say what the shelf says, and that a delivery time is only quoted", () => {
    const pull: PartToPull = { positions: ["ar_clutch"], part_no: "ARC-1", name: null, qty: 2, on_hand: 1, on_order: 0, waiting: 0, supplier: null, lead_days: 18, lead_from: "quoted", unit_cost: null, shelf: "not enough" };
    expect(pullColumns(card().chances, "cu").map((column) => plain(cellText(column, pull)))).toEqual(["ARC-1", "ARC-1", "Anti-reverse clutch", "2", "1 there, not enough: order", "18 days quoted", "–"]);
  });
});

describe("the card's sentences", () => {
  test("say how much is common practice and how much the shop's own", () => {
    const of = (own_tickets: number, leans_on: "common practice" | "this shop's own jobs") => causesSentence(card({ causes: { code: "C01", own_tickets, leans_on, causes: [] } }));
    expect(of(0, "common practice")).toContain("no count");
    expect(of(4, "common practice")).toBe("Mostly common practice, which counts like ten jobs; this shop has 4 finished jobs with this complaint on such reels.");
    expect(of(32, "this shop's own jobs")).toBe("Mostly this shop's own 32 finished jobs with this complaint on such reels; common practice counts like ten more.");
    expect(causesSentence(card({ causes: null }))).toBe("");
  });
  test("name parts without a number, for a model only", () => {
    expect(unwrittenSentence(card())).toBe("No part number is written for bail spring on this model.");
    expect(unwrittenSentence(card({ reel: { ...REEL, model: null } }))).toBe("");
  });
  test("give a fly reel no bail, and every kind the maker's sheet first", () => {
    expect(notesOf(benchNotes, ["check"], "fly").some((line) => line.includes("Bail"))).toBe(false);
    for (const kind of ["spinning", "conventional", "baitcaster", "fly", "other"] as const) expect(cautionsOn("card", kind)[0]).toContain("The maker's service sheet comes first.");
  });
});
