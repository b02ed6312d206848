import * as Plot from "@observablehq/plot";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { number, percent } from "../../ui/format.ts";
import { apart } from "../../ui/apart.ts";

/** A dot of a funnel: what it is called, how often it was looked at, and how high it stands. */
export interface FunnelDot {
  readonly name: string;
  readonly across: number;
  readonly up: number;
  /** The one the page is about; drawn large and always named. */
  readonly chosen: boolean;
  /** Carries a word that asks for the eye: filled in the colour of attention. */
  readonly worrying: boolean;
}
/** Limits chance alone would keep at one place across. */
export interface FunnelEdge {
  readonly across: number;
  readonly low95: number;
  readonly high95: number;
  readonly low998: number;
  readonly high998: number;
}
export interface FunnelPicture {
  readonly dots: readonly FunnelDot[];
  readonly edges: readonly FunnelEdge[];
  /** Height of the line all together stand on, and its name. */
  readonly common: number;
  readonly common_name: string;
  readonly across_label: string;
  readonly up_label: string;
  /** True where heights are shares, false where they are times as often. */
  readonly shares: boolean;
}

const HEIGHT = 340, LINE = 17;

/** The edge in force at a place across: the nearest one known. */
const edgeAt = (edges: readonly FunnelEdge[], across: number): FunnelEdge | undefined =>
  edges.reduce<FunnelEdge | undefined>((best, edge) => (best && Math.abs(best.across - across) <= Math.abs(edge.across - across) ? best : edge), undefined);

/** True for a dot that chance alone would put there for one model in twenty at most. */
export function outside(dot: FunnelDot, edges: readonly FunnelEdge[]): boolean {
  const edge = edgeAt(edges, dot.across);
  return edge !== undefined && (dot.up > edge.high95 || dot.up < edge.low95);
}

/** Highest value on the axis: a little over the highest dot, and over the limits from where they have come down. */
function top({ dots, edges, common }: FunnelPicture): number {
  const most = Math.max(...dots.map(({ across }) => across)), tame = edges.filter(({ across }) => across >= most / 6).map(({ high998 }) => high998);
  return Math.max(common * 1.6, ...dots.map(({ up }) => up), Math.min(...tame, Infinity) === Infinity ? 0 : Math.max(...tame)) * 1.06;
}

/** Names of dots, one under the other where they would touch. */
function named(picture: FunnelPicture, ceiling: number, right: number, sheet: ChartSheet): Plot.Markish[] {
  const { theme, width } = sheet, most = Math.max(...picture.dots.map(({ across }) => across));
  const list = picture.dots.filter((dot) => dot.chosen || outside(dot, picture.edges)).map((dot) => {
    const long = labelWidth([dot.name], theme.font_size) + 12, x = 52 + (dot.across / (most * 1.04)) * (width - 52 - right);
    return { dot, left: x + long > width - 4, y: HEIGHT - 46 - (dot.up / ceiling) * (HEIGHT - 46 - 22) };
  });
  const moved = apart(list.map(({ y }) => y), LINE);
  return list.map(({ dot, left, y }, i) => Plot.text([dot], {
    x: "across", y: "up", text: "name", dx: left ? -9 : 9, dy: (moved[i] ?? y) - y, textAnchor: left ? "end" : "start",
    fill: theme.ink, fontWeight: dot.chosen ? 600 : 400, stroke: theme.paper, strokeWidth: 4, className: "named",
  }));
}

/** One pair of limits; `wide` is the outer one. */
function limits(edges: readonly FunnelEdge[], wide: boolean, ceiling: number, { theme }: ChartSheet): Plot.Markish[] {
  const line = (key: "low95" | "high95" | "low998" | "high998") => Plot.lineY(edges, {
    x: "across", y: (edge: FunnelEdge) => (edge[key] > ceiling ? NaN : edge[key]), stroke: theme.soft, strokeWidth: wide ? 1.1 : 1, className: wide ? "limit wide" : "limit",
    ...(wide ? {} : { strokeDasharray: "5 3" }),
  });
  return wide ? [line("low998"), line("high998")] : [line("low95"), line("high95")];
}

/**
 * A funnel: each dot by how often it was looked at and how high it stands, between the limits chance alone would keep.
 * Inside the dashed lines lie nineteen of twenty when all are alike, inside the outer ones nearly all. Those outside are
 * named.
 *
 * @returns null without a dot
 */
export function funnelChart(picture: FunnelPicture, sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet, { dots, edges, common, shares } = picture;
  if (dots.length === 0) return null;
  const ceiling = Math.min(shares ? 1 : Infinity, top(picture)), most = Math.max(...dots.map(({ across }) => across)), right = 20;
  const far = edges, percents = (tick: number) => percent(tick, locale), times = (tick: number) => number(tick, tick % 1 === 0 ? 0 : 1, locale);
  const round = (list: readonly FunnelDot[], fill: string, className: string) => Plot.dot(list, {
    x: "across", y: "up", r: (dot: FunnelDot) => (dot.chosen ? 7 : 4.5), fill, stroke: theme.ink, strokeWidth: 1.3, className,
  });
  return Plot.plot({
    document: sheet.document, width, height: HEIGHT, figure: false, marginLeft: 52, marginRight: right, marginTop: 22, marginBottom: 46,
    x: { domain: [0, most * 1.04], clamp: true }, y: { domain: [0, ceiling] }, r: { type: "identity" },
    marks: [
      Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: picture.across_label, labelAnchor: "left", labelArrow: "none", labelOffset: 38, ticks: Math.max(3, Math.min(8, width / 110)), tickFormat: (tick: number) => number(tick, 0, locale) }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: picture.up_label, labelArrow: "none", ticks: 5, tickFormat: shares ? percents : times }),
      limits(far, true, ceiling, sheet), limits(far, false, ceiling, sheet),
      Plot.ruleY([common], { stroke: theme.ink, strokeWidth: 1, strokeDasharray: "1 3" }),
      Plot.text([common], { y: (one: number) => one, text: () => picture.common_name, frameAnchor: "right", textAnchor: "end", dy: -8, fill: theme.soft, fontStyle: "italic", stroke: theme.paper, strokeWidth: 4, className: "common" }),
      round(dots.filter((dot) => !dot.worrying), theme.paper, "dots"),
      round(dots.filter((dot) => dot.worrying), theme.attention, "dots worrying"),
      named(picture, ceiling, right, sheet),
    ],
  });
}
