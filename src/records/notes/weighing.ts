import { decides, type Spoken } from "./attach.ts";
import { strangers } from "./finding.ts";
import type { Mark } from "./marks.ts";
import type { NoteCell } from "./note-finding.ts";

/** A finding read from more words than this that we do not know is a guess. */
const MOST_STRANGE = 3;
/** Words that are no name of a part by themselves. */
const BARE_WORDS: ReadonlySet<string> = new Set(["drag", "click"]);

/** What the whole note says about when work was done: tokens of its last action, and of the last action on a part of each sentence. */
export interface Work { readonly last: number; readonly by_sentence: ReadonlyMap<number, Spoken> }

/** The first breath of a cell that starts with what the customer said; a part in it is found only when something was done to it. */
export function isComplaint(one: Spoken, cell: NoteCell): boolean {
  if (one.told.some(({ mark }) => mark.kind === "action")) return false;
  const opening = cell === "complaint and note" && one.sentence === 0 && one.item.from === 0;
  return opening || one.item.complaint || (one.item.symptom && one.told.every(({ mark, reach }) => mark.kind === "mode" && reach === "beside"));
}

/** Whether a word of fault can be said of this family. */
function fits(mark: Mark, family: string | null): boolean {
  if (family === "structure" && mark.modes.every((reading) => reading.mode === "dry")) return false;
  return mark.modes.some((reading) => reading.only_families.length === 0 || (family !== null && reading.only_families.includes(family)));
}

/** A fault that the work on another part behind it in the sentence explains ("line guide loose, pawl cap tightened"). */
function explained(one: Spoken, work: Work): boolean {
  const other = work.by_sentence.get(one.sentence);
  return other !== undefined && other.part.from > one.part.from
    && other.told.some(({ mark }) => mark.kind === "action" && !one.told.some((had) => had.mark === mark));
}

const settles = (mark: Mark) => mark.kind === "action" || mark.say === "good" || mark.say === "declined";
function says({ part, told }: Spoken): boolean {
  return told.some(({ mark }) => mark.kind !== "mode" || (part.phrase !== "click" && fits(mark, part.family)));
}

/** A word with several meanings, of which something is said farther off. */
const isGuess = ({ part, told }: Spoken) => part.ambiguous && !part.phrase.includes(" ")
  && told.every(({ reach }) => reach === "after" || reach === "next sentence");

/** A part only mentioned: in doubt, among words we do not know, explained by later work, or by a word that is no name by itself. */
export function mentioned(one: Spoken, work: Work): boolean {
  const { part, item, told } = one;
  if (strangers(one) > MOST_STRANGE || (strangers(one) > 0 && isGuess(one))) return true;
  if (part.phrase === "gearbox" && !told.some(({ mark }) => mark.kind === "action")) return true;
  if (work.last >= 0 && told.length === 0) return true;
  if (told.some(({ mark }) => mark.say === "now") && !told.some(({ mark }) => settles(mark))) return true;
  if (part.from < work.last && !told.some(({ mark }) => decides(mark))) return true;
  if (told.every(({ mark }) => mark.kind === "mode") && explained(one, work)) return true;
  const undecided = one.uncertain || (item.unknown > 0 && told.some(({ mark }) => mark.kind === "mode"));
  if (undecided && !told.some(({ mark }) => settles(mark))) return true;
  if (says(one)) return false;
  return item.doubt || item.unknown > 0 || item.cleared || told.length > 0 || BARE_WORDS.has(part.phrase)
    || item.told.some((mark) => mark.say === "not" || mark.say === "same");
}

/** When work was done in a note, from all that is said of its parts. */
export function workOf(last: number, spoken: readonly (readonly Spoken[])[]): Work {
  const by_sentence = new Map<number, Spoken>();
  for (const sentence of spoken) for (const one of sentence) if (one.told.some(({ mark }) => mark.kind === "action")) by_sentence.set(one.sentence, one);
  return { last, by_sentence };
}
