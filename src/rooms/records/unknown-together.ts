import type { AskedReading } from "../../records/notes/asked-readings.ts";
import { wordingKey } from "../../records/notes/own-readings.ts";
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

/** Readings of several files that are not sure, in one list, most frequent first. */
export function askedTogether(lists: readonly (readonly AskedReading[])[]): AskedReading[] {
  const found = new Map<string, AskedReading>();
  for (const one of lists.flat()) {
    const key = wordingKey(one.wording, one.read_as), before = found.get(key);
    found.set(key, before ? { ...before, notes: before.notes + one.notes } : one);
  }
  return [...found.values()].sort((a, b) => b.notes - a.notes);
}
