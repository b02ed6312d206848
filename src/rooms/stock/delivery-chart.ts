import * as Plot from "@observablehq/plot";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { ABOVE, BELOW, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";
import type { Delivery } from "./deliveries.ts";

const LINE = 42;

/** Words at the right of a line. */
function arrived(one: Delivery, locale?: string): string {
  const orders = `${number(one.arrivals, 0, locale)} arrived`;
  return one.observed_days === null ? `${orders}, too few` : `${number(one.observed_days, 0, locale)} days, ${orders}`;
}

/** Right end of the axis, in days. */
const latest = (known: readonly Delivery[]): number =>
  Math.ceil(Math.max(...known.map((one) => Math.max(one.high_days ?? 0, one.quoted_days ?? 0))) / 10) * 10 + 2;

/**
 * Days from order to arrival, a line for each supplier: the dot is the mean of what arrived, the line where about two orders
 * in three lie, the broken stroke what the supplier quotes.
 *
 * @returns null when nothing is known of any supplier
 */
export function deliveryChart(deliveries: readonly Delivery[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet;
  const known = deliveries.filter((one) => one.observed_days !== null || one.quoted_days !== null);
  if (known.length === 0) return null;
  const names = known.map((one) => one.supplier), words = (one: Delivery) => arrived(one, locale);
  const left = Math.min(labelWidth(names, theme.font_size) + 12, width * 0.36);
  const right = labelWidth(known.map(words), theme.font_size) + 14;
  const seen = known.filter((one) => one.observed_days !== null), quoted = known.filter((one) => one.quoted_days !== null);
  const y = "supplier";
  return Plot.plot({
    document: sheet.document, width, height: names.length * LINE + ABOVE + BELOW, figure: false,
    marginLeft: left, marginRight: right, marginTop: ABOVE, marginBottom: BELOW,
    x: { domain: [0, latest(known)] },
    y: { domain: names, axis: null, type: "band", padding: 0.5 },
    marks: [
      nameLines(names, left, theme),
      valueAxis("days from order to arrival", width - left - right, sheet),
      Plot.ruleY(seen, { y, x1: "low_days", x2: "high_days", stroke: theme.ink, strokeWidth: 1.5, className: "range" }),
      Plot.tickX(quoted, { x: "quoted_days", y, stroke: theme.ink, strokeDasharray: "2 2", strokeWidth: 1.6, insetTop: -2, insetBottom: -2, className: "quoted" }),
      Plot.text(quoted, { x: "quoted_days", y, text: () => "quoted", dy: -19, fill: theme.soft, fontStyle: "italic", className: "quoted-word" }),
      Plot.dot(seen, { x: "observed_days", y, r: 4.5, fill: theme.ink, className: "seen" }),
      figures(known, y, words, { dx: right, className: "counts", theme }),
    ],
  });
}
