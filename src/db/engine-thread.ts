let waiting: Worker | null = null;

function start(): Worker {
  return new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module", name: "engine" });
}

/** Starts the engine's thread before anybody asks for it: it takes longer than all else that the page does at first. */
export function startEarly(): void {
  const thread = (waiting = start());
  thread.addEventListener("error", (event) => {
    if (waiting !== thread) return;
    // Whoever asks gets another one, and is told if that fails too.
    event.preventDefault();
    waiting = null;
  });
}

/** A thread of one's own for an engine. */
export function engineThread(): Worker {
  const thread = waiting ?? start();
  waiting = null;
  return thread;
}
