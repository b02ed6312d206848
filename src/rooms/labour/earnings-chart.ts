import * as Plot from "@observablehq/plot";
import type { BenchRates } from "../../answers/labour/bench-rates.ts";
import type { Earning } from "../../answers/labour/earnings.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { ABOVE, BELOW, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";

const LINE = 27, RIGHT = 166;

type Known = Earning & { readonly per_hour: number; readonly per_hour_low: number; readonly per_hour_high: number };
const known = (row: Earning): row is Known => row.per_hour !== null && row.per_hour_low !== null && row.per_hour_high !== null;

/** Upright lines at what an hour costs and at its price, each named above. */
function rateLines({ hour_price, hour_cost }: BenchRates, { theme, locale }: ChartSheet): Plot.Markish[] {
  const lines = [["costs you", hour_cost, theme.attention, "end", -3] as const, ["your price", hour_price, theme.soft, "start", 3] as const];
  return lines.flatMap(([word, rate, colour, anchor, dx]) => (rate === null ? [] : [
    Plot.ruleX([rate], { stroke: colour, strokeDasharray: "4 3", className: "rate" }),
    Plot.text([rate], {
      x: (one: number) => one, text: () => `${word} ${number(rate, 0, locale)}`, frameAnchor: "top", dy: -16, dx, textAnchor: anchor,
      fill: colour, fontStyle: "italic", className: "rate-name",
    }),
  ]));
}

/**
 * What an hour of each job brings in: the dot is the figure, the line where it plausibly lies, with the hour's cost and price as
 * upright lines.
 *
 * @param currency behind the axis' words
 * @returns null when no job has enough to be drawn
 */
export function earningsChart(rows: readonly Earning[], rates: BenchRates, currency: string, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, drawn = rows.filter(known);
  if (drawn.length === 0) return null;
  const names = drawn.map(jobName), left = Math.min(labelWidth(names, theme.font_size) + 12, width * 0.36);
  const end = Math.max(...drawn.map(({ per_hour_high }) => per_hour_high), rates.hour_price ?? 0, rates.hour_cost ?? 0) * 1.04;
  return Plot.plot({
    document: sheet.document, width, height: names.length * LINE + ABOVE + BELOW, figure: false,
    marginLeft: left, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, end] }, y: { domain: names, axis: null, type: "point", padding: 0.5 },
    marks: [
      nameLines(names, left, theme), rateLines(rates, sheet),
      valueAxis(`labour charged for an hour at the bench${currency === "" ? "" : `, ${currency}`}`, width - left - RIGHT, sheet),
      Plot.ruleY(drawn, { y: jobName, x1: "per_hour_low", x2: "per_hour_high", stroke: theme.ink, strokeWidth: 1.5, className: "range" }),
      Plot.dot(drawn, { x: "per_hour", y: jobName, r: 4.5, fill: theme.ink, className: "earned" }),
      figures(drawn, jobName, ({ jobs }) => number(jobs, 0, locale), { dx: 44, className: "jobs", theme }),
      figures(drawn, jobName, ({ standing }) => standing, { dx: 54, anchor: "start", soft: true, className: "standing", theme }),
      Plot.text(["jobs"], { text: (one: string) => one, frameAnchor: "top-right", textAnchor: "end", dx: 44, dy: -16, fill: theme.soft, fontStyle: "italic", className: "heads" }),
    ],
  });
}
