import type { ReadFile } from "./reading/read-file.ts";
import { readOver } from "./reading/reading-messages.ts";

/** Starting a worker takes a moment, so the files of one import share one; some seconds later it ends. */
const IDLE_MS = 5_000;
let idle: { worker: Worker; timer: ReturnType<typeof setTimeout> } | null = null;

function takeWorker(): Worker {
  if (idle) {
    const { worker, timer } = idle;
    clearTimeout(timer);
    idle = null;
    return worker;
  }
  return new Worker(new URL("./reading/reading.worker.ts", import.meta.url), { type: "module", name: "reading" });
}

function giveBack(worker: Worker): void {
  if (idle) return worker.terminate();
  const timer = setTimeout(() => {
    idle = null;
    worker.terminate();
  }, IDLE_MS);
  idle = { worker, timer };
}

/** Reads files in a worker, so that the page stays awake; a cancel ends the worker at once. */
export const readInWorker: ReadFile = async (file, options) => {
  options.signal.throwIfAborted();
  const worker = takeWorker();
  try {
    const read = await readOver(worker, file, options);
    giveBack(worker);
    return read;
  } catch (error) {
    worker.terminate();
    throw error;
  }
};
