import type { BenchLoad, Changed } from "../../answers/bench-load/bench-load.ts";
import { packedBench, type BenchSettings, type PackedBench } from "../../answers/bench-load/bench-records.ts";
import type { WhatIf } from "../../answers/bench-load/what-if.ts";
import { workInWorker } from "../../answers/bench-load/work-in-worker.ts";
import type { Engine, Report } from "../../db/engine.ts";

/** Work that tells how far it is and can be called off. */
export type Ask<T> = (signal: AbortSignal, report: Report) => Promise<T>;

/** The weeks ahead with the records they were worked out from, so that a change needs no second look into the engine. */
export interface LoadSheet { readonly records: PackedBench; readonly load: BenchLoad }

export const askLoad = (engine: Engine, as_of: string, settings: BenchSettings): Ask<LoadSheet> => async (signal, report) => {
  const records = await packedBench(engine, as_of, settings, signal);
  return { records, load: await workInWorker("load", records, { signal, report }) };
};

export const askChange = ({ records, load }: LoadSheet, what: WhatIf, currency: string): Ask<Changed> =>
  (signal, report) => workInWorker("change", { records, load, what, currency }, { signal, report });
