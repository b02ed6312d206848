import { packLines } from "../../stats/life-lines.ts";
import { pooledDepartures } from "../../stats/pooled-departures.ts";
import { weibullLikelihood } from "../../stats/weibull-likelihood.ts";
import type { WeibullLife } from "../../stats/weibull-life.ts";
import { grouped } from "../grouped.ts";
import { valueOf } from "./conditions.ts";
import type { ConditionFit } from "./effects.ts";
import { failedOf, lifeLinesOf, partsOf, telling } from "./life-lines-of.ts";
import type { WearLine } from "./wear-records.ts";
import type { ModelLife } from "./wear.ts";

/** Log-likelihood of some parts when they last e^departure times as long as the fit says. */
function departing(lines: readonly WearLine[], fit: WeibullLife, columns: ConditionFit["columns"]): (departure: number) => number {
  const packed = packLines(lifeLinesOf(lines, (line) => columns.map((column) => valueOf(line, column)))), { theta, shape } = fit;
  const a = (theta[0] as number) + shape * Math.log(packed.unit / fit.packed.unit);
  return (departure) => weibullLikelihood(packed, [a - shape * departure, ...theta.subarray(1)]).value;
}

/** How long the part lasts on each model beside all models under like conditions; thin models are drawn toward the rest. */
export function modelLives(lines: readonly WearLine[], { fit, columns }: ConditionFit): readonly ModelLife[] {
  if (!fit) return [];
  const models = [...grouped(telling(lines).filter(({ model }) => model !== null), ({ maker, model }) => `${maker ?? ""}\n${model ?? ""}`).values()];
  if (models.length < 2) return [];
  const { groups } = pooledDepartures(models.map((some) => departing(some, fit, columns)));
  return models.map((some, i) => {
    const { value, low, high } = groups[i] as (typeof groups)[number];
    return { maker: some[0]?.maker ?? null, model: some[0]?.model ?? "", n: partsOf(some), failed: failedOf(some), life_ratio: { value: Math.exp(value), low: Math.exp(low), high: Math.exp(high) } };
  }).sort((a, b) => (a.life_ratio.value ?? 0) - (b.life_ratio.value ?? 0) || (a.model < b.model ? -1 : 1));
}
