import { jobs } from "../vocabulary-tables.ts";
import { attach, decides, type Spoken } from "./attach.ts";
import { findings, strangers } from "./finding.ts";
import type { Item } from "./item.ts";
import { sentences } from "./items.ts";
import { marks, type Mark } from "./marks.ts";
import type { NoteCell, NoteContext, NoteFinding, NoteReading } from "./note-finding.ts";
import { referring } from "./referring.ts";
import { parted } from "./spelling.ts";
import { tokens, type Token } from "./tokens.ts";
import { phraseWords } from "./words.ts";

const STRENGTH = ["left", "lubricated", "cleaned", "adjusted", "wanted", "replaced"];
const strength = (one: NoteFinding) => (one.action === null ? -1 : STRENGTH.indexOf(one.action));

/** A finding, and whether it is only mentioned: by itself it is none, but its fault may belong to a firm one. */
interface Weighed { readonly one: NoteFinding; readonly weak: boolean }

/** One finding a position: the strongest thing done to it, with the fault said of it elsewhere in the note. */
function merged(all: readonly Weighed[], cell: NoteCell): NoteFinding[] {
  const out = new Map<string, NoteFinding>(), firm = new Set<string>();
  all.forEach(({ one, weak }, index) => {
    if (!weak) firm.add(one.position ?? `?${index}`);
    const key = one.position ?? `?${index}`, had = out.get(key);
    if (!had) { out.set(key, one); return; }
    const best = strength(one) > strength(had) ? one : had, other = best === one ? had : one;
    const least = Math.max(best.grade_at_least ?? 0, other.grade_at_least ?? 0);
    out.set(key, {
      ...best, mode: best.mode ?? other.mode, size: best.size ?? other.size, routine: best.routine || other.routine,
      grade_at_least: best.grade_at_most !== null || least === 0 ? best.grade_at_least : least,
      ...(cell === "parts" && best.qty !== null && other.qty !== null && best.action === other.action && best.start !== other.start ? { qty: best.qty + other.qty } : {}),
      ...(best.qty_assumed && other.qty !== null && !other.qty_assumed ? { qty: other.qty, qty_assumed: false } : {}),
    });
  });
  return [...out].flatMap(([key, one]) => (firm.has(key) ? [one] : []));
}

/** The first breath of a cell that starts with what the customer said; a part in it is found only when something was done to it. */
function isComplaint(one: Spoken, cell: NoteCell): boolean {
  const opening = one.sentence === 0 && one.item.from === 0, did = one.told.some(({ mark }) => mark.kind === "action");
  return !did && ((cell === "complaint and note" && opening) || one.item.complaint || (one.item.symptom && one.told.every(({ mark, reach }) => mark.kind === "mode" && reach === "beside")));
}

/** Whether a word of fault can be said of this family. */
const fits = (mark: Mark, family: string | null) =>
  !(family === "structure" && mark.modes.every((reading) => reading.mode === "dry")) && mark.modes.some((reading) => reading.only_families.length === 0 || (family !== null && reading.only_families.includes(family)));

/** A fault that the work on another part behind it in the sentence explains ("line guide loose, pawl cap tightened"). */
const explained = (one: Spoken, all: readonly Spoken[]) =>
  all.some((other) => other.part.from > one.part.from && other.told.some(({ mark }) => mark.kind === "action" && !one.told.some((had) => had.mark === mark)));

/** A finding read from more words than this that we do not know is a guess. */
const MOST_STRANGE = 1;

/** A part only mentioned: in doubt, among words we do not know, or by a word that is no name of a part by itself. */
function mentioned(one: Spoken, all: readonly Spoken[], last_work: number): boolean {
  if (strangers(one) > MOST_STRANGE) return true;
  if (one.part.from < last_work && !one.told.some(({ mark }) => decides(mark))) return true;
  if (!one.told.some(({ mark }) => mark.kind !== "mode") && explained(one, all)) return true;
  const undecided = one.uncertain || (one.item.unknown > 0 && one.told.some(({ mark }) => mark.kind === "mode"));
  if (undecided && !one.told.some(({ mark }) => mark.kind === "action" || mark.say === "good" || mark.say === "declined")) return true;
  const said = one.told.some(({ mark }) => (mark.kind !== "say" || mark.say !== "routine") && (mark.kind !== "mode" || (one.part.phrase !== "click" && fits(mark, one.part.family))));
  return !said && (one.item.doubt || one.item.unknown > 0 || one.item.cleared || one.told.length > 0 || one.part.phrase === "drag" || one.part.phrase === "click" || one.item.told.some((mark) => mark.say === "not" || mark.say === "same"));
}

const jobNames: ReadonlySet<string> = new Set(jobs.flatMap((row) => [row.job, ...row.spellings]).map((text) => phraseWords(text).join(" ")));

/** A first sentence that is the name of a job ("line roller.") says what the reel was in for, and names no part. */
function namesJob(items: readonly Item[], found: readonly Token[]): boolean {
  const from = items[0]?.from ?? 0, to = items.at(-1)?.to ?? 0;
  return from === 0 && jobNames.has(found.slice(0, to).map((token) => token.word).join(" "));
}

/** Sentences in which a bare list means fitted parts: it follows a whole service, and an item of it carries a quantity. */
function fittedLists(all: readonly (readonly Item[])[], found: readonly Token[]): ReadonlySet<number> {
  const out = new Set<number>();
  const whole = (items: readonly Item[] | undefined) => items?.some((item) => item.told.some((mark) => mark.say === "whole job" && mark.to <= (item.parts[0]?.from ?? mark.to))) ?? false;
  all.forEach((items, index) => {
    const counted = items.some((item) => item.parts.length > 0 && found.slice(item.from, item.to).some((token) => token.kind === "quantity"));
    if (counted && (whole(items) || whole(all[index - 1]))) out.add(index);
  });
  return out;
}

function unknownWords(found: readonly Token[], read: readonly Mark[], text: string): string[] {
  const known = new Set(read.flatMap((mark) => Array.from({ length: mark.to - mark.from }, (_, index) => mark.from + index)));
  const out: string[] = [];
  let start = -1, end = -1;
  const close = () => { if (start >= 0) out.push(text.slice(start, end).trim()); start = -1; };
  found.forEach((token, at) => {
    if (token.kind !== "word" || known.has(at) || token.word.length < 3 || /^\d/.test(token.word)) return close();
    if (start < 0) start = token.start;
    end = token.end;
  });
  close();
  return out;
}

const counts = (one: NoteFinding) => one.position !== null || (one.family !== null && (one.action === "replaced" || one.action === "wanted"));

/**
 * What a bench note says was found and done, part by part.
 *
 * Reads spellings, quantities, sizes, negation ("not replaced"), doubt ("?", "poss"), putting off ("next time") and lists.
 * Words with several meanings are settled by the reel kind and their neighbours or left without a position; nothing is guessed.
 */
export function noteFindings(text: string, context: NoteContext): NoteReading {
  const found = parted(tokens(text), context.book ?? null);
  const complaint = context.complaint ? phraseWords(context.complaint) : [];
  const read = marks(found, { reel_kind: context.reel_kind, complaint, parts_cell: context.cell === "parts", book: context.book ?? null });
  const whole_job = read.some((mark) => mark.say === "whole job"), unknown = unknownWords(found, read, text);
  if (context.cell === "complaint") return { findings: [], whole_job, unknown };
  const whole = sentences(found, referring(found, read, context.reel_kind), context.cell === "parts");
  const all = context.cell === "note" && whole[0] && namesJob(whole[0], found) ? [whole[0].map((item) => ({ ...item, parts: [] })), ...whole.slice(1)] : whole;
  const lists = fittedLists(all, found), last_work = Math.max(-1, ...all.flat().flatMap((item) => item.told.filter((mark) => mark.kind === "action").map((mark) => mark.from)));
  const weighed = attach(all).flatMap((sentence) => sentence.filter((one) => !isComplaint(one, context.cell)).flatMap((spoken) => {
    const weak = context.cell === "parts" ? spoken.item.doubt && spoken.bare : mentioned(spoken, sentence, last_work);
    return findings(spoken, found, text, context.cell, lists.has(spoken.sentence)).map((one) => ({ one, weak }));
  }));
  return { findings: merged(weighed, context.cell).filter(counts), whole_job, unknown };
}
