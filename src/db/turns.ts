/**
 * Lets pieces of work have one thing in turns: each starts when the one before has ended, whichever way.
 *
 * A piece that is cancelled while it waits rejects at once with the signal's reason and never starts. Once it runs, it
 * has to watch the signal itself.
 */
export class Turns {
  #last: Promise<void> = Promise.resolve();

  async take<T>(work: () => Promise<T>, signal?: AbortSignal): Promise<T> {
    signal?.throwIfAborted();
    const before = this.#last;
    let end = (): void => undefined;
    const mine = new Promise<void>((resolve) => (end = resolve));
    this.#last = before.then(() => mine);
    try {
      await untilCancelled(before, signal);
      return await work();
    } finally {
      end();
    }
  }
}

/** Waits for `promise`, or rejects with the signal's reason as soon as it is called off. */
export function untilCancelled(promise: Promise<void>, signal: AbortSignal | undefined): Promise<void> {
  if (!signal) return promise;
  return new Promise((resolve, reject) => {
    const cancelled = () => reject(signal.reason);
    if (signal.aborted) cancelled();
    signal.addEventListener("abort", cancelled, { once: true });
    void promise.then(resolve, reject).finally(() => signal.removeEventListener("abort", cancelled));
  });
}
