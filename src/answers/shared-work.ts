/** One piece of slow work, and how many wait for it. */
interface Shared<T> { readonly done: Promise<T>; readonly stop: AbortController; waiting: number }

/**
 * Slow work by name that several may wait for at once: done once and kept, called off when the last who waited no longer does, and done
 * anew by whoever asks after it failed.
 */
export class SharedWork<T> {
  readonly #all = new Map<string, Shared<T>>();

  /** @throws the signal's reason as soon as it is called off, and what `work` throws */
  async of(name: string, work: (signal: AbortSignal) => Promise<T>, signal?: AbortSignal): Promise<T> {
    signal?.throwIfAborted();
    const shared = this.#all.get(name) ?? this.#begun(name, work);
    shared.waiting += 1;
    try {
      return await orCalledOff(shared.done, signal);
    } catch (error) {
      shared.waiting -= 1;
      if (shared.waiting === 0 && signal?.aborted) this.#forget(name, shared, signal.reason);
      throw error;
    }
  }

  #begun(name: string, work: (signal: AbortSignal) => Promise<T>): Shared<T> {
    const stop = new AbortController(), shared: Shared<T> = { done: work(stop.signal), stop, waiting: 0 };
    this.#all.set(name, shared);
    shared.done.catch((error: unknown) => { this.#forget(name, shared, error); });
    return shared;
  }

  #forget(name: string, shared: Shared<T>, reason: unknown): void {
    if (this.#all.get(name) === shared) this.#all.delete(name);
    shared.stop.abort(reason);
  }
}

/** What comes of it, unless it is called off before. @throws the signal's reason when it is */
export async function orCalledOff<T>(done: Promise<T>, signal?: AbortSignal): Promise<T> {
  if (!signal) return done;
  signal.throwIfAborted();
  const over = new AbortController();
  try {
    return await Promise.race([done, new Promise<never>((_, reject) => { signal.addEventListener("abort", () => { reject(signal.reason); }, { signal: over.signal }); })]);
  } finally {
    over.abort();
  }
}
