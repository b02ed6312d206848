import { departingLife } from "../../stats/departing-life.ts";
import { pooledDepartures } from "../../stats/pooled-departures.ts";
import { grouped } from "../grouped.ts";
import { valueOf } from "./conditions.ts";
import type { ConditionFit } from "./effects.ts";
import { failedOf, lifeLinesOf, partsOf, telling } from "./life-lines-of.ts";
import type { WearLine } from "./wear-records.ts";
import type { ModelLife } from "./wear.ts";

/** How long the part lasts on each model beside all models under like conditions; thin models are drawn toward the rest. */
export function modelLives(lines: readonly WearLine[], { fit, columns }: ConditionFit): readonly ModelLife[] {
  if (!fit) return [];
  const models = [...grouped(telling(lines).filter(({ model }) => model !== null), ({ maker, model }) => `${maker ?? ""}\n${model ?? ""}`).values()];
  if (models.length < 2) return [];
  const { groups } = pooledDepartures(models.map((some) => departingLife(lifeLinesOf(some, (line) => columns.map((column) => valueOf(line, column))), fit)));
  return models.map((some, i) => {
    const { value, low, high } = groups[i] as (typeof groups)[number];
    return { maker: some[0]?.maker ?? null, model: some[0]?.model ?? "", n: partsOf(some), failed: failedOf(some), life_ratio: { value: Math.exp(value), low: Math.exp(low), high: Math.exp(high) } };
  }).sort((a, b) => (a.life_ratio.value ?? 0) - (b.life_ratio.value ?? 0) || (a.model < b.model ? -1 : 1));
}
