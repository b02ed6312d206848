import * as Plot from "@observablehq/plot";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { minutes, number } from "../../ui/format.ts";
import { ABOVE, BELOW, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";

/** One line of the strip chart: minutes at the bench. */
export interface MinutesLine {
  readonly name: string;
  readonly n: number;
  /** Single jobs, or for long records an even sample of them, shortest first. */
  readonly ticks: readonly number[];
  readonly median: number | null;
  /** Minutes within which four jobs in five are done. */
  readonly p80: number | null;
}

const LINE = 30, RIGHT = 232;

/** Right end of the axis: nearly all strokes and every four-in-five mark fit; single endless jobs run off the paper. */
function longest(lines: readonly MinutesLine[]): number {
  const ends = lines.map((one) => Math.max(one.ticks[Math.floor(one.ticks.length * 0.96)] ?? 0, one.p80 ?? 0, one.median ?? 0));
  return Math.max(30, Math.ceil(Math.max(...ends) / 30) * 30);
}

/** Usual time, four in five and number of jobs, each under its heading. */
function columns(lines: readonly MinutesLine[], { theme, locale }: ChartSheet): Plot.Markish[] {
  const all: readonly (readonly [string, number, (one: MinutesLine) => string])[] = [
    ["usual", 76, (one) => minutes(one.median, locale)],
    ["4 in 5 within", 172, (one) => minutes(one.p80, locale)],
    ["jobs", RIGHT - 4, (one) => number(one.n, 0, locale)],
  ];
  return all.flatMap(([head, dx, text]) => [
    Plot.text([head], { text: (one: string) => one, frameAnchor: "top-right", textAnchor: "end", dx, dy: -16, fill: theme.soft, fontStyle: "italic", className: "heads" }),
    figures(lines, "name", text, { dx, className: "figures", theme }),
  ]);
}

/**
 * Minutes of every job, a line for each kind of job: thin strokes are jobs, the dot the usual time, the tall stroke the time
 * within which four in five are done.
 *
 * @returns null when no line is given
 */
export function minutesChart(lines: readonly MinutesLine[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width } = sheet;
  if (lines.length === 0) return null;
  const names = lines.map((one) => one.name), end = longest(lines);
  const left = Math.min(labelWidth(names, theme.font_size) + 12, width * 0.36);
  const jobs = lines.flatMap((one) => one.ticks.filter((tick) => tick <= end).map((tick) => ({ name: one.name, tick })));
  const usual = lines.filter((one) => one.median !== null), in_five = lines.filter((one) => one.p80 !== null);
  return Plot.plot({
    document: sheet.document, width, height: names.length * LINE + ABOVE + BELOW, figure: false,
    marginLeft: left, marginRight: RIGHT, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, end] },
    y: { domain: names, axis: null, type: "band", padding: 0.45 },
    marks: [
      nameLines(names, left, theme),
      valueAxis("minutes at the bench", width - left - RIGHT, sheet),
      Plot.tickX(jobs, { x: "tick", y: "name", stroke: theme.accent, strokeOpacity: 0.5, className: "jobs" }),
      Plot.tickX(in_five, { x: "p80", y: "name", stroke: theme.ink, strokeWidth: 2.5, insetTop: -4, insetBottom: -4, className: "four-in-five" }),
      Plot.dot(usual, { x: "median", y: "name", r: 4.5, fill: theme.ink, stroke: theme.paper, className: "usual" }),
      columns(lines, sheet),
    ],
  });
}
