import type { NoteFinding } from "./note-finding.ts";
import { LONGEST_WORDING, wordingKey, type ReadAs } from "./own-readings.ts";
import { readAs } from "./settled.ts";

/** A reading that is not sure, asked once for all notes of the same wording. */
export interface AskedReading {
  /** As it stands in the first of these notes. */
  readonly wording: string;
  readonly read_as: ReadAs;
  /** Notes it stands in. */
  readonly notes: number;
  /** Some of those notes, as written. */
  readonly examples: readonly string[];
}
/** A note as written, with the findings in it that are not sure. */
export interface AskedNote { readonly text: string; readonly asked: readonly NoteFinding[] }

const EXAMPLES = 2;

/** What has to be asked about many notes, most frequent first; what is too long to come again is left out. */
export function askedReadings(notes: Iterable<AskedNote>): AskedReading[] {
  const all = new Map<string, { wording: string; read_as: ReadAs; notes: number; examples: string[] }>();
  for (const { text, asked } of notes) {
    for (const one of asked) {
      const wording = one.text.trim(), read_as = readAs(one), key = wordingKey(wording, read_as);
      if (wording.length > LONGEST_WORDING) continue;
      const question = all.get(key) ?? { wording, read_as, notes: 0, examples: [] };
      question.notes++;
      if (question.examples.length < EXAMPLES && !question.examples.includes(text)) question.examples.push(text);
      all.set(key, question);
    }
  }
  return [...all.values()].sort((a, b) => b.notes - a.notes || (a.wording < b.wording ? -1 : 1));
}
