import { timeRatio } from "../../stats/life-figures.ts";
import { hasCurve, weibullLife } from "../../stats/weibull-life.ts";
import type { WeibullLife } from "../../stats/weibull-life.ts";
import { columnsOf, levelOf, NOT_WRITTEN, valueOf } from "./conditions.ts";
import type { LevelColumn } from "./conditions.ts";
import { failedOf, goodOf, lifeLinesOf, partsOf, telling } from "./life-lines-of.ts";
import { NO_LIMITS } from "./life-row.ts";
import type { WearLine } from "./wear-records.ts";
import type { WearEffect, WearStatus } from "./wear.ts";
import { FEWEST } from "./wear-words.ts";

/** Life with all conditions at once; null with a status where there is none. */
export interface ConditionFit { readonly status: WearStatus; readonly fit: WeibullLife | null; readonly columns: readonly LevelColumn[] }

/** Fits the life by rinse, water, sealed and tier together, so that each is told beside the others held alike. */
export function conditionFit(lines: readonly WearLine[]): ConditionFit {
  const some = telling(lines), columns = columnsOf(lines);
  if (failedOf(some) < FEWEST + columns.length || goodOf(some) < FEWEST) return { status: failedOf(some) < FEWEST + columns.length ? "too few failures" : "too few good", fit: null, columns };
  const fit = weibullLife(lifeLinesOf(some, (line) => columns.map((column) => valueOf(line, column))));
  return hasCurve(fit) ? { status: fit.status, fit, columns } : { status: fit.status, fit: null, columns };
}

const noteOf = (level: string, reference: string, status: WearStatus, failed: number) => [
  `held against ${reference}`, level === NOT_WRITTEN ? "parts for which it is not written" : "",
  status === "separated" ? "with a weak prior, because a level never (or always) failed" : "", failed < FEWEST ? `under ${FEWEST} failures` : "",
].filter((part) => part !== "").join("; ");

/** Each level beside its reference. */
export function effectsOf(lines: readonly WearLine[], { status, fit, columns }: ConditionFit, position: string): readonly WearEffect[] {
  const some = telling(lines);
  return columns.map((column, j) => {
    const { condition, level, reference } = column, own = some.filter((line) => levelOf(line, condition) === level), ratio = fit && timeRatio(fit, j);
    return {
      position, condition, level, reference, n: partsOf(own), failed: failedOf(own), status, coefficient: ratio?.log ?? null, se: ratio?.se ?? null,
      time_ratio: ratio ? { value: ratio.value, low: ratio.low, high: ratio.high } : NO_LIMITS, note: noteOf(level, reference, status, failedOf(own)),
    };
  });
}

/** The columns' values under conditions asked for; a condition not asked for is taken at its reference. */
export function conditionsAt(columns: readonly LevelColumn[], asked: Readonly<Record<string, string | null>>): number[] {
  return columns.map(({ condition, level }) => Number((asked[condition] ?? null) === level));
}
