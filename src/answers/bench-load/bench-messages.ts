import type { BenchLoad, Changed } from "./bench-load.ts";
import type { BenchRecords } from "./bench-records.ts";
import type { Means } from "./simulate.ts";
import { benchLoadOf, changedLoadOf } from "./weeks-ahead.ts";
import type { WhatIf } from "./what-if.ts";

/** What can be worked out from records already counted; each kind with what it needs and what it gives. */
export interface BenchWork {
  load: { records: BenchRecords; answer: BenchLoad };
  change: { records: { records: BenchRecords; load: BenchLoad; what: WhatIf; currency: string }; answer: Changed };
}
export type BenchKind = keyof BenchWork;
/** Does the work of one kind, here or in a worker. */
export type DoBenchWork = <Kind extends BenchKind>(kind: Kind, records: BenchWork[Kind]["records"], means: Means) => Promise<BenchWork[Kind]["answer"]>;

type Ask = { [Kind in BenchKind]: { kind: Kind; records: BenchWork[Kind]["records"] } }[BenchKind];
type Answer = { kind: "progress"; progress: Parameters<NonNullable<Means["report"]>>[0] } | { kind: "done"; answer: unknown } | { kind: "failed"; error: unknown };

const WORK: { [Kind in BenchKind]: (records: BenchWork[Kind]["records"], means: Means) => Promise<BenchWork[Kind]["answer"]> } = { load: benchLoadOf, change: changedLoadOf };

/** The work on this thread: in Node, in tests, and in the worker itself. */
export const workHere: DoBenchWork = (kind, records, means) => WORK[kind](records, means);

/** The worker's end: one piece of work as asked. A cancel ends the worker itself. */
export function answerBench(scope: DedicatedWorkerGlobalScope): void {
  const send = (answer: Answer) => scope.postMessage(answer);
  scope.addEventListener("message", ({ data }: MessageEvent<Ask>) => {
    const work = WORK[data.kind] as (records: unknown, means: Means) => Promise<unknown>;
    work(data.records, { report: (progress) => send({ kind: "progress", progress }) })
      .then((answer) => send({ kind: "done", answer }), (error: unknown) => send({ kind: "failed", error }));
  });
}

/** The page's end. When it rejects, the worker's state is unknown and it must be ended. */
export function workOver(worker: Worker, ask: { kind: BenchKind; records: unknown }, { signal, report }: Means): Promise<unknown> {
  const listening = new AbortController(), on = { signal: listening.signal };
  return new Promise<unknown>((resolve, reject) => {
    signal?.addEventListener("abort", () => reject(signal.reason), on);
    worker.addEventListener("error", (event) => reject(new Error("The part that works out the weeks ahead has stopped.", { cause: event.error ?? event.message })), on);
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      if (data.kind === "progress") report?.(data.progress);
      if (data.kind === "done") resolve(data.answer);
      if (data.kind === "failed") reject(data.error);
    }, on);
    worker.postMessage(ask);
  }).finally(() => listening.abort());
}
