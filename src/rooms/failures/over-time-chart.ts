import * as Plot from "@observablehq/plot";
import type { FailurePeriod } from "../../answers/failures/failure-rate.ts";
import type { RuleChange } from "../../answers/rule-changes/rule-changes.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { date, FEWEST_FOR_PERCENT, number } from "../../ui/format.ts";

const FAILED = "failed", REPLACED = "replaced, worn or as routine";
/** Pixels above the picture for the words of one change. */
const HABIT = 17;
/** Not a number breaks a line, so that it does not run on across a quarter of which nothing can be said. */
const unlessFew = (key: "rate" | "replaced_share") => (one: FailurePeriod) => (one.inspected >= FEWEST_FOR_PERCENT ? one[key] : null) ?? NaN;
const day = (period: string) => new Date(`${period}T00:00:00Z`);

/** The owner's changes of habit inside the time drawn: an upright line each, with its day above, one step lower for each. */
function habitLines(changes: readonly RuleChange[], first: string, last: string, { theme, locale }: ChartSheet): Plot.Markish[] {
  const start = day(first).getTime(), late = ({ from }: RuleChange) => day(from).getTime() - start > 0.6 * (day(last).getTime() - start);
  const inside = changes.filter(({ from }) => from >= first && from <= `${last.slice(0, 4)}-12-31`);
  return inside.map((change, i) => [
    Plot.ruleX([change], { x: ({ from }: RuleChange) => day(from), stroke: theme.attention, strokeWidth: 1.4, strokeDasharray: "7 3", className: "habit" }),
    Plot.text([change], {
      x: ({ from }: RuleChange) => day(from), frameAnchor: "top", dy: -HABIT * (inside.length - i) + 6, dx: late(change) ? -4 : 4, textAnchor: late(change) ? "end" : "start", lineWidth: 34, textOverflow: "ellipsis-end",
      text: ({ from, text }: RuleChange) => `${date(from, locale)}: ${text}`, fill: theme.attention, className: "habit-name",
    }),
  ]);
}

/**
 * Failures against replacements of one position, period by period: filled dots with their plausible range for the share
 * failed, open squares on a dashed line for the share replaced. A period under ten inspected is left out. `changes` are
 * drawn as dated lines.
 *
 * @returns null when fewer than two periods have ten inspected
 */
export function overTimeChart(periods: readonly FailurePeriod[], sheet: ChartSheet, changes: readonly RuleChange[] = []): SVGElement | HTMLElement | null {
  const { theme, locale } = sheet;
  const told = periods.filter((one) => one.inspected >= FEWEST_FOR_PERCENT && one.rate !== null);
  const last = told.at(-1);
  if (told.length < 2 || !last) return null;
  const x = (one: FailurePeriod) => day(one.period);
  const right = Math.min(labelWidth([FAILED, "replaced, worn"], theme.font_size) + 14, sheet.width * 0.4);
  const habits = habitLines(changes, told[0]?.period ?? "", last.period, sheet);
  const near = Math.abs((last.rate ?? 0) - (last.replaced_share ?? 0)) < 0.12;
  const failed_lower = (last.rate ?? 0) < (last.replaced_share ?? 0);
  const word = (text: string, y: "rate" | "replaced_share", dy: number) => Plot.text([last], {
    x, y, text: () => text, textAnchor: "start", dx: 10, dy: near ? dy : 0, lineWidth: 8, fill: theme.ink, className: "line-name",
  });
  return Plot.plot({
    document: sheet.document, width: sheet.width, height: 230 + HABIT * habits.length, figure: false, marginLeft: 46, marginRight: right, marginTop: 14 + HABIT * habits.length, marginBottom: 30,
    x: { type: "utc" },
    y: { percent: true, domain: [0, Math.min(100, 10 * Math.ceil(Math.max(...told.map((one) => Math.max(one.rate_high ?? 0, one.replaced_share ?? 0))) * 10.2))] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 4 }),
      Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 4, tickFormat: (tick: number) => `${number(tick, 0, locale)} %` }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null, ticks: "year", tickFormat: (tick: Date) => String(tick.getUTCFullYear()) }),
      habits,
      Plot.lineY(periods, { x, y: unlessFew("replaced_share"), stroke: theme.ink, strokeWidth: 1.2, strokeDasharray: "5 4" }),
      Plot.dot(told, { x, y: "replaced_share", symbol: "square", r: 4, stroke: theme.ink, fill: theme.paper, className: "replaced" }),
      Plot.ruleX(told, { x, y1: "rate_low", y2: "rate_high", stroke: theme.accent, strokeWidth: 1.4, className: "range" }),
      Plot.lineY(periods, { x, y: unlessFew("rate"), stroke: theme.accent, strokeWidth: 1.2 }),
      Plot.dot(told, { x, y: "rate", r: 4.2, fill: theme.accent, className: "failed" }),
      word(REPLACED, "replaced_share", failed_lower ? -12 : 12),
      word(FAILED, "rate", failed_lower ? 12 : -12),
    ],
  });
}
