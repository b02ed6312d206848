import type { Report } from "../db/engine.ts";
import { writeBy } from "../way-of-writing.ts";
import type { WorkMeans } from "./worker-work.ts";

/** What goes to a worker that stays: records to keep under a name, a question, and that nobody waits for its answer any more. */
export type Posted<Asked> =
  | { readonly kind: "keep"; readonly name: string; readonly stream: Uint8Array }
  | { readonly kind: "ask"; readonly id: number; readonly turn: number; readonly asked: Asked; readonly locale: string | null }
  | { readonly kind: "stop"; readonly id: number };
type Question<Asked> = Extract<Posted<Asked>, { kind: "ask" }>;
/** What comes back from it. */
export type Told<Answer> =
  | { readonly kind: "progress"; readonly id: number; readonly progress: Parameters<Report>[0] }
  | { readonly kind: "done"; readonly id: number; readonly answer: Answer }
  | { readonly kind: "failed"; readonly id: number; readonly error: unknown };

/** What a worker that stays does with records, and with questions about what it keeps by name. */
export interface KeptWork<Asked, Kept, Answer> {
  readonly unpack: (name: string, stream: Uint8Array) => Kept;
  readonly work: (asked: Asked, kept: (name: string) => Kept, means: WorkMeans) => Promise<Answer>;
}

/** Answers that are kept: as many as somebody goes to and fro between. */
const MOST_ANSWERS = 16;

const pause = (milliseconds: number) => new Promise((turn) => { setTimeout(turn, milliseconds); });
/** Questions asked together come one after the other within this time; it is waited so that they are put in order. */
const TOGETHER_MS = 3;

/** The end of a worker that stays: one question after the other, those with the lowest turn first; `work` must give turns to be called off. */
export class KeptDesk<Asked, Kept, Answer> {
  readonly #kept = new Map<string, Kept>();
  /** Answers by question; what is kept never changes while the worker lives. */
  readonly #answered = new Map<string, { readonly answer: Answer }>();
  #waiting: Question<Asked>[] = [];
  #busy = false;
  #going: { readonly id: number; readonly stop: AbortController } | null = null;
  readonly #of: KeptWork<Asked, Kept, Answer>;
  readonly #tell: (told: Told<Answer>) => void;

  constructor(of: KeptWork<Asked, Kept, Answer>, tell: (told: Told<Answer>) => void) {
    this.#of = of;
    this.#tell = tell;
  }

  take(posted: Posted<Asked>): void {
    if (posted.kind === "keep") this.#kept.set(posted.name, this.#of.unpack(posted.name, posted.stream));
    if (posted.kind === "stop") this.#stop(posted.id);
    if (posted.kind !== "ask") return;
    this.#waiting.push(posted);
    if (this.#busy) return;
    this.#busy = true;
    void this.#answerAll();
  }

  #stop(id: number): void {
    this.#waiting = this.#waiting.filter((one) => one.id !== id);
    if (this.#going?.id === id) this.#going.stop.abort(new Error("Nobody waits for this any more."));
  }

  #next(): Question<Asked> | null {
    const [first] = this.#waiting.sort((a, b) => a.turn - b.turn || a.id - b.id);
    this.#waiting = this.#waiting.slice(1);
    return first ?? null;
  }

  async #answerAll(): Promise<void> {
    await pause(TOGETHER_MS);
    for (let asked = this.#next(); asked; asked = this.#next()) {
      this.#going = { id: asked.id, stop: new AbortController() };
      await this.#answer(asked, this.#going.stop.signal);
      this.#going = null;
      // What was called off meanwhile is read before the next one begins.
      await pause(0);
    }
    this.#busy = false;
  }

  /** The answer given before to the same question, else a new one. */
  async #found({ id, asked, locale }: Question<Asked>, signal: AbortSignal): Promise<Answer> {
    const key = JSON.stringify([locale, asked]), before = this.#answered.get(key);
    this.#answered.delete(key);
    const kept = before ?? { answer: await this.#of.work(asked, (name) => this.#held(name), { signal, report: (progress) => { this.#tell({ kind: "progress", id, progress }); } }) };
    this.#answered.set(key, kept);
    for (const oldest of [...this.#answered.keys()].slice(0, -MOST_ANSWERS)) this.#answered.delete(oldest);
    return kept.answer;
  }

  async #answer(asked: Question<Asked>, signal: AbortSignal): Promise<void> {
    const { id, locale } = asked;
    writeBy(() => locale);
    try {
      const answer = await this.#found(asked, signal);
      if (!signal.aborted) this.#tell({ kind: "done", id, answer });
    } catch (error) {
      if (!signal.aborted) this.#tell({ kind: "failed", id, error });
    }
  }

  #held(name: string): Kept {
    const kept = this.#kept.get(name);
    if (kept === undefined) throw new RangeError(`KeptDesk: needs ${name} before it is asked for`);
    return kept;
  }
}

/** Sits at the worker's end. */
export function keepIn<Asked, Kept, Answer>(scope: DedicatedWorkerGlobalScope, of: KeptWork<Asked, Kept, Answer>): void {
  const desk = new KeptDesk<Asked, Kept, Answer>(of, (told) => { scope.postMessage(told); });
  scope.addEventListener("message", ({ data }: MessageEvent<Posted<Asked>>) => { desk.take(data); });
}
