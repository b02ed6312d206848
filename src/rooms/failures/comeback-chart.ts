import * as Plot from "@observablehq/plot";
import type { CumulativePoint } from "../../answers/comebacks/comeback.ts";
import { apart } from "../../ui/apart.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";

export interface ComebackCurve {
  readonly name: string;
  readonly curve: readonly CumulativePoint[];
  /** The one the page is about; drawn with its limits. */
  readonly chosen: boolean;
}

const HEIGHT = 250, ABOVE = 22, BELOW = 46, LINE = 17;
const DAYS_A_MONTH = 365.25 / 12;
/** Beyond the age that so few reels have reached the curve says next to nothing. */
export const FEWEST_WATCHED = 5;
const told = ({ curve }: ComebackCurve): readonly CumulativePoint[] => curve.filter(({ at_risk }) => at_risk >= FEWEST_WATCHED);

/**
 * Failures a reel has had on average, by months since it was first seen here: a step for each failure, with limits around
 * the chosen curve. Where curves climb evenly failures come evenly; a curve that bends up says they come ever faster.
 *
 * @returns null when no curve has two points with five reels watched
 */
export function comebackChart(curves: readonly ComebackCurve[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, seen = curves.filter((one) => told(one).length >= 2);
  if (seen.length === 0) return null;
  const months = ({ age }: CumulativePoint) => age / DAYS_A_MONTH, step = "step-after" as const;
  const right = labelWidth(seen.map(({ name }) => name), theme.font_size) + 14;
  const last = Math.max(...seen.flatMap(told).map(months)), high = Math.max(...seen.flatMap((one) => told(one).map((point) => (one.chosen ? point.high : point.mean_cumulative))));
  const ceiling = Math.max(high, 0.05) * 1.05, ends = seen.map((one) => HEIGHT - BELOW - ((told(one).at(-1)?.mean_cumulative ?? 0) / ceiling) * (HEIGHT - BELOW - ABOVE));
  const places = apart(ends, LINE);
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: 46, marginRight: Math.min(right, width * 0.4), marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, last] }, y: { domain: [0, ceiling] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 4 }), Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: "months since the reel was first seen here", labelAnchor: "left", labelArrow: "none", labelOffset: 38, tickFormat: (tick: number) => number(tick, 0, locale) }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: "failures per reel so far", labelArrow: "none", ticks: 4, tickFormat: (tick: number) => number(tick, tick % 1 === 0 ? 0 : tick < 0.1 ? 2 : 1, locale) }),
      seen.filter(({ chosen }) => chosen).map((one) => Plot.areaY(told(one), { x: months, y1: "low", y2: "high", curve: step, fill: theme.accent, fillOpacity: 0.16, className: "limits" })),
      seen.map((one) => Plot.lineY(told(one), { x: months, y: "mean_cumulative", curve: step, stroke: one.chosen ? theme.accent : theme.ink, strokeWidth: one.chosen ? 2 : 1.2, className: "curve", ...(one.chosen ? {} : { strokeDasharray: "5 3" }) })),
      seen.map((one, at) => Plot.text(told(one).slice(-1), { x: months, y: "mean_cumulative", text: () => one.name, textAnchor: "start", dx: 6, dy: (places[at] ?? 0) - (ends[at] ?? 0), fill: theme.ink, fontWeight: one.chosen ? 600 : 400, className: "curve-name" })),
    ],
  });
}
