import { failedBy, lifeAt, shapeOf, shareFailedBy } from "../../stats/life-figures.ts";
import type { LifeFigure } from "../../stats/life-figures.ts";
import type { WeibullLife } from "../../stats/weibull-life.ts";
import { keptWith } from "../kept-with.ts";
import type { AdvicePosition, AdviceQuestion } from "./advice.ts";
import { levelOf } from "./conditions.ts";
import { conditionFit, conditionsAt } from "./effects.ts";
import { failedOf, longestOf, partsOf, telling } from "./life-lines-of.ts";
import { fitOf, NO_LIMITS } from "./life-row.ts";
import { modelLives } from "./model-lives.ts";
import type { PlaceName, WearLine } from "./wear-records.ts";
import type { Clock, Limits } from "./wear.ts";

/** When a position of the reel asked for passes the risk, and what share has failed by any exposure, with and without limits; null where nothing can be said. */
export interface PositionDue { readonly found: AdvicePosition; readonly failed_by: ((exposure: number) => LifeFigure) | null; readonly share_by: ((exposure: number) => number) | null }

/** What hangs on the lines alone and not on the reel asked for. */
const fitOfAll = keptWith((lines: readonly WearLine[]) => fitOf(lines)), conditionsOfAll = keptWith(conditionFit), tellingOf = keptWith(telling);
const livesOfAll = keptWith((lines: readonly WearLine[]) => modelLives(lines, conditionsOfAll(lines)));

/** Reels like the one asked for, as far as the question says. */
const like = (lines: readonly WearLine[], { water, rinse, model, maker }: AdviceQuestion) => lines.filter((line) =>
  (water === null || line.water === water) && (rinse === null || line.rinse === rinse) && (model === null || (line.model === model && (maker === null || line.maker === maker))));

/** Sealed or not, and tier, of the model asked for; without a model the reels' own mix is not known and the reference is taken. */
function conditionsOf(lines: readonly WearLine[], { water, rinse, model }: AdviceQuestion): Record<string, string | null> {
  const of_model = model === null ? undefined : lines.find((line) => line.model === model);
  return { water, rinse, sealed: of_model ? levelOf(of_model, "sealed") : null, tier: of_model ? levelOf(of_model, "tier") : null };
}

/** Life with conditions where they can be told; without them, from reels exactly like it where there are enough, else from all. */
function lifeFor(lines: readonly WearLine[], question: AdviceQuestion): { fit: WeibullLife; x: number[]; ratio: number } | null {
  const conditions = conditionsOfAll(lines), asked = question.water !== null || question.rinse !== null || question.model !== null;
  if (conditions.fit && asked) {
    const life = question.model === null ? undefined : livesOfAll(lines).find(({ model, maker }) => model === question.model && (question.maker === null || maker === question.maker));
    return { fit: conditions.fit, x: conditionsAt(conditions.columns, conditionsOf(lines, question)), ratio: life?.life_ratio.value ?? 1 };
  }
  const own = fitOf(like(lines, question)), all = own.status === "ok" ? own : fitOfAll(lines);
  return all.fit && (all.status === "ok" || all.status === "separated") ? { fit: all.fit, x: [], ratio: 1 } : null;
}

const times = ({ value, low, high }: Limits, factor: number): Limits => ({ value: value && value * factor, low: low && low * factor, high: high && high * factor });

/**
 * A part that fails ever more seldom with the clock gains nothing by coming in after so much of it. By the calendar, where reels fished unlike
 * much are mixed, a shape under 1 is enough; by days it takes one that is beyond chance.
 */
function noWear(fit: WeibullLife, clock: Clock): boolean {
  if (fit.shape >= 1 || clock === "months") return fit.shape < 1;
  const { high } = shapeOf(fit);
  return high !== null && high < 1;
}

export interface DueMeans { readonly question: AdviceQuestion; readonly clock: Clock; readonly place: PlaceName }

/** When one position passes the risk. */
export function positionDue(lines: readonly WearLine[], { question, clock, place }: DueMeans): PositionDue {
  const some = tellingOf(lines), own = like(some, question), life = lifeFor(some, question), longest = longestOf(own);
  const base = { position: place.position, position_name: place.name, clock, longest, n: partsOf(own), failed: failedOf(own) };
  if (!life || longest === null) return { found: { ...base, due: NO_LIMITS, status: "too few" }, failed_by: null, share_by: null };
  const { fit, x, ratio } = life, failed_by = (exposure: number) => failedBy(fit, exposure / ratio, x), share_by = (exposure: number) => shareFailedBy(fit, exposure / ratio, x);
  if (noWear(fit, clock)) return { found: { ...base, due: NO_LIMITS, status: "no wear" }, failed_by, share_by };
  const due = times(lifeAt(fit, question.risk, x), ratio), inside = due.value !== null && due.value <= longest;
  return {
    found: { ...base, due: inside ? { ...due, high: due.high !== null && due.high <= longest ? due.high : null } : { ...NO_LIMITS, low: due.low !== null && due.low <= longest ? due.low : null }, status: inside ? "ok" : "beyond the records" },
    failed_by, share_by,
  };
}
