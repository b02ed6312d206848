import * as Plot from "@observablehq/plot";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { ABOVE, BELOW, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";

/** One part on one of the two models; shares null where too few were inspected. */
export interface TwoModelsMark {
  readonly part: string;
  readonly first: boolean;
  readonly share: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Behind the line, as "12 of 340". */
  readonly counts: string;
}

const LINE = 44, APART = 9;

/**
 * Two models part by part: filled dot the first, open dot the second, each with the range its share plausibly lies in and
 * its counts.
 *
 * @returns null without a mark
 */
export function twoModelsChart(marks: readonly TwoModelsMark[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  if (marks.length === 0) return null;
  const { theme, width, locale } = sheet, parts = [...new Set(marks.map(({ part }) => part))];
  const left = Math.min(labelWidth(parts, theme.font_size) + 12, width * 0.4), right = labelWidth(marks.map(({ counts }) => counts), theme.font_size) + 10;
  const highest = Math.min(1, Math.max(0.04, ...marks.map(({ high }) => high ?? 0)) * 1.04);
  const set = (first: boolean): Plot.Markish[] => {
    const of = marks.filter((mark) => mark.first === first), seen = of.filter(({ share }) => share !== null), dy = first ? -APART : APART;
    return [
      Plot.ruleY(seen, { y: "part", x1: "low", x2: "high", dy, stroke: theme.ink, strokeWidth: 1.5, className: "range" }),
      Plot.dot(seen, { x: "share", y: "part", dy, r: 4.5, stroke: theme.ink, strokeWidth: 1.6, fill: first ? theme.ink : theme.paper, className: first ? "first" : "second" }),
      figures(of, "part", ({ counts }: TwoModelsMark) => counts, { dx: right, dy, className: "counts", theme }),
    ];
  };
  return Plot.plot({
    document: sheet.document, width, height: parts.length * LINE + ABOVE + BELOW, figure: false, marginLeft: left, marginRight: right, marginTop: 4, marginBottom: BELOW,
    x: { percent: true, domain: [0, highest * 100] }, y: { domain: parts, axis: null, type: "point", padding: 0.5 },
    marks: [
      nameLines(parts, left, theme),
      valueAxis("share failed, of inspected", width - left - right, sheet, (tick) => `${number(tick, 0, locale)} %`), set(true), set(false),
    ],
  });
}
