import * as Plot from "@observablehq/plot";
import type { ChartSheet } from "../../src/ui/chart-sheet.ts";
import { number } from "../../src/ui/format.ts";

/** One week: what was told of it beforehand, what came, and what had come a year before. */
export interface Came { readonly monday: string; readonly expected: number; readonly low: number; readonly high: number; readonly came: number; readonly year_before: number }

const HEIGHT = 260, x = ({ monday }: Came) => new Date(`${monday}T00:00:00Z`);

/** What was told, as a bar of its range with a dot at what was expected, and what came: a ring inside the range, a cross outside. @returns null without weeks */
export function cameChart(weeks: readonly Came[], unit: string, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, inside = ({ came, low, high }: Came) => came >= low && came <= high;
  if (weeks.length === 0) return null;
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: 40, marginRight: 12, marginTop: 26, marginBottom: 30,
    x: { type: "utc" }, y: { domain: [0, Math.max(...weeks.map(({ high, came }) => Math.max(high, came))) * 1.08] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 5 }), Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5 }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null, ticks: "2 months", tickFormat: (tick: Date) => new Intl.DateTimeFormat(locale, { month: "short", year: "numeric", timeZone: "UTC" }).format(tick) }),
      Plot.ruleX(weeks, { x, y1: "low", y2: "high", stroke: theme.accent, strokeWidth: 6, strokeOpacity: 0.3, className: "range" }),
      Plot.dot(weeks, { x, y: "expected", r: 2, fill: theme.accent, className: "expected" }),
      Plot.dot(weeks.filter(inside), { x, y: "came", r: 3.4, stroke: theme.ink, fill: theme.paper, strokeWidth: 1.4, className: "came" }),
      Plot.dot(weeks.filter((week) => !inside(week)), { x, y: "came", r: 4.5, symbol: "times", stroke: theme.attention, strokeWidth: 2, className: "outside" }),
      Plot.text([`${unit}; ○ came, × came outside the range (${number(weeks.filter((week) => !inside(week)).length, 0, locale)} of ${number(weeks.length, 0, locale)})`], { text: (one: string) => one, frameAnchor: "top-left", textAnchor: "start", dx: 2, dy: -18, fill: theme.soft, fontStyle: "italic", className: "unit" }),
    ],
  });
}
