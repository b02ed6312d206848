export interface Progress {
  readonly step: string;
  readonly done: number;
  /** Null while nobody knows how much there is. */
  readonly total: number | null;
  /** Rows so far, where `done` counts something else. */
  readonly rows?: number;
}

export type Work<T> = (signal: AbortSignal, report: (progress: Progress) => void) => Promise<T>;

/** One slow piece of work as a screen sees it. A new run cancels the one before. */
export class Job<T> {
  state = $state.raw<"idle" | "running" | "done" | "failed" | "cancelled">("idle");
  progress = $state.raw<Progress | null>(null);
  result = $state.raw<T | null>(null);
  /** Set only while `state` is "failed". */
  error = $state.raw<unknown>(null);
  #abort: AbortController | null = null;

  /** @returns what the work gave, or null when it failed or was cancelled; never rejects */
  async run(work: Work<T>): Promise<T | null> {
    this.#abort?.abort();
    const abort = (this.#abort = new AbortController());
    this.state = "running";
    this.progress = this.result = this.error = null;
    const current = () => this.#abort === abort;
    try {
      const result = await work(abort.signal, (progress) => {
        if (current()) this.progress = progress;
      });
      if (!current()) return null;
      this.result = result;
      this.state = "done";
      return result;
    } catch (error) {
      if (current()) this.#failed(abort.signal, error);
      return null;
    }
  }

  #failed(signal: AbortSignal, error: unknown): void {
    const cancelled = signal.aborted && error === signal.reason;
    this.state = cancelled ? "cancelled" : "failed";
    this.error = cancelled ? null : error;
  }

  cancel(): void {
    this.#abort?.abort();
  }
}
