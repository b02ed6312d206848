import type { Advice, AdviceQuestion } from "../../answers/wear/advice.ts";
import { advise, allWear, wearPage } from "../../answers/wear/ask-wear.ts";
import type { Wear, WearFilter, WearPage } from "../../answers/wear/wear.ts";
import { workInWorker as work } from "../../answers/wear/work-in-worker.ts";
import type { Engine, Report } from "../../db/engine.ts";

/** Work that tells how far it is and can be called off. */
type Ask<T> = (signal: AbortSignal, report: Report) => Promise<T>;

/** All positions. */
export const askWear = (engine: Engine, filter: WearFilter): Ask<Wear> => (signal, report) => allWear(engine, filter, { signal, report, work });

/** One position. */
export const askPage = (engine: Engine, filter: WearFilter, position: string): Ask<WearPage> =>
  (signal, report) => wearPage(engine, filter, position, { signal, report, work });

/** When a customer's reel should come in. */
export const askAdvice = (engine: Engine, question: AdviceQuestion): Ask<Advice> =>
  (signal, report) => advise(engine, question, { signal, report, work });
