import type { Engine } from "../../db/engine.ts";
import type { AdviceQuestion } from "./advice.ts";
import type { WorkMeans } from "../worker-work.ts";
import costsSql from "./costs.sql?raw";
import { followParts } from "./follow-parts.ts";
import linesSql from "./lines.sql?raw";
import { ALL_WEAR } from "./wear-records.ts";
import type { PlaceName, WearLine } from "./wear-records.ts";
import placesSql from "../failures/places.sql?raw";
import type { Clock } from "./wear.ts";
import yearsSql from "./years.sql?raw";

export type PartCost = { readonly position: string; readonly criticality: string | null; readonly parts_cost: number | null; readonly minutes: number | null };
/** What reels like the one asked for are fished in a year: the middle of their visits; and the kind that most of them are. */
export type Year = { readonly reels: number; readonly reel_kind: string | null; readonly days: number | null };

export interface AdviceRecords {
  readonly question: AdviceQuestion;
  readonly days_clock: Clock;
  readonly by_days: readonly WearLine[];
  readonly by_months: readonly WearLine[];
  readonly places: readonly PlaceName[];
  readonly costs: readonly PartCost[];
  readonly year: Year;
}

/** In fresh water days fished count, else those in salt or brackish water. */
export const daysClock = ({ water }: AdviceQuestion): Clock => (water === "fresh" ? "use_days" : "salt_days");

/** Of how many reels like the one asked for a usual year is told, and how it is fished. */
export async function yearOf(engine: Engine, question: AdviceQuestion, signal?: AbortSignal): Promise<Year> {
  const { reel_kind, maker, model, water } = question;
  const [year = { reels: 0, reel_kind: null, days: null }] = await engine.rows<Year>(yearsSql, { clock: daysClock(question), reel_kind, maker, model, water }, signal);
  return year;
}

/** The kind of reel whose parts are counted: the one asked for, else a model's own. */
export const kindOf = ({ reel_kind, model }: AdviceQuestion, year: Year): string | null => reel_kind ?? (model === null ? null : year.reel_kind);

/** What the advice is made from: parts of all reels of the kind, a model's own kind included, so that a rare model leans on the others. */
export async function adviceRecords(engine: Engine, question: AdviceQuestion, means: WorkMeans = {}): Promise<AdviceRecords> {
  const { signal } = means, days_clock = daysClock(question);
  await followParts(engine, means);
  const year = await yearOf(engine, question, signal), of_kind = kindOf(question, year), lines = (clock: Clock) => engine.rows<WearLine>(linesSql, {
    clock, first_sights: ALL_WEAR.first_sights, position: null, conditions: true, models: question.model !== null, reel_kind: of_kind, maker: null, model: null, water: null, from_date: null, to_date: null,
  }, signal);
  return {
    question, days_clock, by_days: await lines(days_clock), by_months: await lines("months"),
    places: await engine.rows<PlaceName>(placesSql, {}, signal), costs: await engine.rows<PartCost>(costsSql, {}, signal), year,
  };
}
