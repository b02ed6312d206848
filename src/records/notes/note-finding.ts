import type { Action, ReelKind } from "../vocabulary-tables.ts";
import type { SpellingBook } from "./own-spellings.ts";

/** Where a text stands: work done, parts fitted, what the customer said, or what he said with what was done behind it. */
export type NoteCell = "note" | "parts" | "complaint" | "complaint and note";

export interface NoteContext {
  readonly reel_kind: ReelKind | null;
  readonly cell: NoteCell;
  /** What the same row's complaint column says; it settles some words and makes no findings. */
  readonly complaint?: string | null;
  /** The shop's own spellings, looked up before ours. */
  readonly book?: SpellingBook | null;
}

export interface NoteFinding {
  /** Null where the words name only a family ("bearing"); such a line counts for stock by its size, never for a position. */
  readonly position: string | null;
  readonly family: string | null;
  /** Null where the note says what the part is like and not what was done. */
  readonly action: Action | null;
  readonly routine: boolean;
  readonly mode: string | null;
  /** Lowest grade the words prove (4 seized or broken, 3 gone), null when they prove none. */
  readonly grade_at_least: number | null;
  /** Highest grade the words allow: 1 when said to be fine, 2 under doubt, cleaned or put off; null when nothing is said. */
  readonly grade_at_most: number | null;
  /** Pieces replaced or wanted; null for what was not. */
  readonly qty: number | null;
  readonly qty_assumed: boolean;
  readonly size: string | null;
  readonly doubtful: boolean;
  /** The words it was read from, and where they stand in the note: `text === note.slice(start, end)`. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** How it was read, for the owner to see. */
  readonly rule: string;
  /** Share of such readings that were right on the labelled notes, 0…1. */
  readonly confidence: number;
}

export interface NoteReading {
  readonly findings: readonly NoteFinding[];
  /** Parts that are only named, or of which we cannot tell what is said: to be asked, never taken. */
  readonly mentions: readonly NoteFinding[];
  /** The note speaks of a whole service. */
  readonly whole_job: boolean;
  /** Stretches of words in which nothing was understood. */
  readonly unknown: readonly string[];
}
