import type { Engine } from "../../db/engine.ts";
import type { Advice, AdviceQuestion } from "./advice.ts";
import { adviceRecords } from "./advice-records.ts";
import type { WorkMeans } from "../worker-work.ts";
import { pageRecords, wearRecords } from "./wear-records.ts";
import { workHere } from "./wear-messages.ts";
import type { Exposures, FailedByNow } from "./failed-by-now.ts";
import type { DoWork } from "./wear-messages.ts";
import type { Wear, WearFilter, WearPage } from "./wear.ts";

/** `work`: where the fitting is done, `workInWorker` in the browser; here by default. */
export interface WearAsk extends WorkMeans { readonly work?: DoWork }

/** How long every position lasts, the soonest first. */
export async function allWear(engine: Engine, filter: WearFilter, { work = workHere, ...means }: WearAsk = {}): Promise<Wear> {
  return work("wear", await wearRecords(engine, filter, undefined, means), means);
}

/** Everything of one position: curve, steps, conditions, models, grades, and the same under other assumptions. */
export async function wearPage(engine: Engine, filter: WearFilter, position: string, { work = workHere, ...means }: WearAsk = {}): Promise<WearPage> {
  return work("page", await pageRecords(engine, filter, position, means), means);
}

/** When a reel should come in. */
export async function advise(engine: Engine, question: AdviceQuestion, { work = workHere, ...means }: WearAsk = {}): Promise<Advice> {
  return work("advice", await adviceRecords(engine, question, means), means);
}

/** What share of a reel's parts has failed by what it was fished. */
export async function wornByNow(engine: Engine, question: AdviceQuestion, exposures: Exposures, { work = workHere, ...means }: WearAsk = {}): Promise<readonly FailedByNow[]> {
  return work("now", { records: await adviceRecords(engine, question, means), exposures }, means);
}
