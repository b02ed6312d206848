import type { StagedRows } from "./filling.ts";
import type { FileRead, NamedFile, ReadFile, ReadOptions } from "./read-file.ts";

/** What goes to the worker: a file to read, or word that the rows it sent are taken. */
type Ask = { kind: "read"; file: NamedFile; options: Omit<ReadOptions, "signal" | "report" | "take"> } | { kind: "taken" };

/** What comes back. Rows are sent one piece at a time: the next follows when the last is taken. */
type Answer =
  | { kind: "progress"; progress: Parameters<ReadOptions["report"]>[0] }
  | { kind: "rows"; rows: StagedRows }
  | { kind: "done"; read: readonly FileRead[] }
  | { kind: "failed"; error: unknown };

/** The worker's end: reads one file after the other, as asked. A cancel ends the worker itself. */
export function answerReading(scope: DedicatedWorkerGlobalScope, read: ReadFile): void {
  const send = (answer: Answer, transfer: Transferable[] = []) => scope.postMessage(answer, transfer);
  let taken: () => void = () => undefined;
  const take = (rows: StagedRows) => new Promise<void>((resolve) => {
    taken = resolve;
    send({ kind: "rows", rows }, [rows.stream.buffer]);
  });
  scope.addEventListener("message", ({ data }: MessageEvent<Ask>) => {
    if (data.kind === "taken") return taken();
    const signal = new AbortController().signal, report: ReadOptions["report"] = (progress) => send({ kind: "progress", progress });
    read(data.file, { ...data.options, signal, report, take })
      .then((done) => send({ kind: "done", read: done }), (error: unknown) => send({ kind: "failed", error }));
  });
}

/** The page's end: reads one file in `worker`. When it rejects, the worker's state is unknown and it must be ended. */
export function readOver(worker: Worker, ...[file, { signal, report, take, ...rest }]: Parameters<ReadFile>): Promise<readonly FileRead[]> {
  const listening = new AbortController();
  return new Promise<readonly FileRead[]>((resolve, reject) => {
    const send = (ask: Ask) => worker.postMessage(ask);
    const on = { signal: listening.signal };
    signal.addEventListener("abort", () => reject(signal.reason), on);
    worker.addEventListener("error", (event) => reject(new Error("The part that reads files has stopped.", { cause: event.error ?? event.message })), on);
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      if (data.kind === "progress") report(data.progress);
      if (data.kind === "rows") take(data.rows).then(() => send({ kind: "taken" }), reject);
      if (data.kind === "done") resolve(data.read);
      if (data.kind === "failed") reject(data.error);
    }, on);
    send({ kind: "read", file, options: rest });
  }).finally(() => listening.abort());
}
