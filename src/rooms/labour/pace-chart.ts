import * as Plot from "@observablehq/plot";
import type { HalfYear } from "../../answers/labour/drift.ts";
import type { TechnicianYear } from "../../answers/labour/what-takes-longer.ts";
import type { ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";

type Told = TechnicianYear & { readonly ratio: number; readonly low: number; readonly high: number };
const told = (one: TechnicianYear): one is Told => one.ratio !== undefined && one.low !== undefined && one.high !== undefined;

/**
 * Each technician's years beside the colleague with most jobs, on the same jobs and models: 1 is as long, the line is the likely
 * range, the number the jobs.
 *
 * @returns null when no year has ten jobs
 */
export function techniciansChart(years: readonly TechnicianYear[], beside: string, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, drawn = years.filter(told);
  if (drawn.length === 0) return null;
  const names = [...new Set(drawn.map(({ technician }) => technician))], all = [...new Set(drawn.map(({ year }) => String(year)))].sort();
  return Plot.plot({
    document: sheet.document, width: Math.min(width, 120 + names.length * all.length * 78), height: 240, figure: false,
    marginLeft: 46, marginRight: 16, marginTop: 34, marginBottom: 34,
    fx: { domain: names, label: null, axis: null, padding: 0.12 }, x: { type: "point", domain: all, padding: 0.6 },
    y: { domain: [Math.min(0.8, ...drawn.map(({ low }) => low)) * 0.98, Math.max(1.2, ...drawn.map(({ high }) => high)) * 1.03] },
    marks: [
      Plot.text(names, { fx: (name: string) => name, text: (name: string) => `${name}, times ${beside}`, frameAnchor: "top", dy: -20, fill: theme.ink, className: "names" }),
      Plot.ruleY([1], { stroke: theme.soft, strokeDasharray: "4 3" }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5, tickFormat: (tick: number) => number(tick, 1, locale) }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null }),
      Plot.ruleX(drawn, { fx: "technician", x: ({ year }: Told) => String(year), y1: "low", y2: "high", stroke: theme.ink, strokeWidth: 1.4, className: "range" }),
      Plot.dot(drawn, { fx: "technician", x: ({ year }: Told) => String(year), y: "ratio", r: 4.5, fill: theme.ink, className: "ratio" }),
      Plot.text(drawn, { fx: "technician", x: ({ year }: Told) => String(year), y: "high", text: ({ jobs }: Told) => `${number(jobs, 0, locale)} jobs`, dy: -9, fill: theme.soft, className: "jobs" }),
    ],
  });
}

/**
 * The middle time of one job in each half year, with its likely range and the number of jobs.
 *
 * @returns null when there are fewer than two half years
 */
export function driftChart(halves: readonly HalfYear[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet;
  if (halves.length < 2) return null;
  const day = ({ from }: HalfYear) => new Date(`${from.slice(0, 4)}-${from.slice(5, 7) === "01" ? "04" : "10"}-01T00:00:00Z`);
  const ranged = halves.filter(({ low, high }) => low !== null && high !== null), top = Math.max(...halves.map(({ median, high }) => high ?? median));
  return Plot.plot({
    document: sheet.document, width, height: 230, figure: false, marginLeft: 52, marginRight: 20, marginTop: 20, marginBottom: 30,
    x: { type: "utc", domain: [new Date(`${halves[0]?.from.slice(0, 4) ?? ""}-01-01T00:00:00Z`), new Date(`${halves.at(-1)?.from.slice(0, 4) ?? ""}-12-31T00:00:00Z`)], insetLeft: 12, insetRight: 12 }, y: { domain: [0, top * 1.08] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 4 }), Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 4, tickFormat: (tick: number) => `${number(tick, 0, locale)} min` }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null, ticks: "year", tickFormat: (tick: Date) => String(tick.getUTCFullYear()) }),
      Plot.ruleX(ranged, { x: day, y1: "low", y2: "high", stroke: theme.accent, strokeWidth: 1.4, className: "range" }),
      Plot.dot(halves, { x: day, y: "median", r: 4.5, fill: theme.accent, className: "usual" }),
      Plot.text(halves, { x: day, y: ({ median, high }: HalfYear) => high ?? median, text: ({ n }: HalfYear) => `${number(n, 0, locale)} jobs`, dy: -9, fill: theme.soft, className: "jobs" }),
    ],
  });
}
