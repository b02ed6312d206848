import type { Reach, Spoken, Told } from "./attach.ts";
import { confidence, isTurned, type Turning } from "./confidence.ts";
import { familyOf } from "./lexicon.ts";
import { isWorthAsking } from "./likely-places.ts";
import type { Mark } from "./marks.ts";
import { lastWord } from "./part-names.ts";
import { FAMILY_WORD } from "./part-words.ts";
import type { NoteCell, NoteFinding } from "./note-finding.ts";
import { pieces } from "./quantities.ts";
import type { Token } from "./tokens.ts";
import { modes } from "../vocabulary-tables.ts";
import type { Action } from "../vocabulary-tables.ts";

/** What was decided for one part, and how. */
interface Decided { action: Action | null; code: string | null; rule: string; reach: Reach | "cell" | "whole job" | null }

const STRENGTH: Readonly<Record<string, number>> = { replaced: 6, wanted: 5, adjusted: 4, cleaned: 3, lubricated: 2, left: 0 };
const strength = ({ mark }: Told) => (mark.action?.code === "REFIT" ? 1 : STRENGTH[mark.action?.action ?? ""] ?? 0);
const saidOf = (one: Spoken, say: Mark["say"]) => one.told.find(({ mark }) => mark.say === say);
const RULES: Readonly<Record<Reach, string>> = {
  beside: "said beside the part", shared: "said of all in the list", after: "said after the part", ahead: "said before the list",
    "next sentence": "said in the next sentence",
};

/** An action word that means something else on this family ("seal nipped" is a fault). */
const holds = (mark: Mark, family: string | null) => !(mark.phrase === "nipped" && family === "seal") && (mark.phrase !== "locked" || family === "screw");

/** A part that is not to be had stays wanted when the customer is told so. */
const UNAVAILABLE = /^(?:no|none|not|out|on|order)/;
/** What was fitted for now was fitted. */
const FOR_NOW = /^for (?:now|the moment|the time being)$/;
/** What came off its place and was put back was set right, and not only put together again. */
const DISPLACED = /^(?:popped|jumped|slipped|fell|came|come|dislodged|sprung|adrift|off its|off the|out of)/;

/** "Replace next time": the word of what is to be done, not of what was. */
const INFINITIVE: ReadonlySet<string> = new Set(["replace", "renew", "change", "swap", "fit", "clean", "grease", "oil", "repair", "tighten"]);

function decided(one: Spoken, cell: NoteCell, listed: boolean): Decided {
  const acts = one.told.filter(({ mark }) => mark.kind === "action" && holds(mark, one.part.family) && !onlyNeeded(one, mark));
  const displaced = one.told.some(({ mark }) => DISPLACED.test(mark.phrase));
  const weight = (told: Told) => (displaced && told.mark.action?.code === "REFIT" ? 4 : strength(told));
  const best = [...acts].sort((a, b) => weight(b) - weight(a))[0] ?? null;
  const later = saidOf(one, "later"), declined = saidOf(one, "declined"), good = saidOf(one, "good"), needs = saidOf(one, "needs");
  const said = (told: Told, action: Action, rule: string): Decided =>
    ({ action, code: told.mark.action?.code ?? null, rule: `${RULES[told.reach]}${rule}`, reach: told.reach });
  const did = best?.mark.action ?? null, beside = (told: Told | undefined) => told?.reach === "beside" || told?.reach === "shared" || told?.reach === "ahead";
  const fitted = best && best.mark.phrase !== "new" && !INFINITIVE.has(best.mark.phrase);
  if (fitted && did && later && FOR_NOW.test(later.mark.phrase)) return said(best, did.action, "");
  if (best && did && (did.action === "replaced" || did.action === "wanted")
    && ((beside(later) && best.reach === "beside") || (declined?.mark.phrase !== "left" && beside(declined) && beside(best)))) return said((later
    ?? declined) as Told, "left", ", put off");
  if (best && later && best.item === later.item && INFINITIVE.has(best.mark.phrase)) return said(later, "left", ", put off");
  const order = acts.find(({ mark }) => mark.action?.code === "ORDER");
  if (best?.mark.phrase === "new" && order) return said(order, "wanted", "");
  if (best?.mark.phrase === "new" && (declined || (needs && later))) return said((declined ?? later) as Told, "left", ", not done");
  if (best?.mark.phrase === "new" && needs) return said(needs, "wanted", "");
  const toldOnly = declined && /^t[eo]l[ld] /.test(declined.mark.phrase) && UNAVAILABLE.test(best?.mark.phrase ?? "");
  if (declined && (!did || (did.action === "wanted" && !toldOnly))) return said(declined, "left", ", not done");
  if (best && did) return said(best, did.action, "");
  const routine = saidOf(one, "routine");
  if (routine && cell !== "parts" && !good && !later) return { ...said(routine, "replaced", ""), code: "REPL_PREV" };
  if (later) return said(later, "left", ", put off");
  if (needs) return said(needs, "wanted", "");
  if (good && !one.told.some(({ mark }) => mark.kind === "mode")) return said(good, "left", ", fine");
  if (cell === "parts") return { action: good ? "left" : "replaced", code: "REPL", rule: "listed among the parts", reach: "cell" };
  if (listed && one.bare) return { action: "replaced", code: "REPL", rule: "listed after a whole service, with a quantity", reach: "whole job" };
  if (good) return said(good, "left", ", usable");
  return { action: null, code: null, rule: "no action said", reach: null };
}

/** "Needs new one next time": the new one is for later. */
function onlyNeeded(one: Spoken, mark: Mark): boolean {
  const later = saidOf(one, "later") ?? saidOf(one, "declined");
  return later !== undefined && /^new ./.test(mark.phrase) && one.told.some((had) => had.mark.say === "needs" && had.mark.to === mark.from);
}

interface Fault { mode: string | null; grade: number | null }
/** Faults that mean the part no longer does its work, and on which families (none: all). */
const LOST: ReadonlyMap<string, readonly string[]> = new Map([
  ["seized", []], ["broken", []], ["fatigue break", []], ["chipped tooth", []], ["stripped", ["screw", "gear"]],
    ["missing", ["spring", "washer or shim", "seal"]],
]);

const familiesOf: ReadonlyMap<string, readonly string[]> = new Map(modes.map(({ mode, families }) => [mode, families]));

/** Said of anything that moves, whatever the trade's list of faults names. */
const OF_ANYTHING: ReadonlySet<string> = new Set(["worn", "dry"]);

/** Whether such parts have this fault: "oring / pinion bearing seized" says nothing of the O-ring. */
const befalls = (mode: string | null, family: string | null) => mode === null || family === null
  || (familiesOf.get(mode) ?? [family]).includes(family) || (family !== "seal" && OF_ANYTHING.has(mode));

/** The fault that is said nearest to the part and can befall its family. */
function faultOf(one: Spoken, family: string | null, code: string | null): Fault {
  const faults = one.told.filter(({ mark }) => mark.kind === "mode")
    .sort((a, b) => Math.abs(a.mark.from - one.part.from) - Math.abs(b.mark.from - one.part.from));
  let grade: number | null = null, mode: string | null = saidOf(one, "without") ? "missing" : null;
  for (const { mark, reach, item } of faults) {
    const fitting = mark.modes.find((reading) => family !== null && reading.only_families.includes(family))
      ?? mark.modes.find((reading) => reading.only_families.length === 0);
    if (!fitting || (reach === "shared" && item !== one.item && !befalls(fitting.mode, family))) continue;
    mode ??= fitting.mode;
    grade = Math.max(grade ?? 0, fitting.grade ?? 0, lost(fitting.mode, family) ? 4 : 0) || grade;
  }
  if (mode === null && (code === "STRAIGHT" || code === "TIGHT")) mode = code === "STRAIGHT" ? "bent" : "loose";
  return { mode, grade };
}

function lost(mode: string | null, family: string | null): boolean {
  const families = mode === null ? undefined : LOST.get(mode);
  return families !== undefined && (families.length === 0 || (family !== null && families.includes(family)));
}

/** Words we know nothing of, in all that a part's finding was read from. */
export const strangers = (one: Spoken): number => [...new Set([one.item, ...one.told.map(({ item }) => item)])].reduce((sum, item) => sum + item.strangers, 0);

/** A part's finding as it is made: the note with its tokens, its cell, whether bare parts are listed as fitted, and which words may turn the sense. */
export interface Around {
  readonly found: readonly Token[]; readonly note: string; readonly cell: NoteCell; readonly listed: boolean; readonly turning: Turning;
}

/** The findings of one part as spoken of; several where its words name more than one position ("main bearings"). */
export function findings(one: Spoken, { found, note, cell, listed, turning }: Around): NoteFinding[] {
  const done = decided(one, cell, listed), doubtful = one.item.doubt && done.action !== "wanted";
  const tokens = [one.part, ...one.told.map(({ mark }) => mark)];
  const from = Math.min(one.item.from, ...tokens.map((mark) => mark.from)), to = Math.max(one.item.to, ...tokens.map((mark) => mark.to));
  const start = found[from]?.start ?? 0, end = found[to - 1]?.end ?? note.length;
  const loose = cell === "parts" && one.part.phrase === "screw" ? "screws_misc" : null;
  const counts = done.action === "replaced" || done.action === "wanted";
  const asked = counts && found[one.part.to]?.kind === "doubt" && FAMILY_WORD.has(lastWord(one.part.phrase));
  const sure = confidence(one, { ...done, doubtful, turned: isTurned(turning, one) });
  const placed = one.part.positions.length > 0 && !asked && !(one.part.guessed && !isWorthAsking(one.part, done.action));
  return (placed ? one.part.positions : [loose]).map((position) => {
    const family = position === null ? one.part.family : familyOf.get(position) ?? null, fault = faultOf(one, family, done.code);
    const count = counts ? pieces(found, one, position, cell === "parts") : null;
    const fine = done.action === "left" && saidOf(one, "good") !== undefined && fault.mode === null;
    const mild = doubtful || done.action === "cleaned" || done.action === "lubricated" || saidOf(one, "later") !== undefined;
    return {
      position, family, action: done.action, routine: counts && (saidOf(one, "routine") !== undefined || done.code === "MODIFY"), mode: fault.mode,
      grade_at_least: mild || fine ? null : done.code === "EXTRACT" ? Math.max(3, fault.grade ?? 0) : fault.grade,
      grade_at_most: fine ? 1 : mild ? 2 : null,
      qty: count?.qty ?? null, qty_assumed: count?.assumed ?? false, size: one.item.sizes[0] ?? null, doubtful,
      text: note.slice(start, end), start, end, rule: `${one.part.own ? "the shop's own spelling, " : one.part.guessed ? "likely place, " : one.part.corrected ? "misspelt part, " : ""}${done.rule}`,
      confidence: sure,
    };
  });
}
