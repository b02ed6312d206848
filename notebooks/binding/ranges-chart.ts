import * as Plot from "@observablehq/plot";
import { labelWidth } from "../../src/ui/chart-sheet.ts";
import type { ChartSheet } from "../../src/ui/chart-sheet.ts";
import { ABOVE, BELOW, figures, nameLines, valueAxis } from "../../src/ui/name-lines.ts";

/** A figure with the range it plausibly lies in (null: it has no end on that side), and the counts behind it. */
export interface Ranged { readonly name: string; readonly value: number; readonly low: number | null; readonly high: number | null; readonly counts: string }

export interface RangesPicture {
  readonly rows: readonly Ranged[];
  /** What the axis measures, with its unit. */
  readonly axis: string;
  /** Place and name of a line to compare with: the truth, what was asked for, no difference. */
  readonly beside?: { readonly at: number; readonly name: string };
  readonly from?: number;
}

const LINE = 30;

/**
 * Figures with their ranges, a line each: the dot is the figure, the stroke where it plausibly lies, an arrow a range without end.
 *
 * @returns null without a row
 */
export function rangesChart({ rows, axis, beside, from = 0 }: RangesPicture, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width } = sheet, names = rows.map(({ name }) => name);
  if (rows.length === 0) return null;
  const left = labelWidth(names, theme.font_size) + 12, right = labelWidth(rows.map(({ counts }) => counts), theme.font_size) + 12;
  const end = Math.max(beside?.at ?? 0, ...rows.map(({ value, high }) => high ?? value * 1.3)) * 1.04, open = rows.filter(({ high }) => high === null);
  return Plot.plot({
    document: sheet.document, width, height: rows.length * LINE + ABOVE + BELOW, figure: false, marginLeft: left, marginRight: right, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [from, end] }, y: { domain: names, axis: null, type: "point", padding: 0.5 },
    marks: [
      Plot.ruleY(names, { stroke: theme.rule, strokeDasharray: "1 4", insetLeft: -left }), nameLines(names, left, theme).slice(-1), valueAxis(axis, width - left - right, sheet),
      beside ? [
        Plot.ruleX([beside.at], { stroke: theme.attention, strokeDasharray: "4 3" }),
        Plot.text([beside.name], { text: (one: string) => one, x: () => beside.at, frameAnchor: "top", dy: -14, fill: theme.soft, fontStyle: "italic", className: "beside" }),
      ] : null,
      Plot.ruleY(rows, { y: "name", x1: ({ low }: Ranged) => Math.max(from, low ?? from), x2: ({ high }: Ranged) => high ?? end, stroke: theme.ink, strokeWidth: 1.8, className: "range" }),
      Plot.dot(open, { x: () => end, y: "name", symbol: "triangle", rotate: 90, r: 5, fill: theme.ink, className: "open-end" }),
      Plot.dot(rows, { x: "value", y: "name", r: 5, fill: theme.accent, stroke: theme.paper, className: "figure-dot" }),
      figures(rows, "name", ({ counts }) => counts, { dx: right - 4, className: "counts", theme }),
    ],
  });
}
