import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import { settled, type Settled } from "../../../src/records/notes/settled.ts";
import type { NoteContext, NoteFinding } from "../../../src/records/notes/note-finding.ts";
import type { ReelKind } from "../../../src/records/vocabulary.ts";
import type { LabelledNote } from "./corpus.ts";
import type { Read } from "./scores.ts";

const placeOf = (one: NoteFinding) => one.position ?? `?${one.family ?? ""}`;

const inLabels = (one: NoteFinding): Read => ({ place: placeOf(one), action: one.action ?? "none", qty: one.qty, mode: one.mode, confidence: one.confidence });
const divided = ({ text, reel_kind, cell, complaint }: LabelledNote): Settled => settled(noteFindings(text, { reel_kind, cell, complaint }), new Map());

/** All that the parser reads from a labelled note, sure or not, in the label's terms. */
export const readNote = ({ text, reel_kind, cell, complaint }: LabelledNote): Read[] =>
  noteFindings(text, { reel_kind, cell, complaint }).findings.map(inLabels);

/** What is taken of it without asking. */
export const readTaken = (note: LabelledNote): Read[] => divided(note).taken.map(inLabels);

/** How much of it is asked. */
export const countAsked = (note: LabelledNote): number => divided(note).asked.length;

/**
 * What is taken when the owner answers rightly: of a part that the label has, he says what was done; another part than the label has he leaves
 * out, though he could name the right one.
 */
export function readAnswered(note: LabelledNote): Read[] {
  const { taken, asked } = divided(note), out = taken.map(inLabels);
  for (const one of asked.map(inLabels)) {
    const label = note.expected.find(({ place }) => place === one.place);
    if (label && !out.some(({ place }) => place === one.place)) out.push({ ...one, action: label.action, qty: one.qty ?? label.qty });
  }
  return out;
}

/** Findings of a note as `place action` or, where pieces were replaced or wanted, `place action qty`, in the order they are read. */
export function said(text: string, reel_kind: ReelKind | null = "spinning", more: Partial<NoteContext> = {}): string[] {
  return noteFindings(text, { reel_kind, cell: "note", ...more }).findings
    .map((one) => `${placeOf(one)} ${one.action ?? "none"}${one.qty === null ? "" : ` ${one.qty}`}`);
}
