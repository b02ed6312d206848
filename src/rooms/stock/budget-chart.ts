import * as Plot from "@observablehq/plot";
import type { Budget } from "../../answers/budget/budget.ts";
import type { Fared } from "../../answers/budget/followed.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { valueAxis } from "../../ui/name-lines.ts";

const HEIGHT = 300, LEFT = 56, RIGHT = 16, ABOVE = 34, BELOW = 48, NARROWEST = 200;

export interface BudgetPicture {
  readonly answer: Budget;
  /** Money asked for, and where the picture ends. */
  readonly money: number;
  readonly end: number;
  readonly currency: string;
}

/** Share of jobs that go straight through in a scenario with so many waiting. */
const shareOf = (answer: Budget, waiting: number): number => Math.max(0, 1 - waiting / answer.jobs);

/** Steps inside the picture, and the last of them drawn on to its end. */
function shown({ fared }: Budget, end: number): Fared[] {
  const inside = fared.filter(({ spend }) => spend <= end), last = inside.at(-1);
  return last ? [...inside, { ...last, spend: end }] : [];
}

function asked({ answer, money, end, currency }: BudgetPicture, at: Fared, { theme, locale }: ChartSheet): Plot.Markish[] {
  const words = `${number(at.jobs_without_wait * 100, 0, locale)} in 100 for ${number(money, 0, locale)} ${currency}`.trim(), left = money > end * 0.6;
  return [
    Plot.ruleX([money], { stroke: theme.ink, strokeDasharray: "3 3", className: "money" }),
    Plot.ruleX([at], { x: () => money, y1: (one: Fared) => shareOf(answer, one.waiting_high), y2: (one: Fared) => shareOf(answer, one.waiting_low), stroke: theme.ink, strokeWidth: 2, className: "money-range" }),
    Plot.dot([at], { x: () => money, y: "jobs_without_wait", r: 4.5, fill: theme.ink, stroke: theme.paper, className: "money-dot" }),
    Plot.text([words], { x: () => money, frameAnchor: "top", text: (one: string) => one, textAnchor: left ? "end" : "start", dx: left ? -6 : 6, dy: -12, fill: theme.ink, className: "money-word" }),
  ];
}

/**
 * Share of the jobs ahead that go straight through against the money spent, in steps as it is spent, with the band that eight
 * futures in ten lie in, and the money asked for.
 *
 * @returns null where there is no curve
 */
export function budgetChart(picture: BudgetPicture, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { answer, money, end, currency } = picture, { theme, locale } = sheet, width = Math.max(NARROWEST, sheet.width), steps = shown(answer, end);
  const at = answer.fared.filter(({ spend }) => spend <= money + 1e-6).at(-1);
  if (!at || steps.length === 0) return null;
  const lowest = Math.min(...steps.map(({ waiting_high }) => shareOf(answer, waiting_high))), room = width - LEFT - RIGHT;
  const heading = `of about ${number(answer.jobs, 0, locale)} jobs`;
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: LEFT, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, end] },
    y: { percent: true, domain: [Math.max(0, Math.floor(lowest * 10) * 10), 100] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 5 }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5, tickFormat: (tick: number) => `${number(tick, 0, locale)} %` }),
      valueAxis(`money spent on stock now${currency === "" ? "" : `, ${currency}`}`, room, sheet),
      Plot.areaY(steps, { x: "spend", y1: (one: Fared) => shareOf(answer, one.waiting_high), y2: (one: Fared) => shareOf(answer, one.waiting_low), curve: "step-after", fill: theme.accent, fillOpacity: 0.16, className: "range" }),
      Plot.lineY(steps, { x: "spend", y: "jobs_without_wait", curve: "step-after", stroke: theme.accent, strokeWidth: 2.6, className: "curve" }),
      asked(picture, at, sheet),
      ...(labelWidth([heading], theme.font_size) < room / 2 ? [Plot.text([heading], { text: (one: string) => one, frameAnchor: "bottom-right", dy: -8, textAnchor: "end", fill: theme.soft, fontStyle: "italic", className: "heading" })] : []),
    ],
  });
}
