import * as Plot from "@observablehq/plot";
import type { LoadWeek } from "../../answers/bench-load/bench-load.ts";
import type { Week } from "../../answers/season/weeks.ts";
import type { ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";

const HEIGHT = 250, LEFT = 46, RIGHT = 14, ABOVE = 24, BELOW = 30;
const day = (iso: string) => new Date(`${iso}T00:00:00Z`);
const x = ({ monday }: { readonly monday: string }) => day(monday);

/** Frame of a picture by weeks: months below, the unit above at the left. */
function frame(unit: string, marks: Plot.Markish[], sheet: ChartSheet, { top, months = 6 }: { top: number; months?: number }): SVGElement | HTMLElement {
  const { theme, locale, width } = sheet;
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: LEFT, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { type: "utc" }, y: { domain: [0, top] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 5 }), Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5, tickFormat: (tick: number) => number(tick, 0, locale) }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null, ticks: width / months < 62 ? "2 months" : "month", tickFormat: (tick: Date) => new Intl.DateTimeFormat(locale, { month: "short", ...(tick.getUTCMonth() === 0 && { year: "numeric" }), timeZone: "UTC" }).format(tick) }),
      ...marks,
      Plot.text([unit], { text: (one: string) => one, frameAnchor: "top-left", textAnchor: "start", dx: 2, dy: -16, fill: theme.soft, fontStyle: "italic" }),
    ],
  });
}

const topOf = (values: readonly number[]) => Math.max(1, ...values) * 1.08;
/** Words at the highest point of a line, where lines lie furthest apart. */
const named = <Row extends { readonly monday: string }>(rows: readonly Row[], text: string, y: (row: Row) => number, { theme, dy = -8 }: { theme: ChartSheet["theme"]; dy?: number }) =>
  Plot.text(rows.length === 0 ? [] : [rows.reduce((most, row) => (y(row) > y(most) ? row : most))], { x, y, text: () => text, textAnchor: "middle", dy, fill: theme.ink, stroke: theme.paper, strokeWidth: 5, className: "line-name" });

/** Reels a week: those that came in the last year, and those to come with the range that holds 8 of 10 weeks. @returns null without weeks ahead */
export function reelsChart(past: readonly Week[], ahead: readonly LoadWeek[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme } = sheet, last = past.slice(-52), whole = ahead.filter(({ forecast }) => forecast.open > 0);
  if (whole.length === 0) return null;
  return frame("reels a week", [
    Plot.ruleX(last, { x, y: "tickets", stroke: theme.soft, strokeWidth: 2.2, className: "came" }),
    Plot.ruleX(whole, { x, y1: ({ forecast }: LoadWeek) => forecast.low, y2: ({ forecast }: LoadWeek) => forecast.high, stroke: theme.accent, strokeWidth: 5, strokeOpacity: 0.35, className: "range" }),
    Plot.dot(whole, { x, y: ({ forecast }: LoadWeek) => forecast.tickets, r: 3, fill: theme.accent, className: "expected" }),
  ], sheet, { months: 18, top: topOf([...last.map(({ tickets }) => tickets), ...whole.map(({ forecast }) => forecast.high)]) });
}

/** Hours of work that each week brings, with its range, against the hours there are. @returns null without weeks */
export function hoursChart(weeks: readonly LoadWeek[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme } = sheet;
  if (weeks.length === 0) return null;
  const limited = weeks.filter(({ capacity_hours }) => capacity_hours !== null), over = limited.filter(({ hours, capacity_hours }) => hours.mean > (capacity_hours ?? Infinity));
  return frame("hours a week", [
    Plot.areaY(weeks, { x, y1: ({ hours }: LoadWeek) => hours.low, y2: ({ hours }: LoadWeek) => hours.high, fill: theme.accent, fillOpacity: 0.16, className: "range" }),
    Plot.lineY(weeks, { x, y: ({ hours }: LoadWeek) => hours.mean, stroke: theme.accent, strokeWidth: 2.4, className: "work" }),
    Plot.lineY(limited, { x, y: "capacity_hours", curve: "step", stroke: theme.ink, strokeWidth: 1.5, strokeDasharray: "7 3", className: "capacity" }),
    Plot.dot(over, { x, y: ({ hours }: LoadWeek) => hours.mean, r: 4.5, symbol: "diamond2", fill: theme.attention, stroke: theme.paper, className: "over" }),
    limited.length > 0 ? Plot.text(limited.slice(-1), { x, y: "capacity_hours", text: () => "hours the bench has", textAnchor: "end", dy: -8, fill: theme.ink, stroke: theme.paper, strokeWidth: 5, className: "line-name" }) : null,
    named(weeks, "work", ({ hours }) => hours.mean, { theme, dy: -10 }),
  ], sheet, { top: topOf([...weeks.map(({ hours }) => hours.high), ...limited.map(({ capacity_hours }) => capacity_hours ?? 0)]) });
}

/** Days until a reel that comes in that week is ready: the middle one, and within which 8 of 10 are; dashed what it was without the change. */
export function waitChart(weeks: readonly LoadWeek[], sheet: ChartSheet, before: readonly LoadWeek[] = []): SVGElement | HTMLElement | null {
  const { theme } = sheet, told = weeks.filter(({ wait }) => wait !== null), without = before.filter(({ wait }) => wait !== null);
  if (told.length === 0) return null;
  const middle = ({ wait }: LoadWeek) => wait?.middle ?? 0, most = ({ wait }: LoadWeek) => wait?.most ?? 0;
  return frame("days until ready", [
    Plot.areaY(told, { x, y1: middle, y2: most, fill: theme.accent, fillOpacity: 0.16, className: "between" }),
    Plot.lineY(without, { x, y: most, stroke: theme.ink, strokeWidth: 1.3, strokeDasharray: "5 4", className: "before" }),
    Plot.lineY(told, { x, y: middle, stroke: theme.accent, strokeWidth: 1.3, className: "middle" }),
    Plot.lineY(told, { x, y: most, stroke: theme.accent, strokeWidth: 2.4, className: "most" }),
    named(told, without.length > 0 ? "8 of 10 ready, changed" : "8 of 10 ready", most, { theme, dy: without.length > 0 ? 14 : -8 }),
    without.length > 0 ? named(without, "as it stands", most, { theme }) : named(told, "half ready", middle, { theme, dy: 14 }),
  ], sheet, { top: topOf([...told, ...without].map(most)) });
}
