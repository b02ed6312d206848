import type { Advice, AdviceQuestion } from "../../answers/wear/advice.ts";
import { keptWear } from "../../answers/wear/ask-kept-wear.ts";
import type { Wear, WearBeside, WearCurve, WearFilter, WearRow } from "../../answers/wear/wear.ts";
import type { Engine, Report } from "../../db/engine.ts";

/** Work that tells how far it is and can be called off. */
type Ask<T> = (signal: AbortSignal, report: Report) => Promise<T>;

/** The records as they are now; another version asks anew. */
export interface Shown { readonly engine: Engine; readonly version: number }

/** All positions. */
export const askWear = ({ engine, version }: Shown, filter: WearFilter): Ask<Wear> => (signal, report) => keptWear.wear(engine, version, filter, { signal, report });

/** The picture of one position. */
export const askCurve = ({ engine, version }: Shown, filter: WearFilter, position: string): Ask<WearCurve> =>
  (signal, report) => keptWear.curve(engine, version, filter, position, { signal, report });

/** What stands beside it. */
export const askBeside = ({ engine, version }: Shown, filter: WearFilter, overall: WearRow): Ask<WearBeside> =>
  (signal, report) => keptWear.beside(engine, version, filter, overall, { signal, report });

/** When a customer's reel should come in. */
export const askAdvice = ({ engine, version }: Shown, question: AdviceQuestion): Ask<Advice> =>
  (signal, report) => keptWear.advice(engine, version, question, { signal, report });
