import { phraseWords } from "./words.ts";

/** A stretch of words that was not understood, and how often. */
export interface UnknownWords {
  /** As most often written. */
  readonly words: string;
  /** Notes it stands in. */
  readonly notes: number;
  /** Some of those notes, as written. */
  readonly examples: readonly string[];
}
/** A note as written, with what was not understood in it (see `noteFindings`). */
export interface ReadNote { readonly text: string; readonly unknown: readonly string[] }

interface Count { readonly written: Map<string, number>; notes: number; readonly examples: string[] }

function mostWritten(written: ReadonlyMap<string, number>): string {
  let best = "", most = 0;
  for (const [text, count] of written) if (count > most) [best, most] = [text, count];
  return best;
}

/**
 * What was not understood in many notes, most frequent first; the same words in another spelling of case and number are one.
 * One answer to a line settles it in all its notes.
 *
 * @param most_examples how many notes each line shows
 * @throws {RangeError} if `most_examples` is not a whole number from 0 on
 */
export function unknownWords(notes: Iterable<ReadNote>, most_examples = 3): UnknownWords[] {
  if (!Number.isInteger(most_examples) || most_examples < 0) {
    throw new RangeError(`unknownWords: needs a whole number of examples from 0 on, not ${most_examples}`);
  }
  const counts = new Map<string, Count>();
  for (const { text, unknown } of notes) {
    const here = new Set<string>();
    for (const words of unknown) {
      const key = phraseWords(words).join(" ") || words, count = counts.get(key) ?? { written: new Map<string, number>(), notes: 0, examples: [] };
      counts.set(key, count);
      count.written.set(words, (count.written.get(words) ?? 0) + 1);
      if (here.has(key)) continue;
      here.add(key);
      count.notes++;
      if (count.examples.length < most_examples && !count.examples.includes(text)) count.examples.push(text);
    }
  }
  return [...counts.values()].map(({ written, notes: number, examples }) => ({ words: mostWritten(written), notes: number, examples }))
    .sort((a, b) => b.notes - a.notes || (a.words < b.words ? -1 : 1));
}
