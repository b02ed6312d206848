import type { UnknownWords } from "../../records/notes/unknown-words.ts";

/** Unknown words of several files in one list, most frequent first. */
export function unknownTogether(lists: readonly (readonly UnknownWords[])[]): UnknownWords[] {
  const found = new Map<string, UnknownWords>();
  for (const one of lists.flat()) {
    const before = found.get(one.words);
    found.set(one.words, before ? { ...before, notes: before.notes + one.notes } : one);
  }
  return [...found.values()].sort((a, b) => b.notes - a.notes);
}
