import type { Funnel } from "../../answers/failure-pages/pages.ts";
import { sideOf, type Verdict } from "../../answers/failures/verdict.ts";
import type { Opening } from "../../answers/filter.ts";
import { modelName } from "../../answers/model-name.ts";
import { funnelLimits } from "../../stats/funnel-limits.ts";
import { FEWEST_FOR_PERCENT, percent } from "../../ui/format.ts";
import type { FunnelEdge, FunnelPicture } from "./funnel-chart.ts";
import { worrying } from "./verdict-words.ts";

/** One dot a model: share failed against how often it was inspected. `chosen` names the model of the page. */
export function modelsFunnel(funnel: Funnel, chosen = "", locale?: string): FunnelPicture {
  const dots = funnel.points.filter(({ inspected }) => inspected >= FEWEST_FOR_PERCENT).map((point) => ({
    name: modelName(point), across: point.inspected, up: point.share, chosen: modelName(point) === chosen, worrying: worrying(point.word),
  }));
  return {
    dots, edges: funnel.limits.map(({ inspected, ...limits }) => ({ across: inspected, ...limits })), common: funnel.common,
    common_name: `all models ${percent(funnel.common, locale)}`, across_label: `times inspected${funnel.opening === "planned" ? ", planned services" : ""}`, up_label: "share failed", shares: true,
  };
}

/** Trials so many that their count of failures is as good as Poisson's. */
const MANY = 4000;

/** Where chance alone would keep a ratio of seen to expected, for a rising number expected. */
function ratioEdges(most: number): FunnelEdge[] {
  const steps = 60, first = 0.5;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const across = first * (Math.max(most, 1) / first) ** (i / steps), ratio = (share: number) => (share * MANY) / across;
    const [low95, high95] = funnelLimits(MANY, across / MANY, 0.95), [low998, high998] = funnelLimits(MANY, across / MANY, 0.998);
    return { across, low95: ratio(low95), high95: ratio(high95), low998: ratio(low998), high998: ratio(high998) };
  });
}

/**
 * One dot a part of one model: how many times as often it failed as on the other models, against the failures to expect if
 * it failed as theirs do. Parts under ten inspected, or that never failed on the others, have no dot.
 */
export function partsFunnel(verdicts: readonly Verdict[], opening: Opening): FunnelPicture {
  const dots = verdicts.flatMap((verdict) => {
    const { inspected, failed, others_inspected, others_failed } = sideOf(verdict, opening);
    if (inspected < FEWEST_FOR_PERCENT || others_failed === 0) return [];
    const across = (inspected * others_failed) / others_inspected;
    return across < 0.5 ? [] : [{ name: verdict.position_name, across, up: failed / across, chosen: false, worrying: worrying(verdict.word) }];
  });
  return {
    dots, edges: dots.length === 0 ? [] : ratioEdges(1.04 * Math.max(...dots.map(({ across }) => across))), common: 1, common_name: "as often as on the others",
    across_label: "failures to expect at the other models' rate", up_label: "times as often as on the others", shares: false,
  };
}
