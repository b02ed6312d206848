import { readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import type { NoteCell } from "../../../src/records/notes/note-finding.ts";
import type { ReelKind } from "../../../src/records/vocabulary.ts";

/** One finding a careful reader would write; `place` is a position, or a family after `?`. */
export interface Label { place: string; action: string; qty: number; mode: string | null }
export interface LabelledNote {
  id: string; reel_kind: ReelKind | null; cell: NoteCell; complaint: string | null; text: string; expected: Label[];
}

const CELLS: Record<string, NoteCell> = { note: "note", parts: "parts", complaint: "complaint", "complaint-and-note": "complaint and note" };

function labels(expected: string): Label[] {
  return expected === "-" ? [] : expected.split(";").map((one) => {
    const [place = "", action = "", qty = "1", mode] = one.split(":");
    return { place, action, qty: Number(qty), mode: mode ?? null };
  });
}

/** Files of labelled notes, see README.md: all tuned on by now but `fresh-notes-3`, which is held out. */
export type NotesFile = "corpus" | "fresh-notes-tuning" | "fresh-notes-held-out" | "fresh-notes-2-tuning" | "fresh-notes-2-held-out" | "fresh-notes-3";

/** The labelled notes of one file, in its order. */
export function corpus(file: NotesFile = "corpus"): LabelledNote[] {
  const csv = readFileSync(join(import.meta.dirname, `${file}.csv`), "utf8");
  return Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data.map((line) => {
    const cell = CELLS[line["cell"] ?? ""];
    if (!cell) throw new RangeError(`corpus: needs a known cell, not ${line["cell"] ?? "nothing"}`);
    return {
      id: line["id"] ?? "", reel_kind: (line["reel_kind"] || null) as ReelKind | null, cell, complaint: line["complaint"] || null,
      text: line["text"] ?? "", expected: labels(line["expected"] ?? ""),
    };
  });
}
