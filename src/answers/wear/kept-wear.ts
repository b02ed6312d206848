import type { KeptWork } from "../kept-desk.ts";
import type { WorkMeans } from "../worker-work.ts";
import { adviceOf } from "./advise.ts";
import type { Advice, AdviceQuestion } from "./advice.ts";
import { daysClock, kindOf } from "./advice-records.ts";
import type { PartCost, Year } from "./advice-records.ts";
import { wearOf } from "./all-wear.ts";
import { keptLines, linesFrom, linesName } from "./kept-lines.ts";
import type { KeptLines } from "./kept-lines.ts";
import { ALL_WEAR } from "./wear-records.ts";
import type { Asked, GradeRow, WearLine, WearRecords } from "./wear-records.ts";
import { wearBesideOf, wearCurveOf } from "./wear-page.ts";
import type { Clock, FirstSights, Wear, WearBeside, WearCurve, WearFilter, WearRow } from "./wear.ts";

/** What holds for every filter, as long as the records stay. */
export type AboutWear = Omit<WearRecords, "filter" | "lines"> & { readonly costs: readonly PartCost[] };

/** What a worker that keeps the lines of each clock is asked, and what it gives. */
export interface KeptWearWork {
  wear: { asked: { readonly filter: WearFilter }; answer: Wear };
  curve: { asked: { readonly filter: WearFilter; readonly position: string }; answer: WearCurve };
  beside: { asked: { readonly filter: WearFilter; readonly position: string; readonly overall: WearRow; readonly grades: readonly GradeRow[] }; answer: WearBeside };
  advice: { asked: { readonly question: AdviceQuestion; readonly year: Year }; answer: Advice };
}
export type KeptWearKind = keyof KeptWearWork;
export type AskedKeptWear = { [Kind in KeptWearKind]: { readonly kind: Kind; readonly about: AboutWear } & KeptWearWork[Kind]["asked"] }[KeptWearKind];

type Kept = (name: string) => KeptLines;
type Of<Kind extends KeptWearKind> = Extract<AskedKeptWear, { kind: Kind }>;

function recordsFrom(kept: Kept, filter: WearFilter, asked: Asked, { places, visits, linked_visits, contradicting_months }: AboutWear): WearRecords {
  return { filter, lines: linesFrom(kept(linesName(filter.clock)), filter, asked), places, visits, linked_visits, contradicting_months };
}

function besideFrom({ filter, position, overall, grades, about }: Of<"beside">, kept: Kept, means: WorkMeans): Promise<WearBeside> {
  const of = (first_sights: FirstSights) => recordsFrom(kept, { ...filter, first_sights }, { position, conditions: true }, about);
  const other_ways = (["planned", "all", "none"] as const).filter((way) => way !== filter.first_sights).map(of);
  return wearBesideOf({ ...of(filter.first_sights), position, other_ways, grades }, overall, means);
}

/** Sets of lines that are remembered: as many as somebody goes to and fro between. */
const MOST_SETS = 6;

/** The lines that advice was made from last: another water, rinsing or risk asks of the same, whose fits then stand already. */
class AdviceLines {
  #of: KeptLines | null = null;
  #known = new Map<string, readonly WearLine[]>();

  from(kept: KeptLines, clock: Clock, reel_kind: string | null, models: boolean): readonly WearLine[] {
    if (this.#of !== kept) [this.#of, this.#known] = [kept, new Map()];
    const key = JSON.stringify([reel_kind, models]), lines = this.#known.get(key) ?? linesFrom(kept, { ...ALL_WEAR, clock, reel_kind }, { position: null, conditions: true, models });
    this.#known.delete(key);
    this.#known.set(key, lines);
    for (const oldest of [...this.#known.keys()].slice(0, -MOST_SETS)) this.#known.delete(oldest);
    return lines;
  }
}
const advice_lines: Readonly<Record<Clock, AdviceLines>> = { salt_days: new AdviceLines(), use_days: new AdviceLines(), months: new AdviceLines() };

function adviceFrom({ question, year, about: { places, costs } }: Of<"advice">, kept: Kept, means: WorkMeans): Promise<Advice> {
  const days_clock = daysClock(question), kind = kindOf(question, year), models = question.model !== null;
  const lines = (clock: Clock) => advice_lines[clock].from(kept(linesName(clock)), clock, kind, models);
  return adviceOf({
    question, days_clock, places, costs, year,
    by_days: lines(days_clock), by_months: lines("months"),
  }, means);
}

/** Answers from lines that are kept: what the engine and `wear-messages.ts` together give for the same question. */
export const KEPT_WEAR: KeptWork<AskedKeptWear, KeptLines, KeptWearWork[KeptWearKind]["answer"]> = {
  unpack: (_, stream) => keptLines(stream),
  work: async (asked, kept, means) => {
    if (asked.kind === "wear") return wearOf(recordsFrom(kept, asked.filter, { position: null, conditions: false }, asked.about), means);
    if (asked.kind === "curve") return wearCurveOf({ ...recordsFrom(kept, asked.filter, { position: asked.position, conditions: true }, asked.about), position: asked.position }, means);
    return asked.kind === "beside" ? besideFrom(asked, kept, means) : adviceFrom(asked, kept, means);
  },
};
