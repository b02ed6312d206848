import { describe, expect, test } from "vitest";
import { adviceHeadline, comeInBy, dueWords, reelWords, riskWords, skippingSentence, slipTitle, tickBoxes, tickWords, useWords } from "../../src/rooms/wear/advice-words.ts";
import { curveRows } from "../../src/rooms/wear/wear-columns.ts";
import { adviceQuestion, filterWords, shownRow, wearFields, wearFilter } from "../../src/rooms/wear/wear-filters.ts";
import { effectSentence, leftOut, likelyRange, lifeText, linkedSentence, modelsSentence, sensitivitySentence, wearSentence } from "../../src/rooms/wear/wear-words.ts";
import { valuesOf } from "../../src/ui/url-state.ts";
import { advice, beyondRow, CURVE, due, effect, life, limits, sensitivity, STEPS, thinRow, wearRow } from "./wear-rows.ts";

const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ");
const MODELS = [{ maker: "Ekholt", model: "30", reel_kind: "spinning", tickets: 40 }];
const values = (query: string) => valuesOf(wearFields({ models: MODELS, positions: [] }), query).values;

describe("a part's life in words", () => {
  test("names the exposure for one in ten, one in five and half, each with its range, and the counts", () => {
    expect(plain(wearSentence(wearRow(), "en-GB"))).toBe(
      "1 in 10 has failed by 34 salt days (likely 29 to 40), 1 in 5 has failed by 53 (likely 47 to 60), half have failed by 103 (likely 94 to 115). 432 parts followed from fitting, 160 failed.");
  });

  test("gives the reason and the least that can be said where there is no curve, and no figure", () => {
    expect(plain(wearSentence(thinRow(), "en-GB"))).toBe(
      "Only 2 failed, too few for a curve. Even so, 1 in 10 has likely not failed before 31 salt days. 40 parts followed from fitting, 2 failed.");
    const all = thinRow({ status: "all failed", status_text: "all had failed", b10_bound: limits(null, null, 12), method: "current status", n: 1, failed: 1 });
    expect(plain(wearSentence(all, "en-GB"))).toBe("All had failed. 1 in 10 has likely failed by 12 salt days. 1 inspection, each for itself, 1 failed.");
  });

  test("says of a part that fails no more with time that it does not wear, whatever its curve", () => {
    const row = wearRow({ wears: "no", status_text: "No likelier to fail with more months.", clock: "months" });
    expect(plain(wearSentence(row, "en-GB"))).toMatch(/^1 in 10 has failed by 34 months .* No likelier to fail with more months\. 432 parts followed/);
  });

  test("never names a figure beyond the records", () => {
    expect(plain(wearSentence(beyondRow(), "en-GB"))).toContain("lies beyond the records, which reach 90 salt days; likely not before 70.");
    expect(lifeText(beyondRow().b10, "en-GB")).toBe("over 70");
    expect(lifeText({ ...life(0.5), beyond: true }, "en-GB")).toBe("beyond the records");
    expect(lifeText(life(0.1), "en-GB")).toBe("–");
  });

  test("leaves an end open that the records do not reach", () => {
    expect([likelyRange(limits(5, 2, 8.44), "en-GB"), likelyRange(limits(50, 20, null), "en-GB"), likelyRange(limits(50, null, 80), "en-GB"), likelyRange(limits(50), "en-GB")])
      .toEqual(["2.0 to 8.4", "20 or more", "80 or less", ""]);
  });

  test("says how a habit changes life, and when that could be chance", () => {
    expect(effectSentence(effect("never", limits(2.04, 1.6, 2.6)), "salt_days", "en-GB")).toBe("One day never rinsed wears like 2.0 days always rinsed (likely 1.6 to 2.6).");
    expect(effectSentence(effect("sometimes", limits(1.1, 0.9, 1.4)), "months", "en-GB")).toMatch(/^One month sometimes rinsed wears like 1\.1 months always rinsed .*That could be chance\.$/);
    expect(effectSentence(effect("never", limits()), "salt_days", "en-GB")).toBe("Never rinsed against always rinsed: too little to say.");
  });

  test("says whether models differ, and names those that do by more than chance", () => {
    const model = (name: string, low: number, high: number) => ({ maker: null, model: name, n: 40, failed: 12, life_ratio: limits((low + high) / 2, low, high) });
    expect(modelsSentence([model("A", 0.9, 1.1), model("B", 0.93, 1.2)])).toBe("No difference between models that the records can show: whatever differs here could be chance.");
    expect(modelsSentence([model("A", 0.4, 0.8), model("B", 0.93, 1.2), model("C", 1.1, 1.9)])).toBe("It lasts less long on A. It lasts longer on C. The other differences could be chance.");
  });

  test("puts another assumption beside the figure shown, with counts", () => {
    expect(plain(sensitivitySentence(sensitivity("without parts whose fitting nobody saw", life(0.1, 36, 30, 44)), wearRow(), "en-GB")))
      .toBe("Without parts whose fitting nobody saw: 1 in 10 failed by 36 instead of 34 salt days (likely 30 to 44); 120 of 300 failed.");
    expect(sensitivitySentence(sensitivity("half the days", life(0.1)), thinRow(), "en-GB")).toBe("Half the days: where 1 in 10 has failed cannot be said; 120 of 300 failed.");
    expect(sensitivitySentence({ ...sensitivity("half the days", life(0.1)), n: 0, failed: 0 }, thinRow(), "en-GB")).toBe("Half the days: then no part is left to count.");
  });

  test("says what share could be followed, but not of under ten inspections", () => {
    const wear = { rows: [wearRow()], clock: "salt_days" as const, linked_share: 0.71, batch_mates: 0, contradicting_months: 0, remarks: [] };
    expect(plain(linkedSentence(wear, "en-GB"))).toMatch(/^71 % of the visits belong to a reel known by serial/);
    expect(linkedSentence({ ...wear, linked_share: 1 }, "en-GB")).toMatch(/^All of the visits .* to visit\.$/);
    expect(linkedSentence({ ...wear, linked_share: 0.998 }, "en-GB")).toMatch(/^Nearly all of the visits .* says less\.$/);
    expect(linkedSentence({ ...wear, rows: [thinRow({ n: 9 })] }, "en-GB")).toMatch(/^Too few/);
    expect(linkedSentence({ ...wear, linked_share: null }, "en-GB")).toMatch(/^Too few/);
  });

  test("names what was left out, and nothing where nothing was", () => {
    expect(leftOut(wearRow(), "en-GB")).toEqual([]);
    expect(leftOut(wearRow({ clock_missing: 22, failed_without_exposure: 3, unlinked: 120 }), "en-GB").map((line) => line.split(" ")[0])).toEqual(["22", "3", "120"]);
  });
});

describe("the advice in words", () => {
  test("gives days and months, whichever comes first, or the one that is known", () => {
    expect(adviceHeadline(advice(), "en-GB")).toBe("Come in after 20 salt days or 12 months, whichever comes first.");
    expect(adviceHeadline(advice({ by_days: due({ after: null }), by_months: due({ clock: "months", after: 1 }) }), "en-GB")).toBe("Come in after 1 month.");
    expect(dueWords(advice({ by_days: due({ after: null }), by_months: due({ after: null }) }), "en-GB")).toBeNull();
  });

  test("says why there is none", () => {
    const none = { by_days: due({ after: null, status: "too few" }), by_months: due({ after: null, status: "too few" }) } as const;
    expect(adviceHeadline(advice({ ...none, status: "too few" }))).toBe("Too few records of such reels to advise on.");
    expect(adviceHeadline(advice({ ...none, status: "beyond the records" }))).toMatch(/^No part that matters fails this often/);
  });

  test("says what skipping a year costs at the next visit, and nothing where it costs nothing", () => {
    const { skipping } = advice();
    expect(plain(skipping && skippingSentence(skipping, "cu", "en-GB"))).toBe(
      "These reels see 24 salt days in a usual year. Ten such reels have about 4 failed parts between them after one year, about 13 after two: a skipped year costs each about 18 min more at the bench and 22 cu more for parts at the next visit.");
    expect(plain(skipping && skippingSentence({ ...skipping, more_minutes: null, more_parts: null }, "cu", "en-GB"))).not.toContain("costs");
    expect(plain(skipping && skippingSentence({ ...skipping, per_year: 1, failed_after_one: 0.11, failed_after_two: 0.13, more_minutes: 0.2, more_parts: 0.1 }, "cu", "en-GB")))
      .toBe("These reels see 1 salt day in a usual year. Ten such reels have about 1 failed part between them after one year, hardly more after two.");
  });

  test("gives what can be had of a skipped year and names what is not in it", () => {
    const { skipping } = advice(), words = (rest: object) => plain(skipping && skippingSentence({ ...skipping, ...rest }, "cu", "en-GB"));
    expect(words({ without_price: ["Drag knob"] })).toMatch(/22 cu more for parts at the next visit\. Drag knob has no price in the records and is not in the money\.$/);
    expect(words({ without_price: ["A", "B", "C", "D"], without_minutes: ["A", "B"] })).toMatch(/4 parts have no price in the records and are not in the money\. A and B have no minutes .* not in the time\.$/);
    expect(words({ more_parts: null, without_price: ["A"] })).toMatch(/18 min more at the bench at the next visit\. No prices of parts are in the records, so the money cannot be told\.$/);
  });

  test("has a box to tick for each day, and none where they would be too many", () => {
    expect([tickBoxes(advice()).length, tickBoxes(advice({ by_days: due({ after: 90 }) })).length, tickBoxes(advice({ by_days: due({ after: null }) })).length]).toEqual([20, 0, 0]);
  });

  test("names the month by which the reel should come in, over the turn of the year, and none where no months are known", () => {
    expect([comeInBy(advice(), "2026-11-30", "en-GB"), comeInBy(advice({ by_months: due({ clock: "months", after: 3 }) }), "2026-11-30", "en-GB")]).toEqual(["November 2027", "February 2027"]);
    expect(comeInBy(advice({ by_months: due({ after: null }) }), "2026-11-30", "en-GB")).toBeNull();
  });

  test("heads the slip with the reel, or the customer's own where nothing was chosen, and ticks the days of its water", () => {
    const nothing = { reel_kind: null, maker: null, model: null, water: null, rinse: null, risk: 0.1 };
    expect([slipTitle(advice()), slipTitle(advice({ question: nothing }))]).toEqual(["When your reel should come in again", "When to bring your reel in"]);
    expect([tickWords(advice()), tickWords(advice({ by_days: due({ clock: "use_days" }) }))].map((words) => words.split(";")[0]))
      .toEqual(["Tick one for each day in salt or brackish water", "Tick one for each day of fishing"]);
  });

  test("says the reel, its use and the risk as one would aloud", () => {
    const { question } = advice();
    expect([reelWords(question), useWords(question), riskWords(0.05), riskWords(0.1)]).toEqual(["Ekholt 30", "salt water, never rinsed", "1 reel in 20", "1 reel in 10"]);
    expect(reelWords({ ...question, model: null, maker: null, reel_kind: "fly" })).toBe("any fly reel");
  });
});

describe("what the address asks", () => {
  test("turns into the records to look at and the customer's reel, a kind or a model", () => {
    const asked = values("model=Ekholt+30&clock=months&water=salt&reel=any+fly&fished=salt&rinse=never&risk=5");
    expect(wearFilter(asked, MODELS)).toMatchObject({ maker: "Ekholt", model: "30", clock: "months", water: "salt", reel_kind: null });
    expect(adviceQuestion(asked, MODELS)).toEqual({ reel_kind: "fly", maker: null, model: null, water: "salt", rinse: "never", risk: 0.05 });
    expect(adviceQuestion(values("reel=Ekholt+30"), MODELS)).toMatchObject({ reel_kind: null, maker: "Ekholt", model: "30", risk: 0.1 });
    expect(valuesOf(wearFields({ models: MODELS, positions: [] }), "reel=Whatnot+9").ignored).toEqual(["reel=Whatnot 9"]);
    expect(filterWords(asked)).toBe("Life counted in months; only Ekholt 30, salt water.");
  });

  test("shows the part chosen, else the first to fail, else the one with most behind it", () => {
    const rows = [beyondRow({ position: "main_gear" }), wearRow(), thinRow()];
    expect([shownRow(rows, "osc_slider")?.position, shownRow(rows, "")?.position, shownRow(rows, "gone")?.position]).toEqual(["osc_slider", "line_roller_bearing", "line_roller_bearing"]);
    expect([shownRow([thinRow(), beyondRow({ n: 50 })], "")?.n, shownRow([], "")]).toEqual([50, null]);
    const early = wearRow({ position: "side_cover_screws", wears: "not plain", b10: life(0.1, 3) });
    expect([shownRow([early, wearRow()], "")?.position, shownRow([early, wearRow()], "side_cover_screws")?.position]).toEqual(["line_roller_bearing", "side_cover_screws"]);
  });

  test("puts beside each point of the curve the step it stands on, and none beyond the records", () => {
    const rows = curveRows(CURVE, STEPS);
    expect([rows[0]?.step, rows[3]?.step?.observed, rows.at(-1)?.step]).toEqual([null, 0.05, null]);
    expect(curveRows([], STEPS)).toHaveLength(STEPS.length);
  });
});
