import * as Plot from "@observablehq/plot";
import type { Clock, GradePicture } from "../../answers/wear/wear.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { FEWEST_FOR_PERCENT, number } from "../../ui/format.ts";
import { valueAxis } from "../../ui/name-lines.ts";
import { UNITS } from "./wear-filters.ts";

/** Words of the grades 0…4, as on the bench's grade list. */
export const GRADES = ["as new", "light", "moderate", "heavy", "failed"] as const;
const TONES = [0.05, 0.18, 0.38, 0.64, 0.95] as const;
const HEIGHT = 300, LEFT = 52, ABOVE = 40, BELOW = 48, APART = 17;

interface Layer { readonly grade: number; readonly exposure: number; readonly from: number; readonly to: number }
interface Seen { readonly from: number; readonly to: number; readonly n: number; readonly at: readonly number[] }

/** Shares on top of one another, the worst grade at the foot. */
function layers(points: GradePicture["points"]): readonly Layer[] {
  return points.flatMap(({ exposure, shares }) => {
    let below = 0;
    return [...GRADES.keys()].reverse().map((grade) => {
      const from = below;
      below += shares[grade] ?? 0;
      return { grade, exposure, from, to: Math.min(1, below) };
    });
  });
}

/** Bounds between the grades as seen in bands of exposure; under ten inspected there are none. */
function seen(bands: GradePicture["bands"]): readonly Seen[] {
  return bands.map(({ from, to, counts }) => {
    const n = counts.reduce((sum, one) => sum + one, 0);
    const bounds = [4, 3, 2, 1].map((grade) => counts.slice(grade).reduce((sum, one) => sum + one, 0) / n);
    return { from, to, n, at: n < FEWEST_FOR_PERCENT ? [] : bounds };
  });
}

/** Names of the grades at the right end, moved apart where layers are thin; from the foot up. */
function names(last: readonly Layer[], pixels: number): readonly { word: string; y: number }[] {
  const step = APART / pixels, count = last.length;
  const wanted = last.map(({ grade, from, to }) => ({ word: GRADES[grade] ?? "", y: (from + to) / 2 }));
  let lowest = step / 2;
  return wanted.map(({ word, y }, at) => {
    const placed = Math.min(Math.max(y, lowest), 1 - step * (count - at - 0.5));
    lowest = placed + step;
    return { word, y: placed };
  });
}

/**
 * Share of each grade against exposure, stacked: fitted layers, the worst at the foot and darkest, with short strokes where
 * the bounds between grades were seen and the number inspected above.
 *
 * @returns null when the grades could not be fitted
 */
export function gradesChart(picture: GradePicture, clock: Clock, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, end = picture.points.at(-1)?.exposure ?? 0;
  if (picture.status !== "ok" || end <= 0) return null;
  const right = labelWidth(GRADES, theme.font_size) + 14, room = width - LEFT - right;
  const stacked = layers(picture.points), bands = seen(picture.bands).filter((one) => one.n > 0 && one.from < end);
  const strokes = bands.flatMap(({ from, to, at }) => at.map((y) => ({ from, to: Math.min(to, end), y })));
  const at_end = names(stacked.filter((one) => one.exposure === end), HEIGHT - ABOVE - BELOW);
  const wide = bands.filter((one) => ((Math.min(one.to, end) - one.from) / end) * room > 22);
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: LEFT, marginRight: right, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, end] },
    y: { percent: true, domain: [0, 100] },
    marks: [
      TONES.map((fillOpacity, grade) => Plot.areaY(stacked.filter((one) => one.grade === grade), {
        x: "exposure", y1: "from", y2: "to", fill: theme.accent, fillOpacity, stroke: theme.paper, strokeWidth: 1.2, className: "layers",
      })),
      Plot.ruleY(strokes, { y: "y", x1: "from", x2: "to", stroke: theme.paper, strokeWidth: 4.5 }),
      Plot.ruleY(strokes, { y: "y", x1: "from", x2: "to", stroke: theme.ink, strokeWidth: 1.6, className: "seen" }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 4, tickFormat: (tick: number) => `${number(tick, 0, locale)} %` }),
      valueAxis(`${UNITS[clock].many} since the part was fitted or last renewed`, room, sheet),
      Plot.text(wide, { x: (one: Seen) => (one.from + Math.min(one.to, end)) / 2, frameAnchor: "top", dy: -9, text: (one: Seen) => number(one.n, 0, locale), fill: theme.soft, className: "counts" }),
      Plot.text(["inspected"], { text: (one: string) => one, frameAnchor: "top-left", textAnchor: "start", dy: -28, fill: theme.soft, fontStyle: "italic" }),
      Plot.text(at_end, { frameAnchor: "right", y: "y", text: "word", textAnchor: "start", dx: 8, fill: theme.ink, className: "grades" }),
    ],
  });
}
