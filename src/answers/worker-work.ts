import type { Report } from "../db/engine.ts";
import { writeBy, writtenBy } from "../way-of-writing.ts";

/** How slow work tells how far it is, and is called off. */
export interface WorkMeans { readonly signal?: AbortSignal | undefined; readonly report?: Report | undefined }
/** Slow work on plain rows: here, or in a worker. */
export type PlainWork<Asked, Answer> = (asked: Asked, means: WorkMeans) => Promise<Answer>;

type Told<Answer> = { kind: "progress"; progress: Parameters<Report>[0] } | { kind: "done"; answer: Answer } | { kind: "failed"; error: unknown };

/** What goes to a worker: the work, and the way of writing its sentences, which the worker cannot know. */
interface Posted<Asked> { readonly asked: Asked; readonly locale: string | null }

/** The worker's end: one piece of work as asked. A cancel ends the worker itself. */
export function answerIn<Asked, Answer>(scope: DedicatedWorkerGlobalScope, work: PlainWork<Asked, Answer>): void {
  const tell = (told: Told<Answer>) => scope.postMessage(told);
  scope.addEventListener("message", ({ data }: MessageEvent<Posted<Asked>>) => {
    writeBy(() => data.locale);
    work(data.asked, { report: (progress) => tell({ kind: "progress", progress }) })
      .then((answer) => tell({ kind: "done", answer }), (error: unknown) => tell({ kind: "failed", error }));
  });
}

/** The page's end: asks a worker of its own, and ends it whatever comes of it; a cancel ends it at once. */
export async function askWorker<Asked, Answer>(started: () => Worker, asked: Asked, { signal, report }: WorkMeans): Promise<Answer> {
  signal?.throwIfAborted();
  const worker = started(), listening = new AbortController(), on = { signal: listening.signal };
  try {
    return await new Promise<Answer>((resolve, reject) => {
      signal?.addEventListener("abort", () => reject(signal.reason), on);
      worker.addEventListener("error", (event) => reject(new Error("The part that works this out has stopped.", { cause: event.error ?? event.message })), on);
      worker.addEventListener("message", ({ data }: MessageEvent<Told<Answer>>) => {
        if (data.kind === "progress") report?.(data.progress);
        if (data.kind === "done") resolve(data.answer);
        if (data.kind === "failed") reject(data.error);
      }, on);
      worker.postMessage({ asked, locale: writtenBy() } satisfies Posted<Asked>);
    });
  } finally {
    listening.abort();
    worker.terminate();
  }
}

/** Longest time without a turn for whoever else wants the thread. */
const TURN_MS = 30;

/** Gives others a turn and tells how far it is; rejects when called off. */
export function takingTurns({ signal, report }: WorkMeans): (step: string, done: number, total: number | null) => Promise<void> {
  let last = performance.now();
  return async (step, done, total) => {
    if (performance.now() - last < TURN_MS) return;
    report?.({ step, done, total });
    await new Promise((turn) => setTimeout(turn));
    signal?.throwIfAborted();
    last = performance.now();
  };
}
