/** Something that loading the page anew would cut off. */
export interface Unfinished {
  /** What is going on, as it follows “Waits until”. */
  readonly until: string;
  /** Whether it ends by itself soon, or when the owner ends it. */
  readonly ends: "by itself" | "by the owner";
}

const all = new Set<Unfinished>();

/** Says that something must not be cut off; returns the way to say that it may. */
export function hold(what: Unfinished): () => void {
  all.add(what);
  return () => void all.delete(what);
}

/** Holds while a piece of work runs that ends by itself. */
export async function during<T>(until: string, work: () => Promise<T>): Promise<T> {
  const release = hold({ until, ends: "by itself" });
  try {
    return await work();
  } finally {
    release();
  }
}

/** What must not be cut off now: first what ends by itself, as the rest may end with it; null when nothing is. */
export const unfinished = (): Unfinished | null => [...all].find(({ ends }) => ends === "by itself") ?? [...all][0] ?? null;
