import { noteFindings } from "../../../src/records/notes/note-findings.ts";
import type { NoteContext, NoteFinding } from "../../../src/records/notes/note-finding.ts";
import type { ReelKind } from "../../../src/records/vocabulary.ts";
import type { LabelledNote } from "./corpus.ts";
import type { Read } from "./scores.ts";

const placeOf = (one: NoteFinding) => one.position ?? `?${one.family ?? ""}`;

/** What the parser reads from a labelled note, in the label's terms. */
export function readNote({ text, reel_kind, cell, complaint }: LabelledNote): Read[] {
  return noteFindings(text, { reel_kind, cell, complaint }).findings.map((one) =>
    ({ place: placeOf(one), action: one.action ?? "none", qty: one.qty, mode: one.mode, confidence: one.confidence }));
}

/** Findings of a note as `place action` or, where pieces were replaced or wanted, `place action qty`, in the order they are read. */
export function said(text: string, reel_kind: ReelKind | null = "spinning", more: Partial<NoteContext> = {}): string[] {
  return noteFindings(text, { reel_kind, cell: "note", ...more }).findings
    .map((one) => `${placeOf(one)} ${one.action ?? "none"}${one.qty === null ? "" : ` ${one.qty}`}`);
}
