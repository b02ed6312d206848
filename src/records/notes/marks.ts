import { isAmbiguous, readAmbiguous, type Around } from "./ambiguous.ts";
import type { Say } from "./sayings.ts";
import { benchWords, familyOf, kindsOf, phrases, phraseTree, placesOn, type ActionReading, type Branch, type Ending, type ModeReading, type Phrase } from "./lexicon.ts";
import { ownMeaning, type OwnSpelling, type SpellingBook } from "./own-spellings.ts";
import { COMMON, NEEDS_NEIGHBOUR } from "./part-words.ts";
import { rightWords } from "./spelling.ts";
import type { Token } from "./tokens.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** What a stretch of words in a note was read as. `from` and `to` are token numbers, `to` not included. */
export interface Mark {
  readonly kind: "part" | "mode" | "action" | "say" | "complaint" | "side" | "ignored";
  readonly from: number;
  readonly to: number;
  readonly phrase: string;
  /** For a part: where it sits (empty when only the family is known), its family, and how sure the name is. */
  readonly positions: readonly string[];
  readonly family: string | null;
  readonly ambiguous: boolean;
  readonly plural: boolean;
  readonly modes: readonly ModeReading[];
  readonly action: ActionReading | null;
  readonly say: Say | null;
  readonly corrected: boolean;
  readonly own: boolean;
  /** Its name is one of those that no labelled note had when they were listed. */
  readonly unmet: boolean;
  /** Its place is only the likeliest one: it is asked, never taken. */
  readonly guessed: boolean;
}
export interface Surroundings {
  readonly reel_kind: ReelKind | null;
  readonly complaint: readonly string[];
  readonly parts_cell: boolean;
  readonly book: SpellingBook | null;
}
/** Short names that are words of their own unless written in capitals. */
const BARE: ReadonlySet<string> = new Set(["ar", "lineroller", "arc"]);
/** Names of what is put on, which are also words for putting it on. */
const NOUNS: ReadonlySet<string> = new Set(["oil", "grease", "lube", "threadlock"]);
const PUT_ON: ReadonlySet<string> = new Set(["on", "in", "from", "was", "is", "ok", "good", "fine", "still"]);
/** What was on it before. */
const OLD: ReadonlySet<string> = new Set(["had", "old", "red", "blue", "original", "factory"]);
/** Which of several like parts; without more we cannot tell. */
const WHICH: ReadonlySet<string> = new Set(["rear", "back", "top", "bottom", "inner", "outer", "upper", "lower", "middle", "center", "second", "other"]);
const SIDE_NAMES: ReadonlySet<string> = new Set(["left", "right", "l", "r"]);
type Named = Pick<Mark, "positions" | "family" | "ambiguous" | "plural"> & { readonly unmet?: boolean };

const NO_PART: Named = { positions: [], family: null, ambiguous: false, plural: false };
const NO_MODES: readonly ModeReading[] = [];
export interface Means {
  readonly part?: Named;
  readonly modes?: readonly ModeReading[];
  readonly action?: ActionReading | null;
  readonly say?: Say | null;
  readonly own?: boolean;
}

/** One reading; every reading has all its fields, which keeps many of them quick. */
export function marked(kind: Mark["kind"], from: number, to: number, phrase: string, corrected: boolean, means: Means): Mark {
  const { positions, family, ambiguous, plural, unmet = false } = means.part ?? NO_PART;
  return {
    kind, from, to, phrase, positions, family, ambiguous, plural, modes: means.modes ?? NO_MODES, action: means.action ?? null, say: means.say ?? null,
    corrected, own: means.own ?? false, unmet, guessed: false,
  };
}

/** Words that may stand inside what was done: "turned it round", "cleaned them up". */
const OBJECTS: ReadonlySet<string> = new Set(["it", "them", "both"]);
/** Words that may stand inside a name: "bearing behind the rotor". */
const WITHIN: ReadonlySet<string> = new Set(["the", "a", "its"]);
/** What was put on the spool may be the beginning of a part's name: "new line roller". */
const NEW_LINE: ReadonlySet<string> = new Set(["new line"]);

const onKind = (positions: readonly string[], kind: ReelKind | null) =>
  kind === null || kind === "other" ? positions : positions.filter((position) => kindsOf.get(position)?.includes(kind));
const isName = ({ places, further }: Phrase) => places.length + further.length > 0;

/** A name of parts that this kind of reel does not have. */
const ofOtherKinds = ({ phrase, key }: Ending, kind: ReelKind | null) => isName(phrase) && !phrase.part && !isAmbiguous(key)
  && phrase.say === null && placesOn(phrase, kind).length === 0;

/**
 * The longest phrase of ours that starts at word `at`, with the words it takes; null when there is none. A name that only parts of other
 * kinds of reel have gives way to a shorter one.
 */
function longest(words: readonly string[], at: number, kind: ReelKind | null): Ending | null {
  let node: Branch | undefined = phraseTree.get(words[at] ?? ""), best: Ending | null = null, next = at + 1, articles = 0;
  while (node) {
    const { ending } = node, whole = ending && (next - at === ending.length + articles || ending.phrase.action);
    if (whole && !(best && ofOtherKinds(ending, kind))) best = { ...ending, length: next - at };
    const step: Branch | undefined = node.next?.get(words[next] ?? "");
    if (!step && OBJECTS.has(words[next] ?? "")) next++;
    else if (!step && WITHIN.has(words[next] ?? "") && node.next?.has(words[next + 1] ?? "")) { next++; articles++; }
    node = step ?? node.next?.get(words[next] ?? "");
    next++;
  }
  return best && NEW_LINE.has(best.key) && longestName(words, at + 1, kind) > 0 ? { ...best, key: "new", length: 1, phrase: phrases.get("new") ?? best.phrase } : best;
}

/** How many words the name of a part takes that starts at word `at`; 0 where none does. */
function longestName(words: readonly string[], at: number, kind: ReelKind | null): number {
  const name = longest(words, at, kind);
  return name && placesOn(name.phrase, kind).length > 0 ? name.length : 0;
}

/** A common word stands for a part only beside another word of the bench, or alone in a list of parts. */
function lonely(key: string, words: readonly string[], at: number, length: number, parts_cell: boolean): boolean {
  if (length > 1 || parts_cell || !NEEDS_NEIGHBOUR.has(key) || (words[at - 1] === "new" && !COMMON.has(key))) return false;
  for (let near = Math.max(0, at - 4); near < Math.min(words.length, at + 5); near++) {
    if (near !== at && words[near] !== key && benchWords.has(words[near] ?? "")) return false;
  }
  return true;
}

/** Names that may be of parts of different families: where nothing settles them, not even the family is sure. */
const NO_FAMILY: ReadonlySet<string> = new Set(["roller bearing", "bearing roller"]);

/** What part a phrase names here: null when it is no part, no positions when only the family is sure. */
function named(key: string, phrase: Phrase, around: Around & { readonly which: boolean }): Named | null {
  const kind = around.reel_kind, read = readAmbiguous(key, around);
  const family = phrase.family, positions = read ? onKind(read, kind) : placesOn(phrase, kind);
  const unsure = around.which && (family === "ball bearing" || family === "seal" || family === "bushing" || family === "washer or shim");
  const sure = unsure && !positions.some((position) => familyOf.get(position) === "drag washer") ? [] : read !== null || positions.length === 1
    ? positions : [];
  if (sure.length === 0 && read !== null && NO_FAMILY.has(key)) return kind === "spinning" ? { ...NO_PART, plural: around.plural } : null;
  if (sure.length === 0 && read === null && family === null) return null;
  return { positions: sure, family: sure[0] !== undefined ? familyOf.get(sure[0]) ?? null : family, ambiguous: isAmbiguous(key), plural: around.plural,
    unmet: read === null && sure[0] !== undefined && !phrase.places.includes(sure[0]) };
}

/** The words within four, of the same sentence or, with `breath`, of the same item of a list. */
function near(found: readonly Token[], words: readonly string[], at: number, length: number, breath: boolean): ReadonlySet<string> {
  const ends = (token: Token | undefined) => token?.kind === "stop" || (breath && token?.kind === "list");
  const out = new Set<string>();
  for (let before = at - 1; before >= at - 4 && before >= 0 && !ends(found[before]); before--) out.add(words[before] ?? "");
  for (let index = at; index < at + length; index++) out.add(words[index] ?? "");
  for (let after = at + length; after < at + length + 4 && after < words.length && !ends(found[after]); after++) out.add(words[after] ?? "");
  return out;
}

function ownMark(entry: OwnSpelling, from: number, to: number, phrase: string, plural: boolean): Mark {
  if ("position" in entry) {
    const part = { positions: [entry.position], family: familyOf.get(entry.position) ?? null, ambiguous: false, plural };
    return marked("part", from, to, phrase, false, { part, own: true });
  }
  if ("mode" in entry) return marked("mode", from, to, phrase, false, { modes: [{ mode: entry.mode, only_families: [], grade: null }], own: true });
  if ("action" in entry) return marked("action", from, to, phrase, false, { action: { code: "OWN", action: entry.action }, own: true });
  return marked("ignored", from, to, phrase, false, { own: true });
}

/** Words between "left" and which a thing stands that was left as it was. */
const LEFT_AS: ReadonlySet<string> = new Set(["as", "it", "in", "off", "on", "alone", "out", "for", "to"]);

/** A word that says how a part is or what was done with it. */
function isVerdict(word: string): boolean {
  const phrase = phrases.get(word);
  return phrase !== undefined && (phrase.say === "good" || phrase.modes.length > 0 || phrase.action !== null);
}

/** "left" is a side before a part, in brackets or behind "replaced"; behind a part it is what was done with it. */
function isSide(words: readonly string[], found: readonly Token[], at: number): boolean {
  const next = words[at + 1] ?? "", ahead = found[at + 1]?.kind;
  if (words[at - 1] === "the" && (words[at - 2] === "on" || words[at - 2] === "at")) return true;
  if (next === "one" || (found[at - 1]?.kind === "bracket" && ahead === "bracket")) return true;
  if (words.includes("right") && found[at - 1] !== undefined && found[at - 1]?.kind !== "word" && isVerdict(next)) return true;
  if (ahead !== "word") return phrases.get(words[at - 1] ?? "")?.action?.action === "replaced";
  return !LEFT_AS.has(next) && benchWords.has(next);
}

/** Short names count only in capitals, or before a word of the bench. */
function tooShort(key: string, words: readonly string[], token: Token | undefined, at: number, kind: ReelKind | null): boolean {
  if (!BARE.has(key) || (key === "lineroller" && kind === "spinning") || !token || token.capitals || token.end - token.start >= 4) return false;
  return !words.slice(at + 1, at + 5).includes("bearing") && !phrases.has(words[at + 1] ?? "");
}

/** The note as its readings are made. */
interface Reader {
  readonly found: readonly Token[];
  readonly words: readonly string[];
  readonly changed: readonly boolean[];
  readonly note: ReadonlySet<string>;
  readonly context: Surroundings;
}

/** What part a phrase names where it stands; null when it is no part there. */
function partAt({ found, words, note, context }: Reader, phrase: Phrase, key: string, at: number, length: number): Named | null {
  if (!isName(phrase) && !phrase.part) return null;
  if (length === 1 && (tooShort(key, words, found[at], at, context.reel_kind) || lonely(key, words, at, length, context.parts_cell))) return null;
  const sized = found[at + length]?.kind === "size" ? 1 : 0, behind = found[at + length + sized];
  const two_behind = behind?.kind === "quantity" ? behind.word === "2" : behind?.word === "pair" || behind?.word === "pr";
  const pair = two_behind && (/(?:^|\s)bearing(?:\s|$)/.test(key) || key === "main");
  const ahead = found[at - 1]?.kind === "size" ? at - 2 : at - 1;
  const two = found[ahead]?.word === "2" || found[ahead]?.word === "both" || (found[ahead]?.word === "two" && found[ahead - 1]?.word !== "of");
  let plural = pair || (two && (key.endsWith("bearing") || key === "main"));
  for (let index = at; index < at + length; index++) plural ||= found[index]?.plural ?? false;
  return named(key, phrase, { reel_kind: context.reel_kind, breath: near(found, words, at, length, true), near: near(found, words, at, length, false), note,
    plural, which: WHICH.has(words[at - 1] ?? "") });
}

/** What is split to get at its inside; other things that are split are cracked. */
const OPENED: ReadonlySet<string> = new Set(["", "body", "gearbox", "case", "housing", "reel", "it", "and", "i", "we"]);

/** What a phrase of ours says where it stands. */
function said(now: Reader, phrase: Phrase, key: string, at: number, length: number): Mark[] {
  const to = at + length, corrected = now.changed.slice(at, to).includes(true);
  const one = (kind: Mark["kind"], means: Means) => marked(kind, at, to, key, corrected, means);
  if (NOUNS.has(key) && (PUT_ON.has(now.words[to] ?? "") || OLD.has(now.words[at - 1] ?? ""))) return [one("ignored", {})];
  if (phrase.say && !(key === "split" && !OPENED.has(now.words[at - 1] ?? "")) && !(key === "grip" && !now.found[at]?.plural)) {
    const done = phrase.say === "whole job" && phrase.action ? [one("action", { action: phrase.action })] : [];
    return [one("say", { say: phrase.say }), ...done];
  }
  const part = partAt(now, phrase, key, at, length);
  if (part) return [one("part", { part })];
  if (phrase.complaint) return [one("complaint", {})];
  if (phrase.side) return [one("side", {})];
  const out = phrase.modes.length > 0 ? [one("mode", { modes: phrase.modes })] : [];
  if (phrase.action) out.push(one("action", { action: phrase.action }));
  return out;
}

/** "Drags serviced": a part that was serviced was cleaned, and more. */
const SERVICED: ActionReading = { code: "CLEAN", action: "cleaned" };

/** "Spool bearing oil" in a list of parts is oil. */
const namesOil = (mark: Mark, next: Mark | undefined) => mark.kind === "part" && next?.from === mark.to && NOUNS.has(next.phrase);

/** Every reading of a note's words, in order. */
export function marks(found: readonly Token[], context: Surroundings): Mark[] {
  const { words, changed } = rightWords(found, context.book), out: Mark[] = [];
  const now: Reader = { found, words, changed, note: new Set([...words, ...context.complaint]), context };
  for (let at = 0; at < words.length;) {
    const word = words[at] ?? "", own = context.book && word !== "" ? ownMeaning(context.book, words, at, context.reel_kind) : null;
    const match = own || word === "" ? null : longest(words, at, context.reel_kind);
    if (own) out.push(ownMark(own.entry, at, at + own.length, words.slice(at, at + own.length).join(" "), found[at + own.length - 1]?.plural ?? false));
    else if (match?.key === "serviced" && out.at(-1)?.kind === "part" && out.at(-1)?.to === at) out.push(marked("action", at, at + 1, "serviced", false, { action: SERVICED }));
    else if (match && !(match.key === "left" && isSide(words, found, at))) out.push(...said(now, match.phrase, match.key, at, match.length));
    else if (SIDE_NAMES.has(word) && ((word.length === 1 && words[at - 1] === "bearing")
      || (word.length === 1 && found[at - 1] !== undefined && found[at - 1]?.kind !== "word" && isVerdict(words[at + 1] ?? ""))
      || ((word === "left" || word === "right") && found[at - 1]?.kind !== "word") || word === "left" || found[at - 1]?.kind === "bracket"
      || words[at + 1] === "one")) out.push(marked("side", at, at + 1, word, false, {}));
    at += own?.length ?? match?.length ?? 1;
  }
  if (context.parts_cell) return out.map((mark, index) => (namesOil(mark, out[index + 1]) ? { ...mark, kind: "ignored" } : mark));
  return out;
}
