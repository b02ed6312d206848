import type { Report } from "../../db/engine.ts";
import type { NamedFile } from "../formats/sheet.ts";
import type { Answers } from "../understanding/answers.ts";
import type { ExamineOptions, FileUnderstanding, Preview } from "../understanding/understanding.ts";
import type { Look } from "./look.ts";

type Options = Omit<ExamineOptions, "signal" | "report">;

/** What goes to the worker: a file, and the answers it is to be read with; without them it is only looked at. */
interface Ask {
  readonly file: NamedFile;
  readonly answers: Answers | null;
  readonly options: Options;
}
type Result = FileUnderstanding | Preview | null;

/** What comes back. */
type Answer =
  | { kind: "progress"; progress: Parameters<Report>[0] }
  | { kind: "done"; result: Result }
  | { kind: "failed"; error: unknown };

/** The worker's end: looks at one file after the other, as asked. A cancel ends the worker itself. */
export function answerLooks(scope: DedicatedWorkerGlobalScope, look: Look): void {
  const send = (answer: Answer) => scope.postMessage(answer);
  scope.addEventListener("message", ({ data: { file, answers, options } }: MessageEvent<Ask>) => {
    const whole: ExamineOptions = { ...options, signal: new AbortController().signal, report: (progress) => send({ kind: "progress", progress }) };
    const looked: Promise<Result> = answers ? look.preview(file, answers, whole) : look.examine(file, whole);
    looked.then((result) => send({ kind: "done", result }), (error: unknown) => send({ kind: "failed", error }));
  });
}

/** The page's end: one look in `worker`. When it rejects, the worker's state is unknown and it must be ended. */
export function lookOver(worker: Worker, file: NamedFile, answers: Answers | null, { signal, report, ...options }: ExamineOptions): Promise<Result> {
  const listening = new AbortController();
  return new Promise<Result>((resolve, reject) => {
    const on = { signal: listening.signal };
    signal.addEventListener("abort", () => reject(signal.reason), on);
    worker.addEventListener("error", (event) => reject(new Error("The part that looks at files has stopped.", { cause: event.error ?? event.message })), on);
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      if (data.kind === "progress") report(data.progress);
      if (data.kind === "done") resolve(data.result);
      if (data.kind === "failed") reject(data.error);
    }, on);
    worker.postMessage({ file, answers, options } satisfies Ask);
  }).finally(() => listening.abort());
}
