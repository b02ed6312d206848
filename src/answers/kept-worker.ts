import type { Report } from "../db/engine.ts";
import { writtenBy } from "../way-of-writing.ts";
import type { Posted, Told } from "./kept-desk.ts";
import { orCalledOff, SharedWork } from "./shared-work.ts";
import type { WorkMeans } from "./worker-work.ts";

interface Waiting { readonly resolve: (answer: never) => void; readonly reject: (error: unknown) => void; readonly report: Report | undefined }

/**
 * The page's end of a worker that keeps records from one question to the next, so that a changed filter asks the engine nothing.
 * Everything kept is of one state of the records; `inState` with another one begins anew.
 */
export class KeptWorker<Asked> {
  #worker: Worker | null = null;
  #state: readonly unknown[] = [];
  #held = new SharedWork<void>();
  #ids = 0;
  readonly #waiting = new Map<number, Waiting>();
  readonly #started: () => Worker;

  constructor(started: () => Worker) { this.#started = started; }

  /** Everything kept of other records goes, and who waits for answers about them is told. */
  inState(...state: readonly unknown[]): this {
    if (state.length !== this.#state.length || state.some((one, at) => one !== this.#state[at])) this.#end(new Error("The records have changed meanwhile."));
    this.#state = state;
    return this;
  }

  /** Sees that the worker keeps records under a name; asks for them once. @throws the signal's reason, and what `records` throws */
  hold(name: string, records: (signal: AbortSignal) => Promise<Uint8Array>, signal?: AbortSignal): Promise<void> {
    const held = this.#held;
    return held.of(name, async (stop) => {
      const stream = await records(stop);
      stop.throwIfAborted();
      if (held === this.#held) this.#post({ kind: "keep", name, stream }, [stream.buffer]);
    }, signal);
  }

  /** @param turn the lower, the sooner it is answered when several wait @throws the signal's reason as soon as it is called off */
  async ask<Answer>(asked: Asked, { signal, report }: WorkMeans, turn: number): Promise<Answer> {
    signal?.throwIfAborted();
    const id = (this.#ids += 1);
    try {
      return await orCalledOff(new Promise<Answer>((resolve, reject) => {
        this.#waiting.set(id, { resolve, reject, report });
        this.#post({ kind: "ask", id, turn, asked, locale: writtenBy() });
      }), signal);
    } catch (error) {
      if (signal?.aborted && this.#waiting.has(id)) this.#post({ kind: "stop", id });
      throw error;
    } finally {
      this.#waiting.delete(id);
    }
  }

  #post(posted: Posted<Asked>, moved: Transferable[] = []): void {
    this.#worker ??= this.#begun();
    this.#worker.postMessage(posted, moved);
  }

  #begun(): Worker {
    const worker = this.#started();
    worker.addEventListener("error", (event) => { if (worker === this.#worker) this.#end(new Error("The part that works this out has stopped.", { cause: event.error ?? event.message })); });
    worker.addEventListener("message", ({ data }: MessageEvent<Told<never>>) => { if (worker === this.#worker) this.#heard(data); });
    return worker;
  }

  #heard(told: Told<never>): void {
    const waiting = this.#waiting.get(told.id);
    if (told.kind === "progress") waiting?.report?.(told.progress);
    if (told.kind === "done") waiting?.resolve(told.answer);
    if (told.kind === "failed") waiting?.reject(told.error);
  }

  #end(why: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#held = new SharedWork();
    for (const { reject } of this.#waiting.values()) reject(why);
    this.#waiting.clear();
  }
}
