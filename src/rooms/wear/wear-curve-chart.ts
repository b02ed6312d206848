import * as Plot from "@observablehq/plot";
import type { CurvePoint, RugMark, StepPoint, WearRow } from "../../answers/wear/wear.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { FEWEST_FOR_PERCENT, number } from "../../ui/format.ts";
import { valueAxis } from "../../ui/name-lines.ts";
import { UNITS } from "./wear-filters.ts";
import { likelyRange, withUnit } from "./wear-words.ts";

export interface WearPicture {
  readonly row: WearRow;
  readonly curve: readonly CurvePoint[];
  readonly steps: readonly StepPoint[];
  readonly rug: readonly RugMark[];
}

const HEIGHT = 360, LEFT = 58, RIGHT = 16, ABOVE = 62, BELOW = 48, FAILED_AT = -44, GOOD_AT = -24;
const BEYOND = "beyond the records";
/** Less than the margins leave nothing to draw in, as while a window is being folded away. */
const NARROWEST = 200;

/** Right end of the axis, and the top as a share: whatever lies inside the records fits. */
function ends({ row, curve, steps, rug }: WearPicture): { end: number; top: number } {
  const seen = Math.max(0, row.longest ?? 0, ...rug.map((one) => one.exposure), ...steps.map((one) => one.exposure));
  const end = Math.max(seen, ...curve.map((one) => one.exposure));
  const inside = curve.filter((one) => !one.beyond).map((one) => one.high);
  const most = Math.max(0.15, ...inside, ...steps.map((one) => one.observed));
  return { end: end > 0 ? end : 1, top: Math.min(1, Math.ceil(most * 10.3) / 10) };
}

/** Inspections above the picture: a cross a failed one, an open ring a good one, larger for more. */
function rugMarks(rug: readonly RugMark[], { theme }: ChartSheet): Plot.Markish[] {
  const most = Math.max(1, ...rug.map((one) => Math.max(one.good, one.failed)));
  const r = (n: number) => 2 + 4 * Math.sqrt(n / most);
  const failed = rug.filter((one) => one.failed > 0), good = rug.filter((one) => one.good > 0);
  const word = (text: string, dy: number) => Plot.text([text], {
    text: (one: string) => one, frameAnchor: "top-left", textAnchor: "end", dx: -12, dy: dy - 5, fill: theme.soft, fontStyle: "italic", className: "rug-word",
  });
  return [
    Plot.dot(failed, { x: "exposure", frameAnchor: "top", dy: FAILED_AT, symbol: "times", r: (one: RugMark) => r(one.failed), stroke: theme.ink, strokeWidth: 1.4, className: "rug-failed" }),
    Plot.dot(good, { x: "exposure", frameAnchor: "top", dy: GOOD_AT, r: (one: RugMark) => r(one.good), stroke: theme.soft, strokeWidth: 1, className: "rug-good" }),
    word("failed", FAILED_AT), word("good", GOOD_AT),
  ];
}

/** The part of the axis that no inspection reaches. */
function beyondShade(from: number | null, end: number, room: number, { theme }: ChartSheet): Plot.Markish[] {
  if (from === null || from >= end) return [];
  const fits = ((end - from) / end) * room > labelWidth([BEYOND], theme.font_size) + 8;
  return [
    Plot.rect([from], { x1: (one: number) => one, x2: () => end, fill: theme.rule, fillOpacity: 0.45, className: "beyond" }),
    Plot.ruleX([from], { stroke: theme.soft, strokeDasharray: "2 3" }),
    Plot.text([BEYOND], {
      text: (one: string) => one, ...(fits ? { x: () => from, textAnchor: "start", dx: 6 } : { x: () => end, textAnchor: "end", dx: -4 }),
      frameAnchor: "bottom", dy: -8, fill: theme.soft, fontStyle: "italic", stroke: theme.paper, strokeWidth: fits ? 0 : 4, className: "beyond-word",
    }),
  ];
}

/** Where one in ten has failed, with its range and a line down to the axis. */
function oneInTen(row: WearRow, end: number, { theme, locale }: ChartSheet): Plot.Markish[] {
  const { value, low, high, share } = row.b10;
  if (value === null) return [];
  const range = likelyRange(row.b10, locale), right = (high ?? value) < end * 0.55;
  const words = `1 in 10 by ${withUnit(value, row.clock, locale)}${range ? ` (${range})` : ""}`;
  return [
    Plot.ruleX([value], { y1: 0, y2: share, stroke: theme.ink, strokeDasharray: "3 3" }),
    Plot.ruleY([share], { x1: low ?? value, x2: high ?? end, stroke: theme.ink, strokeWidth: 2, className: "one-in-ten-range" }),
    Plot.dot([value], { x: (one: number) => one, y: () => share, r: 4.5, fill: theme.ink, stroke: theme.paper, className: "one-in-ten" }),
    Plot.text([words], {
      x: () => (right ? high ?? value : low ?? value), y: () => share, text: (one: string) => one, textAnchor: right ? "start" : "end", dx: right ? 9 : -9, dy: 1,
      fill: theme.ink, stroke: theme.paper, strokeWidth: 5, className: "one-in-ten-word",
    }),
  ];
}

/** Fitted curve with the range in which it plausibly lies, and the steps that assume no curve. */
function lines({ curve, steps }: WearPicture, top: number, { theme }: ChartSheet): Plot.Markish[] {
  const seen = curve.filter((one) => !one.beyond), after = curve.filter((one) => one.beyond && one.fitted <= top);
  const last = seen.at(-1);
  return [
    Plot.areaY(curve, { x: "exposure", y1: (one: CurvePoint) => Math.min(top, one.low), y2: (one: CurvePoint) => Math.min(top, one.high), fill: theme.accent, fillOpacity: 0.16, className: "range" }),
    Plot.lineY(steps, { x: "exposure", y: "observed", curve: "step-after", stroke: theme.ink, strokeWidth: 1.3, className: "steps" }),
    Plot.lineY(seen, { x: "exposure", y: "fitted", stroke: theme.accent, strokeWidth: 2.6, className: "fitted" }),
    Plot.lineY(last ? [last, ...after] : after, { x: "exposure", y: "fitted", stroke: theme.accent, strokeWidth: 1.6, strokeDasharray: "5 4", className: "fitted-beyond" }),
  ];
}

/**
 * Share failed against exposure: the fitted curve with its range, the steps that assume no curve, and above them every
 * inspection. What lies over the longest exposure seen is shaded.
 *
 * @returns null with under ten parts, or when there is nothing to draw
 */
export function wearCurveChart(picture: WearPicture, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { row, curve, steps, rug } = picture, { theme, locale } = sheet, width = Math.max(NARROWEST, sheet.width);
  if (row.n < FEWEST_FOR_PERCENT || (curve.length === 0 && steps.length === 0)) return null;
  const { end, top } = ends(picture), room = width - LEFT - RIGHT;
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: LEFT, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, end] },
    y: { percent: true, domain: [0, top * 100] },
    r: { type: "identity" },
    marks: [
      beyondShade(row.longest, end, room, sheet),
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 5 }),
      Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5, tickFormat: (tick: number) => `${number(tick, 0, locale)} %` }),
      valueAxis(`${UNITS[row.clock].many} since the part was fitted or last renewed`, room, sheet),
      lines(picture, top, sheet), oneInTen(row, end, sheet), rugMarks(rug, sheet),
      Plot.text(["share failed"], { text: (one: string) => one, frameAnchor: "top-left", textAnchor: "start", dx: 2, dy: -6, fill: theme.soft, fontStyle: "italic" }),
    ],
  });
}
