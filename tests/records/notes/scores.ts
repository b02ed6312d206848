import { positions } from "../../../src/records/vocabulary.ts";
import type { LabelledNote } from "./corpus.ts";

const familyOf = new Map(positions.map((row) => [row.position, row.family]));

/** What was read from a note, in the label's own terms. */
export interface Read { place: string; action: string; qty: number | null; mode: string | null; confidence: number }
export interface Score { right: number; extra: number; missed: number }
export interface Wrong { note: LabelledNote; read: readonly Read[]; extra: string[]; missed: string[] }
export interface Scores {
  notes: number; position: Score; with_action: Score; qty: Score; mode: Score;
  by_position: ReadonlyMap<string, { position: Score; with_action: Score }>;
  sure: Score; wrong: Wrong[];
}

export const precision = ({ right, extra }: Score): number => right / (right + extra);
export const recall = ({ right, missed }: Score): number => right / (right + missed);
const none = (): Score => ({ right: 0, extra: 0, missed: 0 });

function add(to: Score, expected: ReadonlySet<string>, read: ReadonlySet<string>): void {
  for (const one of read) to[expected.has(one) ? "right" : "extra"]++;
  for (const one of expected) if (!read.has(one)) to.missed++;
}
const part = (words: ReadonlySet<string>, place: string) => new Set([...words].filter((word) => word.split(":")[0] === place));

/**
 * An unspecified part whose label names the place is a question left open: a miss of the place, never a wrong place. It is
 * taken out of what was read, once for each such label.
 */
function leftOpen(read: readonly Read[], note: LabelledNote): Read[] {
  const open = note.expected.filter((label) => !read.some((one) => one.place === label.place));
  return read.filter((one) => {
    if (!one.place.startsWith("?") || note.expected.some((label) => label.place === one.place)) return true;
    const at = open.findIndex((label) => familyOf.get(label.place) === one.place.slice(1) && label.action === one.action);
    if (at >= 0) open.splice(at, 1);
    return at < 0;
  });
}

/** Scores of `reader` over labelled notes: found and labelled places are compared as sets, note by note. */
export function scores(notes: readonly LabelledNote[], reader: (note: LabelledNote) => Read[]): Scores {
  const position = none(), with_action = none(), qty = none(), mode = none(), sure = none(), wrong: Wrong[] = [];
  const by_position = new Map<string, { position: Score; with_action: Score }>();
  for (const note of notes) {
    const read = leftOpen(reader(note), note);
    const places = new Set(read.map((one) => one.place)), wanted = new Set(note.expected.map((one) => one.place));
    const did = new Set(read.map((one) => `${one.place}:${one.action}`)), should = new Set(note.expected.map((one) => `${one.place}:${one.action}`));
    add(position, wanted, places);
    add(with_action, should, did);
    for (const place of new Set([...places, ...wanted])) {
      const here = by_position.get(place) ?? { position: none(), with_action: none() };
      add(here.position, part(wanted, place), part(places, place));
      add(here.with_action, part(should, place), part(did, place));
      by_position.set(place, here);
    }
    for (const one of read) if (one.confidence >= 0.9) sure[should.has(`${one.place}:${one.action}`) ? "right" : "extra"]++;
    for (const label of note.expected) {
      const same = read.find((one) => one.place === label.place);
      if (same && (label.action === "replaced" || label.action === "wanted")) qty[same.qty === label.qty ? "right" : "extra"]++;
      if (same && label.mode !== null) mode[same.mode === label.mode ? "right" : same.mode === null ? "missed" : "extra"]++;
    }
    const extra = [...did].filter((one) => !should.has(one)), missed = [...should].filter((one) => !did.has(one));
    if (extra.length > 0 || missed.length > 0) wrong.push({ note, read, extra, missed });
  }
  return { notes: notes.length, position, with_action, qty, mode, by_position, sure, wrong };
}
