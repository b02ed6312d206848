import type { Report } from "../../db/engine.ts";
import { adviceOf } from "./advise.ts";
import type { Advice } from "./advice.ts";
import type { AdviceRecords } from "./advice-records.ts";
import { failedByNow } from "./failed-by-now.ts";
import type { Exposures, FailedByNow } from "./failed-by-now.ts";
import { wearOf } from "./all-wear.ts";
import type { WearMeans } from "./all-wear.ts";
import { pageOf } from "./wear-page.ts";
import type { PageRecords, WearRecords } from "./wear-records.ts";
import type { Wear, WearPage } from "./wear.ts";

/** What can be worked out from records already counted; each kind with what it needs and what it gives. */
export interface WearWork {
  wear: { records: WearRecords; answer: Wear };
  page: { records: PageRecords; answer: WearPage };
  advice: { records: AdviceRecords; answer: Advice };
  now: { records: { readonly records: AdviceRecords; readonly exposures: Exposures }; answer: readonly FailedByNow[] };
}
export type WearKind = keyof WearWork;
/** Does the work of one kind, here or in a worker. */
export type DoWork = <Kind extends WearKind>(kind: Kind, records: WearWork[Kind]["records"], means: WearMeans) => Promise<WearWork[Kind]["answer"]>;

type Ask = { [Kind in WearKind]: { kind: Kind; records: WearWork[Kind]["records"] } }[WearKind];
type Answer = { kind: "progress"; progress: Parameters<Report>[0] } | { kind: "done"; answer: unknown } | { kind: "failed"; error: unknown };

const WORK: { [Kind in WearKind]: (records: WearWork[Kind]["records"], means: WearMeans) => Promise<WearWork[Kind]["answer"]> } = { wear: wearOf, page: pageOf, advice: adviceOf, now: failedByNow };

/** The work on this thread: in Node, in tests, and in the worker itself. */
export const workHere: DoWork = (kind, records, means) => WORK[kind](records, means);

/** The worker's end: one piece of work as asked. A cancel ends the worker itself. */
export function answerWear(scope: DedicatedWorkerGlobalScope): void {
  const send = (answer: Answer) => scope.postMessage(answer);
  scope.addEventListener("message", ({ data }: MessageEvent<Ask>) => {
    const work = WORK[data.kind] as (records: unknown, means: WearMeans) => Promise<unknown>;
    work(data.records, { report: (progress) => send({ kind: "progress", progress }) })
      .then((answer) => send({ kind: "done", answer }), (error: unknown) => send({ kind: "failed", error }));
  });
}

/** The page's end. When it rejects, the worker's state is unknown and it must be ended. */
export function workOver(worker: Worker, ask: { kind: WearKind; records: unknown }, { signal, report }: WearMeans): Promise<unknown> {
  const listening = new AbortController(), on = { signal: listening.signal };
  return new Promise<unknown>((resolve, reject) => {
    signal?.addEventListener("abort", () => reject(signal.reason), on);
    worker.addEventListener("error", (event) => reject(new Error("The part that works out wear has stopped.", { cause: event.error ?? event.message })), on);
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      if (data.kind === "progress") report?.(data.progress);
      if (data.kind === "done") resolve(data.answer);
      if (data.kind === "failed") reject(data.error);
    }, on);
    worker.postMessage(ask);
  }).finally(() => listening.abort());
}
