import * as Plot from "@observablehq/plot";
import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { FEWEST_FOR_PERCENT, number, percent } from "../../ui/format.ts";
import { ABOVE, BELOW, BARE, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";

export interface Shares {
  /** One or two rows (planned, complaint) for each name, in the order to draw. */
  readonly rows: readonly FailureRate[];
  /** What stands at the left of a line, its model or its position; rows of one name share the line. */
  readonly name: (row: FailureRate) => string;
  /** Words behind the counts, such as "stands out". */
  readonly remark?: (row: FailureRate) => string;
  /** Share of all models together, drawn as a dashed line. */
  readonly all_models?: number | null;
}

type Opening = FailureRate["opening"];
const OPENINGS: readonly Opening[] = ["planned", "complaint", "*"];
const LINE = 27, APART = 18;

/** Words behind the counts: why there is no dot, else the caller's. */
const remarkOf = (row: FailureRate, remark: Shares["remark"]): string =>
  row.inspected < FEWEST_FOR_PERCENT ? "too few to say" : remark?.(row) ?? "";

/** Right end of the axis in per cent: a round share a little beyond the longest line. */
function highest(rows: readonly FailureRate[]): number {
  const most = Math.max(0.04, ...rows.map((row) => row.rate_high ?? 0)) * 104;
  const step = most > 50 ? 10 : most > 20 ? 5 : 2;
  return Math.min(100, Math.ceil(most / step) * step);
}

/** Dots and lines of one opening, `dy` pixels off the middle of their lines. */
function dotsAndLines(rows: readonly FailureRate[], opening: Opening, name: Shares["name"], dy: number, theme: ChartSheet["theme"]): Plot.Markish[] {
  const seen = rows.filter((row) => row.rate !== null);
  return [
    Plot.ruleY(seen, { y: name, x1: "rate_low", x2: "rate_high", stroke: theme.ink, strokeWidth: 1.5, dy, className: "range" }),
    Plot.dot(seen, {
      x: "rate", y: name, dy, r: 4.5, symbol: opening === "*" ? "diamond2" : "circle", stroke: theme.ink, strokeWidth: 1.6,
      fill: opening === "complaint" ? theme.paper : theme.ink, className: `seen ${opening === "*" ? "all" : opening}`,
    }),
  ];
}

/** A dashed line at the share of all models together, named above it. */
function averageLine(average: number | null, { theme, locale }: ChartSheet): Plot.Markish[] {
  if (average === null) return [];
  return [
    Plot.ruleX([average], { stroke: theme.soft, strokeDasharray: "4 3" }),
    Plot.text([average], {
      x: (one: number) => one, text: () => `all models ${percent(average, locale)}`, frameAnchor: "top", dy: -16, dx: -3, textAnchor: "start",
      fill: theme.soft, fontStyle: "italic", className: "all-models",
    }),
  ];
}

/**
 * Share of failed among inspected, a line for each name: the dot is the share seen, the line where it plausibly lies.
 *
 * Filled dot: planned services. Open dot: came in with a complaint. Diamond: the two not told apart. Under ten inspected
 * there is neither dot nor line, only the counts.
 *
 * @returns null when no row is given
 */
export function sharesChart(shares: Shares, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { rows, name } = shares, { theme, width, locale } = sheet;
  if (rows.length === 0) return null;
  const average = shares.all_models ?? null, names = [...new Set(rows.map(name))], two = rows.length > names.length;
  const counts = (row: FailureRate) => `${number(row.failed, 0, locale)} of ${number(row.inspected, 0, locale)}`;
  const remark = (row: FailureRate) => remarkOf(row, shares.remark);
  const left = Math.min(labelWidth(names, theme.font_size) + 12, width * 0.4);
  const counted = labelWidth(rows.map(counts), theme.font_size) + 10, remarked = labelWidth(rows.map(remark), theme.font_size);
  const right = counted + (remarked > 0 ? remarked + 10 : 0);
  const marks = OPENINGS.flatMap((opening) => {
    const of = rows.filter((row) => row.opening === opening);
    const dy = !two || opening === "*" ? 0 : opening === "planned" ? -APART / 2 : APART / 2;
    return [
      dotsAndLines(of, opening, name, dy, theme),
      figures(of, name, counts, { dx: counted, dy, className: "counts", theme }),
      figures(of, name, remark, { dx: counted + 10, dy, anchor: "start", soft: true, className: "remark", theme }),
    ];
  });
  const above = average === null ? BARE : ABOVE;
  return Plot.plot({
    document: sheet.document, width, height: names.length * (LINE + (two ? APART : 0)) + above + BELOW, figure: false,
    marginLeft: left, marginRight: right, marginTop: above, marginBottom: BELOW,
    x: { percent: true, domain: [0, highest(rows)] },
    y: { domain: names, axis: null, type: "point", padding: 0.5 },
    marks: [
      nameLines(names, left, theme), averageLine(average, sheet),
      valueAxis("share failed, of inspected", width - left - right, sheet, (tick) => `${number(tick, 0, locale)} %`), marks,
    ],
  });
}
