// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { boughtWith } from "../../src/answers/budget/bought-with.ts";
import type { Bought } from "../../src/answers/budget/bought-with.ts";
import { budgetChart } from "../../src/rooms/stock/budget-chart.ts";
import { budgetQuestion, curveEnd, moneyOf } from "../../src/rooms/stock/budget-question.ts";
import { boughtColumns, boughtFile, boughtWhy, budgetSentence, rushName, rushSentence, sharesSentence } from "../../src/rooms/stock/budget-words.ts";
import { scoreChart } from "../../src/rooms/stock/score-chart.ts";
import { scoreColumns } from "../../src/rooms/stock/score-words.ts";
import { cellText } from "../../src/ui/table-rows.ts";
import { BUDGET, score, SCORES } from "./budget-rows.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const bought = (money: number) => boughtWith(BUDGET, money) as Bought;

describe("the words of a budget", () => {
  test("say jobs ahead, jobs that wait without and with the money, and what nine times in ten is not passed", () => {
    expect(plain(budgetSentence(BUDGET, bought(20), "cu", "en-GB"))).toBe(
      "About 50 jobs that need one of these parts lie ahead until the order after this one arrives. Without buying anything about 8.0 of them wait for a part; with 20 cu on 3 parts about 1.0, and nine times in ten no more than 2.");
  });

  test("name what the first step costs where the money buys nothing, and say so where nothing helps", () => {
    expect(plain(budgetSentence(BUDGET, bought(7), "cu", "en-GB"))).toMatch(/about 8\.0 of them wait for a part; the first step costs 8 cu\.$/);
    expect(budgetSentence({ ...BUDGET, steps: [], fared: BUDGET.fared.slice(0, 1) }, { ...bought(0), next: null }, "cu", "en-GB")).toMatch(/nothing on the list helps\.$/);
  });

  test("say from what money on so many jobs in 100 go straight through, and leave out what no money reaches and what under ten jobs cannot tell", () => {
    // 8 of 50 wait without money (84 in 100), 3 for 8 (94), 1 for 20 (98).
    expect(plain(sharesSentence(BUDGET, "cu", "en-GB"))).toBe("90 in 100 jobs go straight through from 8 cu on, 95 in 100 from 20 cu on, 98 in 100 from 20 cu on.");
    expect(plain(sharesSentence({ ...BUDGET, fared: BUDGET.fared.slice(0, 2) }, "cu", "en-GB"))).toBe("90 in 100 jobs go straight through from 8 cu on.");
    expect(sharesSentence({ ...BUDGET, jobs: 9 }, "cu", "en-GB")).toBe("");
  });

  test("give each line its reason, and the parts it helps only together with", () => {
    expect(bought(20).lines.map((line) => boughtWhy(line, BUDGET, "en-GB"))).toEqual([
      "Spares about 5.0 of 50 jobs the wait.", "Spares about 1.0 of 50 jobs the wait. Partly it helps only together with Clutch spring.", "Spares about 1.0 of 50 jobs the wait. Partly it helps only together with Clutch.",
    ]);
    expect(boughtColumns(BUDGET, "cu").map(({ key }) => key)).toEqual(["name", "part_no", "supplier", "pieces", "cost", "why"]);
    expect(boughtFile(BUDGET, bought(8).lines).split("\r\n")).toEqual(["name,part_no,supplier,pieces,cost,why,unit_cost", "Level-wind pawl,LWP,Zetfield,5,8,Spares about 5.0 of 50 jobs the wait.,1.6", ""]);
  });

  test("call the busiest weeks spring where they begin early in the year", () => {
    const rush = { from: "2026-02-19", until: "2026-05-20", tickets: 878, years: 2, times_usual: 1.43 };
    expect([rushName(rush), rushName({ ...rush, from: "2026-06-04" })]).toEqual(["ready for spring", "ready for the rush"]);
    expect(rushSentence(rush, "en-GB")).toBe("Your busiest thirteen weeks run from 19 Feb 2026 to 20 May 2026: 1.4 times the usual number of reels (878 tickets in 2 years). The list lasts to their end without another order.");
  });
});

describe("the money of the address", () => {
  const values = { show: "all", supplier: "", family: "", line: "", budget: "", lasting: "next-order", delivery: "as-known", held_up_by: "any" };
  test("is what stands there; else the week's order, or what spares nine jobs in ten the wait in the busiest weeks", () => {
    expect([moneyOf({ budget: "60" }, BUDGET, 253.4), moneyOf({ budget: "" }, BUDGET, 253.4), moneyOf({ budget: "" }, BUDGET, 0), moneyOf({ budget: "" }, { ...BUDGET, until: "2026-05-20" }, 253.4)]).toEqual([60, 254, 100, 8]);
    expect([moneyOf({ budget: "lots" }, BUDGET, 20), moneyOf({ budget: "-5" }, BUDGET, 20)]).toEqual([20, 20]);
  });

  test("does not belong to the question, so that another sum asks nothing anew", () => {
    expect(budgetQuestion({ ...values, budget: "60" }, "2026-01-05")).toEqual(budgetQuestion(values, "2026-01-05"));
    expect(budgetQuestion({ ...values, lasting: "rush", delivery: "twice", held_up_by: "needed" }, "2026-01-05"))
      .toEqual({ as_of: "2026-01-05", lasting: "rush", lead_factor: 2, held_up_by: "parts it cannot do without" });
  });

  test("fits into the picture, which ends on a round sum", () => expect([curveEnd(BUDGET, 20), curveEnd(BUDGET, 400)]).toEqual([25, 450]));
});

describe("budgetChart", () => {
  test("draws the curve in steps with its band, the money asked for and what it does, in the owner's units", async () => {
    const svg = drawn(budgetChart({ answer: BUDGET, money: 12, end: 25, currency: "cu" }, sheet(860)));
    expect([marks(svg, "curve", "path"), marks(svg, "range", "path"), marks(svg, "money-dot", "circle"), marks(svg, "money-range", "line")]).toEqual([1, 1, 1, 1]);
    expect(words(svg, "money-word")).toEqual(["94 in 100 for 12 cu"]);
    expect(words(svg, "heading")).toEqual(["of about 50 jobs"]);
    expect(svg.textContent).toContain("money spent on stock now, cu");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/stock-budget.svg");
  });

  test("draws nothing where there is no curve", () => expect(budgetChart({ answer: { ...BUDGET, fared: [] }, money: 12, end: 25, currency: "cu" }, sheet(860))).toBeNull());
});

describe("scoreChart", () => {
  test("sets each way of ordering by jobs that waited and money on the shelf, the advice joined by a line, others by shape", async () => {
    const svg = drawn(scoreChart(SCORES, "cu", sheet(1080)));
    expect([marks(svg, "advice", "circle"), marks(svg, "habits", "path"), marks(svg, "advice-line", "path"), marks(svg, "range", "line")]).toEqual([4, 3, 1, 7]);
    expect(words(svg, "words-set")).toEqual(["as advised: 19"]);
    expect(words(svg, "words-level").sort()).toEqual(["min-max: 82", "one when one goes: 33", "out half as often: 9", "out three times as often: 71", "out twice as often: 42", "what happened: 56"]);
    expect(svg.textContent).toContain("mean value on the shelf, cu");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/stock-score.svg");
  });

  test("leaves out what is not known, and draws nothing of a single way", () => {
    const unknown = score("what happened", "happened", 1, 1, { waited: null });
    expect(marks(drawn(scoreChart([...SCORES.slice(0, 6), unknown], "cu", sheet(860))), "range", "line")).toBe(6);
    expect(scoreChart(SCORES.slice(0, 1), "cu", sheet(860))).toBeNull();
  });
});

test("a figure that is not known is a dash in the table of scores, never nought", () => {
  const row = score("what happened", "happened", 1, 1, { waited: null, jobs_without_wait: null, stock_value_mean: null, carriage: null, dead_stock: null, wait_days: null });
  expect(scoreColumns("cu").map((column) => cellText(column, row))).toEqual(["what happened", "–", "–", "–", "–", "150", "6,935", "–", "–"]);
});
