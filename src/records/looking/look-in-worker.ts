import type { NamedFile } from "../formats/sheet.ts";
import type { Answers } from "../understanding/answers.ts";
import type { ExamineOptions, FileUnderstanding, Preview } from "../understanding/understanding.ts";
import type { Look } from "./look.ts";
import { lookOver } from "./look-messages.ts";

/** The owner answers one question after the other: the worker is kept for the next, and ends after this pause. */
const IDLE_MS = 60_000;
let idle: { worker: Worker; timer: ReturnType<typeof setTimeout> } | null = null;

function takeWorker(): Worker {
  if (!idle) return new Worker(new URL("./looking.worker.ts", import.meta.url), { type: "module", name: "looking" });
  const { worker, timer } = idle;
  clearTimeout(timer);
  idle = null;
  return worker;
}

function giveBack(worker: Worker): void {
  if (idle) return worker.terminate();
  const timer = setTimeout(() => {
    idle = null;
    worker.terminate();
  }, IDLE_MS);
  idle = { worker, timer };
}

async function looked(file: NamedFile, answers: Answers | null, options: ExamineOptions): Promise<FileUnderstanding | Preview | null> {
  options.signal.throwIfAborted();
  const worker = takeWorker();
  try {
    const result = await lookOver(worker, file, answers, options);
    giveBack(worker);
    return result;
  } catch (error) {
    worker.terminate();
    throw error;
  }
}

/** Looks at files in a worker, so that the page stays awake; a cancel ends the worker at once. */
export const lookInWorker: Look = {
  examine: (file, options) => looked(file, null, options) as Promise<FileUnderstanding | null>,
  preview: (file, answers, options) => looked(file, answers, options) as Promise<Preview>,
};
