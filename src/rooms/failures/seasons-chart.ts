import * as Plot from "@observablehq/plot";
import type { SeasonSide } from "../../answers/failures/verdict.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { labelWidth, type ChartSheet } from "../../ui/chart-sheet.ts";
import { FEWEST_FOR_PERCENT, number, percent } from "../../ui/format.ts";

interface Mark { readonly season: string; readonly share: number; readonly low: number; readonly high: number; readonly words: string }

/** A season's share with the range it plausibly lies in; nothing under ten inspected. */
function mark(season: number, failed: number, inspected: number, locale: string | undefined): Mark[] {
  if (inspected < FEWEST_FOR_PERCENT) return [];
  const [low, high] = shareInterval(failed, inspected);
  return [{ season: String(season), share: failed / inspected, low, high, words: `${number(failed, 0, locale)} of ${number(inspected, 0, locale)}` }];
}

/**
 * Season by season: filled dot the model, open dot the others, each with the range its share plausibly lies in.
 *
 * @returns null when no season has ten of the model inspected
 */
export function seasonsChart(seasons: readonly SeasonSide[], sheet: ChartSheet): SVGElement | HTMLElement | null {
  const { theme, width, locale } = sheet;
  const mine = seasons.flatMap((one) => mark(one.season, one.failed, one.inspected, locale));
  const others = seasons.flatMap((one) => mark(one.season, one.others_failed, one.others_inspected, locale));
  if (mine.length === 0) return null;
  const drawn = [...mine, ...others], room = Math.max(26, labelWidth(mine.map(({ words }) => words), theme.font_size) / 2 + 6);
  const set = (list: readonly Mark[], dx: number, fill: string, className: string): Plot.Markish[] => [
    Plot.ruleX(list, { x: "season", y1: "low", y2: "high", dx, stroke: theme.ink, strokeWidth: 1.4, className: "range" }),
    Plot.dot(list, { x: "season", y: "share", dx, r: 5, fill, stroke: theme.ink, strokeWidth: 1.4, className }),
    Plot.text(list, { x: "season", y: "share", dx: dx + (dx < 0 ? -10 : 10), textAnchor: dx < 0 ? "end" : "start", text: "words", fill: theme.ink, stroke: theme.paper, strokeWidth: 4, className: "counts" }),
  ];
  return Plot.plot({
    document: sheet.document, width: Math.min(width, 150 + 220 * seasons.length), height: 230, figure: false, marginLeft: 46, marginRight: room, marginTop: 14, marginBottom: 30,
    x: { type: "point", domain: seasons.map(({ season }) => String(season)), padding: 0.6 },
    y: { domain: [0, Math.min(1, Math.max(0.05, ...drawn.map(({ high }) => high)) * 1.05)] },
    marks: [
      Plot.gridY({ stroke: theme.rule, strokeOpacity: 1, strokeDasharray: "1 4", ticks: 4 }), Plot.ruleY([0], { stroke: theme.rule }),
      Plot.axisY({ color: theme.soft, tickSize: 0, label: null, ticks: 4, tickFormat: (tick: number) => percent(tick, locale) }),
      Plot.axisX({ color: theme.soft, tickSize: 4, label: null }),
      set(mine, -9, theme.ink, "mine"), set(others, 9, theme.paper, "others"),
    ],
  });
}
