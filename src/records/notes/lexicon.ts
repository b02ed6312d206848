import { actions, complaints, jobs, modes, modeSpellings, positions, positionSpellings } from "../vocabulary-tables.ts";
import type { Action, ReelKind } from "../vocabulary-tables.ts";
import { DONE, FAULTY, WRONG } from "./doings.ts";
import { SAYS, type Say } from "./sayings.ts";
import { FURTHER_DONE, FURTHER_FAULTY, FURTHER_SAYS, FURTHER_WRONG } from "./further-words.ts";
import { FLY_NAMES } from "./fly-names.ts";
import { OTHER_NAMES } from "./other-names.ts";
import { REVOLVING_NAMES } from "./revolving-names.ts";
import { SPINNING_NAMES } from "./spinning-names.ts";
import { FAMILY_WORD, MORE_NAMES, SIDES } from "./part-words.ts";
import { ambiguousPhrases } from "./ambiguous.ts";
import { phraseWords } from "./words.ts";

/** One thing a word of fault can mean: for which families (none: all), and the grade it proves. */
export interface ModeReading { readonly mode: string | null; readonly only_families: readonly string[]; readonly grade: number | null }
export interface ActionReading { readonly code: string; readonly action: Action }
/** All that a phrase can be. `places`: positions it may name; empty for none. */
export interface Phrase {
  readonly places: readonly string[];
  /** Positions it may name where a kind of reel has none of `places`. */
  readonly further: readonly string[];
  readonly modes: readonly ModeReading[]; readonly action: ActionReading | null;
  readonly say: Say | null; readonly complaint: boolean; readonly side: boolean;
  /** It stands for a part even where it names no position by itself. */
  readonly part: boolean;
  /** The family that its last or first word names. */
  readonly family: string | null;
}
interface Draft {
  places: string[];
  further: string[];
  modes: ModeReading[];
  action: ActionReading | null;
  say: Say | null;
  complaint: boolean;
  side: boolean;
  part: boolean;
  family: string | null;
}

const drafts = new Map<string, Draft>();
function draft(text: string): Draft {
  const key = phraseWords(text).join(" ");
  const family = FAMILY_WORD.get(key.slice(key.lastIndexOf(" ") + 1)) ?? FAMILY_WORD.get(key.split(" ")[0] ?? "") ?? null;
  const here = drafts.get(key) ?? { places: [], further: [], modes: [], action: null, say: null, complaint: false, side: false, part: false, family };
  drafts.set(key, here);
  return here;
}

const byCode = new Map(actions.map((row) => [row.code, row.action]));
export const kindsOf: ReadonlyMap<string, readonly ReelKind[]> = new Map(positions.map((row) => [row.position, row.reel_kinds]));
export const familyOf: ReadonlyMap<string, string> = new Map(positions.map((row) => [row.position, row.family]));
export const mostOf: ReadonlyMap<string, number | null> = new Map(positions.map((row) => [row.position, row.qty_max]));

/** Names of things that are used up, not fitted: in a note they tell what was done, not what failed. */
const USED = new Set(positions.filter((row) => row.group === "CN" && row.position !== "screws_misc").map((row) => row.position));
/** Words of parts that also stand in spellings of faults ("pinched seal"): there the part speaks for itself. */
const HEADS = new Set([...FAMILY_WORD.keys(), "drag", "roller", "sleeve", "spool", "bail", "felt", "cork", "carbon", "handle", "rotor", "clutch"]);
const NOT_MODES = new Set(["not written", "no fault found"]);
/** Spellings of the vocabulary that mean something else in a sentence, or are read by a rule. */
const NO_MODE = new Set(["set", "gone", "hard", "line", "intermittent", "fine", "ok", "flat", "solid", "blue", "brown", "new", "torn", "play", "stripped",
  "nicked", "lost", "old", "wear", "impact", "coned"]);

function addModes(): void {
  for (const { spelling, mode, only_families } of modeSpellings) {
    if (!NOT_MODES.has(mode) && !NO_MODE.has(spelling) && !phraseWords(spelling).some((word) => HEADS.has(word))) {
      draft(spelling).modes.push({ mode, only_families, grade: null });
    }
  }
  for (const { mode } of modes) {
    const here = draft(mode);
    if (!NOT_MODES.has(mode) && !NO_MODE.has(mode) && !here.modes.some((one) => one.mode === mode) && !phraseWords(mode).some((word) => HEADS.has(word))) {
      here.modes.push({ mode, only_families: [], grade: null });
    }
  }
  draft("torn").modes.push({ mode: "shredded", only_families: ["drag washer"], grade: null });
  draft("play").modes.push({ mode: "play", only_families: [], grade: null });
  draft("wear").modes.push({ mode: "worn", only_families: [], grade: null });
  for (const [mode, phrases, only_families] of [...WRONG, ...FURTHER_WRONG]) {
    for (const text of phrases) draft(text).modes.unshift({ mode: NOT_MODES.has(mode) ? null : mode, only_families, grade: null });
  }
  for (const [grade, texts] of [...FAULTY, ...FURTHER_FAULTY]) for (const text of texts) draft(text).modes.push({ mode: null, only_families: [], grade });
}

function place(position: string, text: string): void {
  const words = phraseWords(text), key = words.join(" ");
  const bare = words.filter((word) => (drafts.get(word)?.modes.length ?? 0) === 0).join(" ");
  const name = bare === "" ? key : bare;
  if (name !== key && drafts.get(name)?.places.length) return;
  const here = draft(name);
  if (!here.places.includes(position)) here.places.push(position);
}

/** Names of two words stand for the same part the other way round ("bearing AR"), unless that is the name of another. */
function turned(): void {
  for (const [key, { places }] of [...drafts]) {
    const words = key.split(" "), other = [...words].reverse().join(" ");
    const there = phraseWords(other).join(" ");
    if (words.length === 2 && places.length > 0 && !words.includes("set") && !drafts.has(there)) draft(other).places.push(...places);
  }
}

function addPlaces(): void {
  const known = positions.filter((row) => !USED.has(row.position));
  for (const row of known) {
    place(row.position, row.position.replaceAll("_", " "));
    if (!/[/(,]/.test(row.name)) place(row.position, row.name);
  }
  for (const row of positionSpellings) if (!USED.has(row.position) && !phraseWords(row.spelling).some((word) => /^x\d$/.test(word))) place(row.position,
    row.spelling);
  for (const [position, names] of [...MORE_NAMES, ...OTHER_NAMES]) for (const name of names) place(position, name);
  turned();
  for (const [position, names] of [...SPINNING_NAMES, ...REVOLVING_NAMES, ...FLY_NAMES]) for (const name of names) {
    const here = draft(name);
    if (!here.places.includes(position) && !here.further.includes(position)) here.further.push(position);
  }
  for (const text of [...ambiguousPhrases, ...FAMILY_WORD.keys()]) draft(text).part = true;
}

/** The name of a job that is no part and no work by itself ("external") tells nothing. */
function nameJob(here: Draft): void {
  if (!here.part && here.places.length + here.further.length === 0 && here.action === null) here.say ??= "neutral";
}

function addSayings(): void {
  for (const [code, phrases] of [...DONE, ...FURTHER_DONE]) {
    const action = byCode.get(code) ?? (code === "REFIT" ? "adjusted" : null);
    if (action === null) throw new RangeError(`lexicon: needs an action for every code, has none for ${code}`);
    for (const text of phrases) draft(text).action = { code, action };
  }
  draft("new").action = { code: "REPL", action: "replaced" };
  draft("nipped").action = { code: "TIGHT", action: "adjusted" };
  for (const [say, phrases] of [...Object.entries(SAYS) as [Say, readonly string[]][], ...FURTHER_SAYS]) for (const text of phrases) draft(text).say = say;
  for (const row of jobs) {
    if (row.job === "full service") for (const text of row.spellings) draft(text).say = "whole job";
    else if (row.job !== "other") nameJob(draft(row.job));
  }
  for (const text of SIDES) draft(text).side = true;
}

/** A complaint that is only a part and its fault ("rotor loose") is read as such; others say what the reel does. */
function tiles(words: readonly string[]): boolean {
  for (let at = 0; at < words.length;) {
    let length = 0;
    for (let to = words.length; to > at && length === 0; to--) {
      const here = drafts.get(words.slice(at, to).join(" "));
      if (here && (here.places.length + here.further.length > 0 || here.part || here.modes.length > 0)) length = to - at;
    }
    if (length === 0) return false;
    at += length;
  }
  return true;
}

function addComplaints(): void {
  const more = ["not casting", "click when turning", "click each turn", "turn backwards", "slip backwards", "goes backwards", "slips back", "slip back",
    "on cast", "mid cast", "not level winding", "wont go", "will not", "birds nest"];
  for (const text of [...complaints.flatMap((row) => row.spellings), ...more]) {
    const words = phraseWords(text);
    if (words.length > 1 && (text === "handle play" || !tiles(words)) && !words.includes("service")) draft(text).complaint = true;
  }
}

addModes();
addPlaces();
addSayings();
addComplaints();
drafts.delete("");

/** Every phrase that means something in a note, by its words. */
export const phrases: ReadonlyMap<string, Phrase> = drafts;
const onKind = (positions: readonly string[], kind: ReelKind | null) =>
  kind === null || kind === "other" ? positions : positions.filter((position) => kindsOf.get(position)?.includes(kind));

/** The positions a phrase may name on this kind of reel. */
export function placesOn({ places, further }: Phrase, kind: ReelKind | null): readonly string[] {
  const here = onKind(places, kind);
  return here.length > 0 ? here : onKind(further, kind);
}
/** A phrase with its words as one text, and how many they are. */
export interface Ending { readonly phrase: Phrase; readonly key: string; readonly length: number }
/** Phrases by their words, one after the other: the words so far may be a phrase, and may go on. */
export interface Branch { ending: Ending | null; next: Map<string, Branch> | null }
export const phraseTree: ReadonlyMap<string, Branch> = (() => {
  const roots = new Map<string, Branch>();
  for (const [key, phrase] of drafts) {
    let branches = roots, here: Branch | undefined;
    const words = key.split(" ");
    for (const word of words) {
      if (here) branches = here.next ??= new Map<string, Branch>();
      here = branches.get(word) ?? { ending: null, next: null };
      branches.set(word, here);
    }
    if (here) here.ending = { phrase, key, length: words.length };
  }
  return roots;
})();
/** Every single word of ours, against which a misspelling is measured. */
export const knownWords: ReadonlySet<string> = new Set([...drafts.keys()].flatMap((key) => key.split(" ")).filter((word) => /^[a-z]{3,}$/.test(word)));
/** Words of parts' names alone. */
export const partWords: ReadonlySet<string> = new Set([...drafts].filter(([, here]) => here.places.length + here.further.length > 0 || here.part).flatMap(([key]) => key.split(" ")));
/** Words that prove that a note speaks of a reel: of parts, of faults and of work. */
export const benchWords: ReadonlySet<string> = new Set([...drafts].filter(([, here]) => here.places.length + here.further.length > 0 || here.modes.length > 0 || here.action)
  .flatMap(([key]) => key.split(" ")).filter((word) => word.length > 2
    && !["the", "and", "for", "with", "off", "out", "not", "from", "one", "new"].includes(word)));
