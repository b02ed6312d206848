import * as Plot from "@observablehq/plot";
import type { Week } from "../../answers/season/weeks.ts";
import type { ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";

const LINE = 48, ABOVE = 22, LEFT = 44, DAY = 86_400_000;
const time = (iso: string) => Date.parse(`${iso}T00:00:00Z`);

/** Where a week stands: the year of its Thursday, as weeks of the year are counted, and its place in it from 0. */
export function placeInYear(monday: string): { readonly year: number; readonly place: number } {
  const thursday = time(monday) + 3 * DAY, year = new Date(thursday).getUTCFullYear();
  return { year, place: Math.floor((thursday - Date.UTC(year, 0, 1)) / DAY / 7) };
}

/** Weeks of the past, a line for each year: the taller the bar the more reels; a cross where the shop was closed. @returns null without weeks */
export function calendarChart(weeks: readonly Week[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, locale, width } = sheet;
  if (weeks.length === 0) return null;
  const placed = weeks.map((week) => ({ ...week, ...placeInYear(week.monday) })), years = [...new Set(placed.map(({ year }) => year))], most = Math.max(1, ...weeks.map(({ tickets }) => tickets));
  const months = Array.from({ length: 12 }, (_, month) => ({ place: Math.floor((Date.UTC(2001, month, 15) - Date.UTC(2001, 0, 1)) / DAY / 7), name: new Intl.DateTimeFormat(locale, { month: width < 620 ? "narrow" : "short", timeZone: "UTC" }).format(new Date(Date.UTC(2001, month, 15))) }));
  return Plot.plot({
    document: sheet.document, width, height: ABOVE + LINE * years.length + 8, figure: false, marginLeft: LEFT, marginRight: 4, marginTop: ABOVE, marginBottom: 4,
    x: { type: "band", domain: Array.from({ length: 53 }, (_, place) => place), padding: 0.25, axis: null }, y: { domain: [0, most], axis: null }, fy: { domain: years, axis: null, padding: 0.2 },
    marks: [
      Plot.ruleY(years.map((year) => ({ year })), { fy: "year", y: 0, stroke: theme.rule }),
      Plot.barY(placed.filter(({ tickets }) => tickets > 0), { fy: "year", x: "place", y: "tickets", fill: theme.accent, fillOpacity: 0.8, className: "reels" }),
      Plot.text(placed.filter(({ tickets, open }) => tickets === 0 && open < 0.5), { fy: "year", x: "place", y: 0, text: () => "×", dy: -6, fill: theme.soft, className: "closed" }),
      Plot.text(years, { fy: (year: number) => year, text: (year: number) => number(year, 0, "en-GB").replace(",", ""), frameAnchor: "bottom-left", textAnchor: "start", dx: -LEFT, fill: theme.ink, className: "years" }),
      Plot.text(months, { fy: () => years[0] as number, x: "place", text: "name", frameAnchor: "top", dy: -14, fill: theme.soft, fontStyle: "italic", className: "months" }),
    ],
  });
}
