import type { Report } from "../../db/engine.ts";
import type { FormatKind } from "../formats/sheet.ts";
import type { AskedReading } from "../notes/asked-readings.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import type { ReelKind } from "../vocabulary.ts";
import type { Answers, DateOrder, SheetKind } from "./answers.ts";

/** A reel the shop's own list knows; `maker` null when the list gives none. */
export interface KnownModel {
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind?: ReelKind | null;
}

export interface ExamineOptions {
  /** What was answered for a file of this shape before, or stands in its `mapping.json`; null when nothing is. */
  readonly remembered: Answers | null;
  /** `YYYY-MM-DD`; years of two digits and dates without a year are read against it. */
  readonly today: string;
  /** The shop's own list of reels, for telling maker and model apart; may be empty. */
  readonly models: readonly KnownModel[];
  readonly book?: SpellingBook | null;
  readonly signal: AbortSignal;
  readonly report: Report;
}

/** How sure a column's meaning is, in the words the owner reads. */
export type Sure = "certain" | "likely" | "a guess" | "not known";

/** One column of the file, and what it is taken for. */
export interface ColumnUnderstanding {
  /** Names the column in {@link Answers}: its heading, `column 2` where it has none, `Price (2)` for the second of a name. */
  readonly label: string;
  /** Place in the row, from 0. */
  readonly at: number;
  /** The commonest different values, as written; at most five, none empty. */
  readonly sample: readonly string[];
  /** Rows in which it is not empty. */
  readonly filled: number;
  /** Proposed meaning: a key of `meaningsFor(kind)`, or null to leave it out. */
  readonly means: string | null;
  readonly sure: Sure;
  /** Why, in one plain clause: `its heading says so`, `86 of 90 values are dates`. */
  readonly why: string;
}

/** Something that is put right without asking, with how often and where. */
export interface Fix {
  readonly sentence: string;
  /** Rows or cells it was seen in, among the rows looked at. */
  readonly count: number;
  /** At most three, as written → as read. */
  readonly examples: readonly string[];
}

export interface Choice {
  /** Goes into `answered()`. */
  readonly value: string;
  /** What the owner reads. */
  readonly words: string;
}

/** Something the file does not settle by itself. */
export interface Question {
  /** Stable over two looks at the same file. */
  readonly id: string;
  readonly sheet: string | null;
  readonly about: "dates" | "year" | "decimal" | "minutes" | "column" | "sheet" | "currency" | "water" | "routine";
  /** The column it is about, by its label; null when it is about the whole sheet. */
  readonly column: string | null;
  /** The place of a part it is about. */
  readonly position?: string;
  /** One plain sentence that ends in a question mark. */
  readonly ask: string;
  /** What speaks for and against, with values from the file. */
  readonly why: string;
  /** None for a free number (a year): the screen shows a field then. */
  readonly choices: readonly Choice[];
  /** The preselected answer; null when there is nothing to prefer one, and rows that depend on it cannot come in. */
  readonly best: string | null;
}

/** What is seen of the dates of a sheet. */
export interface DatesSeen {
  readonly order: DateOrder | null;
  /** True when a value over 12 or the year in front settles it and nothing speaks against it. */
  readonly proved: boolean;
  readonly why: string;
  /** Values that contradict the order, with their line, at most ten. */
  readonly against: readonly { readonly line: number; readonly value: string }[];
}

export interface SheetUnderstanding {
  readonly sheet: string | null;
  readonly kind: SheetKind;
  /** `one row a job`, `a till's sales, one line an item` … */
  readonly kind_in_words: string;
  /** Line of the heading row; null when the sheet has none. */
  readonly heading_line: number | null;
  /** Rows under the headings, blank ones too. */
  readonly rows: number;
  readonly columns: readonly ColumnUnderstanding[];
  readonly dates: DatesSeen | null;
  readonly fixes: readonly Fix[];
  readonly remarks: readonly string[];
}

export interface FileUnderstanding {
  readonly file: string;
  readonly kind: FormatKind;
  /** Separator and encoding in words, for text files. */
  readonly written_as: string | null;
  /** Files with the same key are answered alike; see `settingName`. */
  readonly shape_key: string;
  readonly sheets: readonly SheetUnderstanding[];
  /** What the remembered answers leave open; the ones without a best answer first. */
  readonly questions: readonly Question[];
  /** The remembered answers, completed by the best ones. Reading with them unchanged is allowed. */
  readonly proposed: Answers;
  readonly from_memory: boolean;
  readonly remarks: readonly string[];
}

/** A raw row beside what was understood of it. */
export interface PreviewRow {
  readonly sheet: string | null;
  readonly line: number;
  readonly raw: readonly string[];
  /** One sentence a record: `ticket R-1041: Brackhelm Whinbeck 40, in 3 April 2025 …`, `replaced: line roller bearing ×2`. */
  readonly understood: readonly string[];
  /** Why it is to fix or dropped; null when it comes in. */
  readonly not_in: string | null;
}

export interface Tally {
  readonly reason: string;
  readonly rows: number;
  readonly examples: readonly { readonly line: number; readonly value: string }[];
}

/** What reading with some answers would bring, before anything is written. */
export interface Preview {
  readonly rows_read: number;
  /** Records by table, before they are compared with those already kept. */
  readonly records: Readonly<Record<string, number>>;
  readonly rows_to_fix: readonly Tally[];
  readonly rows_dropped: readonly Tally[];
  /** Put right on the way, one counted sentence each. */
  readonly remarks: readonly string[];
  /** The first twenty rows. */
  readonly first: readonly PreviewRow[];
  /** Words in notes nothing was read from, most frequent first. */
  readonly unknown_words: readonly { readonly words: string; readonly notes: number; readonly examples: readonly string[] }[];
  /** What notes may say and we are not sure of, most frequent first; without an answer it stays out. */
  readonly asked_readings: readonly AskedReading[];
  /** Findings that stay out for want of such an answer, all told. */
  readonly staying_out: number;
}
