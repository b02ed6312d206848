import * as Plot from "@observablehq/plot";
import type { PolicyScore } from "../../answers/replay/replay.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { valueAxis } from "../../ui/name-lines.ts";

const HEIGHT = 320, LEFT = 48, RIGHT = 20, ABOVE = 30, BELOW = 48, NARROWEST = 240;

/** A way of ordering for which both figures are known. */
interface Place { readonly score: PolicyScore; readonly x: number; readonly y: number; readonly low: number; readonly high: number }

const placesOf = (scores: readonly PolicyScore[]): Place[] => scores.flatMap((score) => {
  const { waited, stock_value_mean: stock } = score;
  return waited === null || stock === null ? [] : [{ score, x: stock.mean, y: waited.mean, low: waited.low, high: waited.high }];
});

/** Short enough to stand beside a dot. */
const wordOf = ({ policy }: PolicyScore): string => policy.replace("advised, running out", "out").replace(" from last year's mean", "");
const symbolOf = ({ score }: Place): string => (score.kind === "advice" ? "circle" : score.kind === "habit" ? "square" : "triangle");

/**
 * Jobs that waited against what lay on the shelf on average, one mark for each way of ordering: the further down and left, the
 * better. The levels of the advice are joined by a line; upright strokes show what eight draws of delivery times in ten lie
 * between.
 *
 * @returns null where fewer than two ways can be compared
 */
export function scoreChart(scores: readonly PolicyScore[], currency: string, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, locale } = sheet, width = Math.max(NARROWEST, sheet.width), places = placesOf(scores), room = width - LEFT - RIGHT;
  if (places.length < 2) return null;
  const least = Math.min(...places.map(({ x }) => x)), most = Math.max(...places.map(({ x }) => x)), span = Math.max(1, most - least);
  const advice = places.filter(({ score }) => score.kind === "advice").sort((a, b) => a.x - b.x), others = places.filter(({ score }) => score.kind !== "advice");
  const label = ({ score, y }: Place) => `${wordOf(score)}: ${number(y, 0, locale)}`;
  // Room at the left for the words of the leftmost dot, which stand there.
  const to = most + span * 0.1, words = Math.min(0.5, (labelWidth(advice.slice(0, 1).map(label), theme.font_size) + 14) / room), from = Math.max(0, (least - to * words) / (1 - words));
  const fits = (place: Place) => ((to - place.x) / (to - from)) * room > labelWidth([label(place)], theme.font_size) + 14;
  const name = (some: readonly Place[], anchor: "start" | "end", dy: number) => ["set", "level"].map((which) => Plot.text(some.filter(({ score }) => (score.policy === "as advised") === (which === "set")), {
    x: "x", y: "y", text: label, textAnchor: anchor, dx: anchor === "start" ? 10 : -10, dy, fill: theme.ink, fontWeight: which === "set" ? 600 : 400, stroke: theme.paper, strokeWidth: 5, className: `words-${which}`,
  }));
  /** The line of the advice falls to the right, so the room below and left of its dots is free; not so at its foot. */
  const foot = advice.slice(-1), along = advice.slice(0, -1);
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: LEFT, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [from, to] },
    y: { domain: [0, Math.max(...places.map(({ high }) => high)) * 1.12], nice: true },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 5 }),
      Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 5 }),
      valueAxis(`mean value on the shelf${currency === "" ? "" : `, ${currency}`}`, room, sheet),
      Plot.text(["jobs that waited"], { text: (one: string) => one, frameAnchor: "top-left", textAnchor: "start", dx: -LEFT + 4, dy: -18, fill: theme.soft, fontStyle: "italic" }),
      Plot.text(["better"], { text: () => "↙ better", frameAnchor: "bottom-left", textAnchor: "start", dx: 8, dy: -10, fill: theme.soft, fontStyle: "italic", className: "better" }),
      Plot.lineY(advice, { x: "x", y: "y", stroke: theme.accent, strokeWidth: 1.6, className: "advice-line" }),
      Plot.ruleX(places, { x: "x", y1: "low", y2: "high", stroke: theme.soft, strokeWidth: 1.3, className: "range" }),
      Plot.dot(others, { x: "x", y: "y", symbol: symbolOf as never, r: 5.5, fill: theme.paper, stroke: theme.ink, strokeWidth: 1.8, className: "habits" }),
      Plot.dot(advice, { x: "x", y: "y", r: ({ score }: Place) => (score.policy === "as advised" ? 6 : 4), fill: theme.accent, stroke: theme.paper, className: "advice" }),
      name(along, "end", 12), name(foot.filter(fits), "start", -8), name(foot.filter((one) => !fits(one)), "end", -30),
      name(others.filter(fits), "start", -9), name(others.filter((one) => !fits(one)), "end", -9),
    ],
    r: { type: "identity" },
    symbol: { type: "identity" } as never,
  });
}
