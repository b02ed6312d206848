import { corpus } from "./corpus.ts";
import { countAsked, readAnswered, readNote, readTaken } from "./reader.ts";
import { overall } from "./score-table.ts";
import { scores, type Read } from "./scores.ts";
import type { LabelledNote } from "./corpus.ts";

/**
 * The held-out notes' figures: totals and nothing else, so that nobody sees which of them go wrong.
 *
 * @throws {Error} when the file of the held-out notes is not there
 */
export function heldOut() {
  const notes = corpus("fresh-notes-3"), totals = (reader: (note: LabelledNote) => Read[]) => {
    return { ...scores(notes, reader), wrong: [] };
  };
  return {
    read: totals(readNote), taken: totals(readTaken), answered: totals(readAnswered), asked: notes.reduce((sum, note) => sum + countAsked(note), 0),
    notes_asked: notes.filter((note) => countAsked(note) > 0).length,
  };
}

/** Prints the totals. */
export function main(): Promise<number> {
  const { read, taken, answered, asked, notes_asked } = heldOut();
  const line = overall;
  process.stdout.write(`${[line("all that is read", read), line("taken without asking", taken), line("taken and answered", answered),
    `${asked} readings asked, in ${notes_asked} notes`].join("\n")}\n`);
  return Promise.resolve(0);
}
