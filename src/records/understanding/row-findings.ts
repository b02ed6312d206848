import { UNSPECIFIED } from "../checking/word-cell.ts";
import { noteFindings } from "../notes/note-findings.ts";
import type { NoteCell, NoteFinding, NoteReading } from "../notes/note-finding.ts";
import type { AskedNote } from "../notes/asked-readings.ts";
import { settled, type Settled } from "../notes/settled.ts";
import type { OwnReading } from "../notes/own-readings.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import type { ReelKind } from "../vocabulary.ts";
import type { FixCounts, MadeRecord } from "./row-outcome.ts";

/** One text of a row that findings are read from. */
export interface RowText {
  readonly heading: string;
  readonly text: string;
  readonly cell: NoteCell;
}

/** A text as it was read, and what of it is taken. */
export interface NoteRead { readonly reading: NoteReading; readonly settled: Settled }

/** Notes as they were read, by their text, cell, kind of reel and complaint. */
export type NotesRead = Map<string, NoteRead>;

const NOT_SURE = "what a note may say was not sure; it stays out of the findings until you say what it means";
const NONE: ReadonlyMap<string, OwnReading> = new Map();

interface Found { readonly heading: string; readonly finding: NoteFinding }

const STRENGTH: Readonly<Record<string, number>> = { replaced: 6, wanted: 5, adjusted: 4, cleaned: 3, lubricated: 2, left: 1 };
const strength = ({ finding }: Found) => STRENGTH[finding.action ?? ""] ?? 0;
const MOST_READ = 50_000;

/** Two cells of a row that name one place speak of one part: the stronger action counts, faults and figures from either. */
function merged(found: readonly Found[]): Found[][] {
  const groups: Found[][] = [];
  for (const one of found) {
    const same = groups.find((group) => one.finding.position !== null && group.every(({ heading, finding }) => finding.position === one.finding.position && heading !== one.heading));
    if (same) same.push(one);
    else groups.push([one]);
  }
  return groups.map((group) => [...group].sort((a, b) => strength(b) - strength(a)));
}

const highest = (values: readonly (number | null)[]): number | null => values.reduce<number | null>((a, b) => (b === null ? a : Math.max(a ?? 0, b)), null);

function record(ticket_no: string, group: readonly Found[]): MadeRecord | null {
  const [first] = group;
  if (!first) return null;
  const { finding } = first, all = group.map((one) => one.finding), place = finding.position ?? (finding.family === null ? null : `${UNSPECIFIED}${finding.family}`);
  if (place === null) return null;
  const counted = finding.action === "replaced" || finding.action === "wanted";
  const grade = counted || finding.action === null ? highest(all.map((one) => one.grade_at_least)) : finding.grade_at_least, qty = highest(all.map((one) => one.qty));
  const cells: Record<string, string> = {
    ticket_no, position: place, action: finding.action ?? "", mode: all.find((one) => one.mode !== null)?.mode ?? "", grade: grade === null ? "" : String(grade),
    qty: counted && qty !== null ? String(qty) : "", routine: counted ? (finding.routine ? "yes" : "no") : "",
    note: group.map((one) => one.finding.text.trim()).join(" | "), size: all.find((one) => one.size !== null)?.size ?? "",
    read_from: [...new Set(group.map(({ heading }) => heading))].join(" | "), rule: finding.rule, confidence: String(Math.min(...all.map((one) => one.confidence))),
  };
  return { table: "findings", cells, words: group.map(({ heading, finding: { start, text } }) => `${heading}@${start}:${text}`).join("|") };
}

/** Reads the findings of rows' texts; the same text on the same kind of reel is read once. */
export class RowFindings {
  readonly unknown: { readonly text: string; readonly unknown: readonly string[] }[] = [];
  readonly asked: AskedNote[] = [];
  private readonly read: NotesRead;
  private readonly book: SpellingBook | null;
  private readonly fixes: FixCounts;

  /**
   * @param fixes where what stays out is counted
   * @param read notes read before with this book
   */
  constructor(book: SpellingBook | null, fixes: FixCounts, read: NotesRead = new Map()) {
    this.read = read;
    this.book = book;
    this.fixes = fixes;
  }

  reading(one: RowText, kind: ReelKind | null, complaint: string): NoteReading {
    return this.readOf(one, kind, complaint).reading;
  }

  private readOf({ text, cell }: RowText, kind: ReelKind | null, complaint: string): NoteRead {
    const key = `${cell}\n${kind ?? ""}\n${complaint}\n${text}`, before = this.read.get(key);
    if (before) return before;
    const reading = noteFindings(text, { reel_kind: kind, cell, complaint: complaint === "" ? null : complaint, book: this.book });
    const read = { reading, settled: settled(reading, this.book?.readings ?? NONE) };
    if (this.read.size < MOST_READ) this.read.set(key, read);
    return read;
  }

  private ask(text: string, asked: Settled["asked"]): void {
    this.asked.push({ text, asked });
    for (const { text: words } of asked) this.fixes.add(NOT_SURE, words.trim(), "stays out");
  }

  /** Findings of all texts of one reel. */
  records(ticket_no: string, texts: readonly RowText[], kind: ReelKind | null, complaint: string): MadeRecord[] {
    const found = texts.flatMap((one) => {
      const { reading, settled: { taken, asked } } = this.readOf(one, kind, complaint);
      if (reading.unknown.length > 0) this.unknown.push({ text: one.text, unknown: reading.unknown });
      if (asked.length > 0) this.ask(one.text, asked);
      return taken.map((finding) => ({ heading: one.heading, finding }));
    });
    return merged(found).flatMap((group) => record(ticket_no, group) ?? []);
  }
}
