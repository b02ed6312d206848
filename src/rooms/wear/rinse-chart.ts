import * as Plot from "@observablehq/plot";
import type { WearEffect, WearRow } from "../../answers/wear/wear.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number } from "../../ui/format.ts";
import { BARE, BELOW, figures, nameLines, valueAxis } from "../../ui/name-lines.ts";
import { UNITS } from "./wear-filters.ts";
import { exposure, likelyRange } from "./wear-words.ts";

const LINE = 46;
const SAID: Readonly<Record<string, string>> = { never: "never rinsed", sometimes: "sometimes rinsed", always: "always rinsed" };

const HABITS = ["never", "sometimes", "always"];

/** Rows of the rinsing habit, worst habit first. */
export const rinseRows = (groups: readonly WearRow[]): readonly WearRow[] =>
  HABITS.flatMap((habit) => groups.filter((row) => row.group === `rinse: ${habit}`));

/** What each habit does, worst first; parts for which none is written are left to the table. */
export const rinseEffects = (effects: readonly WearEffect[]): readonly WearEffect[] =>
  HABITS.flatMap((habit) => effects.filter((one) => one.condition === "rinse" && one.level === habit));

/** A rinsing habit as a customer would say it. */
export const rinseName = (row: WearRow): string => SAID[row.group.replace("rinse: ", "")] ?? row.group;

/** The figure at the right of a line: the value with its range, or why there is none. */
export function rinseFigure({ b10 }: WearRow, locale?: string): string {
  const range = likelyRange(b10, locale);
  if (b10.value !== null) return range ? `${exposure(b10.value, locale)} (${range})` : exposure(b10.value, locale);
  if (b10.beyond) return b10.low === null ? "beyond the records" : `over ${exposure(b10.low, locale)}`;
  return "too few to say";
}

const counts = (row: WearRow, locale?: string) => `${number(row.failed, 0, locale)} of ${number(row.n, 0, locale)}`;

/** Right end of the axis: every range that ends fits, and one without an end has room for its arrow. */
function longest(rows: readonly WearRow[]): number {
  const known = rows.map(({ b10 }) => Math.max(b10.high ?? 0, b10.value ?? 0, (b10.low ?? 0) * 1.3));
  return Math.max(1, ...known) * 1.06;
}

/**
 * Exposure by which one part in ten has failed, a line for each rinsing habit: the dot is the figure, the line where it
 * plausibly lies, an arrow a range whose end lies beyond the records.
 *
 * @returns null when no habit has a figure
 */
export function rinseChart(rows: readonly WearRow[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, [first] = rows;
  const known = rows.filter(({ b10 }) => b10.value !== null || b10.low !== null);
  if (!first || known.length === 0) return null;
  const names = rows.map(rinseName), end = longest(known), open = known.filter(({ b10 }) => b10.high === null);
  const left = labelWidth(names, theme.font_size) + 14;
  const counted = labelWidth([...rows.map((row) => counts(row, locale)), "failed"], theme.font_size);
  const told = labelWidth(rows.map((row) => rinseFigure(row, locale)), theme.font_size);
  const right = counted + told + 34;
  const above = BARE + 22;
  const low = ({ b10 }: WearRow) => b10.low ?? b10.value ?? 0, high = ({ b10 }: WearRow) => b10.high ?? end;
  const head = (text: string, dx: number) => Plot.text([text], {
    text: (one: string) => one, frameAnchor: "top-right", textAnchor: "end", dx, dy: -14, fill: theme.soft, fontStyle: "italic", className: "heads",
  });
  return Plot.plot({
    document: sheet.document, width, height: rows.length * LINE + above + BELOW, figure: false,
    marginLeft: left, marginRight: right, marginTop: above, marginBottom: BELOW,
    x: { domain: [0, end] },
    y: { domain: names, axis: null, type: "band", padding: 0.4 },
    marks: [
      nameLines(names, left, theme),
      valueAxis(`${UNITS[first.clock].many} until 1 in 10 has failed`, width - left - right, sheet),
      Plot.ruleY(known, { y: rinseName, x1: low, x2: high, stroke: theme.ink, strokeWidth: 2, className: "range" }),
      Plot.dot(open, { x: () => end, y: rinseName, symbol: "triangle", rotate: 90, r: 5, fill: theme.ink, className: "open-end" }),
      Plot.dot(known.filter(({ b10 }) => b10.value !== null), { x: ({ b10 }: WearRow) => b10.value, y: rinseName, r: 6, fill: theme.accent, stroke: theme.paper, strokeWidth: 1.5, className: "figure-dot" }),
      figures(rows, rinseName, (row) => rinseFigure(row, locale), { dx: told + 16, className: "counts", theme }),
      figures(rows, rinseName, (row) => counts(row, locale), { dx: right - 4, soft: true, className: "remark", anchor: "end", theme }),
      head(UNITS[first.clock].many, told + 16), head("failed", right - 4),
    ],
  });
}
