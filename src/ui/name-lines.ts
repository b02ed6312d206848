import * as Plot from "@observablehq/plot";
import type { ChartSheet } from "./chart-sheet.ts";
import type { ChartTheme } from "./chart-theme.ts";

/** Pixels above and below the lines: with a heading, without one, and for the axis with its label. */
export const ABOVE = 26, BARE = 4, BELOW = 46;

/** Names at the left of a chart with one line a name, a dotted leader from each to its figures, and the line at nought. */
export function nameLines(names: readonly string[], left: number, theme: ChartTheme): Plot.Markish[] {
  return [
    Plot.ruleY(names, { stroke: theme.rule, strokeDasharray: "1 4", insetLeft: -left, className: "leaders" }),
    Plot.ruleX([0], { stroke: theme.rule }),
    Plot.text(names, {
      y: (name: string) => name, text: (name: string) => name, frameAnchor: "left", textAnchor: "start", dx: -left, fill: theme.ink,
      // A wide stroke in the paper's colour keeps the leader off the letters.
      stroke: theme.paper, strokeWidth: 7, className: "names",
    }),
  ];
}

/** The axis of values below, `room` pixels wide, with what it measures written under it. */
export function valueAxis(label: string, room: number, sheet: ChartSheet, tickFormat?: (tick: number) => string): Plot.Markish {
  return Plot.axisX({
    tickSize: 4, color: sheet.theme.soft, label, labelAnchor: "left", labelArrow: "none", labelOffset: 38,
    ticks: Math.max(3, Math.min(8, room / 80)), ...(tickFormat && { tickFormat }),
  });
}

/** Words in a column right of the lines, `dx` pixels from their end. */
export function figures<R>(rows: readonly R[], y: keyof R & string | ((row: R) => string), text: (row: R) => string, at: {
  readonly dx: number; readonly dy?: number; readonly anchor?: "start" | "end"; readonly soft?: boolean; readonly className: string; readonly theme: ChartTheme;
}): Plot.Markish {
  return Plot.text(rows as R[], {
    y, text, frameAnchor: "right", textAnchor: at.anchor ?? "end", dx: at.dx, dy: at.dy ?? 0, className: at.className,
    ...(at.soft ? { fill: at.theme.soft, fontStyle: "italic" } : { fill: at.theme.ink }),
  } as Plot.TextOptions);
}
