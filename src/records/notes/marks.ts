import { isAmbiguous, readAmbiguous, type Around } from "./ambiguous.ts";
import type { Say } from "./bench-words.ts";
import { benchWords, familyOf, kindsOf, longestFrom, phrases, type ActionReading, type ModeReading, type Phrase } from "./lexicon.ts";
import { ownMeaning, type OwnSpelling, type SpellingBook } from "./own-spellings.ts";
import { FAMILY_WORD, NEEDS_NEIGHBOUR } from "./part-words.ts";
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
}
export interface Surroundings { readonly reel_kind: ReelKind | null; readonly complaint: readonly string[]; readonly parts_cell: boolean; readonly book: SpellingBook | null }
/** Short names that are words of their own unless written in capitals. */
const BARE: ReadonlySet<string> = new Set(["ar", "lineroller", "arc"]);
/** Names of what is put on, which are also words for putting it on. */
const NOUNS: ReadonlySet<string> = new Set(["oil", "grease", "lube"]);
/** Which of several like parts; without more we cannot tell. */
const WHICH: ReadonlySet<string> = new Set(["rear", "back", "top", "bottom", "inner", "outer", "upper", "lower", "middle", "center", "second", "other"]);
const SIDE_NAMES: ReadonlySet<string> = new Set(["left", "right", "l", "r"]);
type Named = Pick<Mark, "positions" | "family" | "ambiguous" | "plural">;

const EMPTY = { positions: [], family: null, ambiguous: false, plural: false, modes: [], action: null, say: null, corrected: false, own: false } as const;

/** The longest phrase of ours that starts at word `at`; null when there is none. */
function longest(words: readonly string[], at: number): { phrase: Phrase; key: string; length: number } | null {
  for (let length = Math.min(longestFrom.get(words[at] ?? "") ?? 0, words.length - at); length > 0; length--) {
    const key = length === 1 ? words[at] ?? "" : words.slice(at, at + length).join(" "), phrase = phrases.get(key);
    if (phrase && key !== "") return { phrase, key, length };
  }
  return null;
}

const onKind = (positions: readonly string[], kind: ReelKind | null) =>
  kind === null || kind === "other" ? positions : positions.filter((position) => kindsOf.get(position)?.includes(kind));

const lastFamily = (key: string) => FAMILY_WORD.get(key.slice(key.lastIndexOf(" ") + 1)) ?? FAMILY_WORD.get(key.split(" ")[0] ?? "") ?? null;

/** A common word stands for a part only beside another word of the bench, or alone in a list of parts. */
function lonely(key: string, words: readonly string[], at: number, length: number, parts_cell: boolean): boolean {
  if (length > 1 || parts_cell || !NEEDS_NEIGHBOUR.has(key)) return false;
  for (let near = Math.max(0, at - 4); near < Math.min(words.length, at + 5); near++) {
    if (near !== at && words[near] !== key && benchWords.has(words[near] ?? "")) return false;
  }
  return true;
}

/** What part a phrase names here: null when it is no part, no positions when only the family is sure. */
function named(key: string, phrase: Phrase, around: Around & { readonly which: boolean }): Named | null {
  const kind = around.reel_kind, read = readAmbiguous(key, around);
  const family = lastFamily(key), positions = onKind(read ?? phrase.places, kind);
  const unsure = around.which && (family === "ball bearing" || family === "seal" || family === "bushing" || family === "washer or shim");
  const sure = unsure ? [] : read !== null || positions.length === 1 ? positions : [];
  if (sure.length === 0 && family === null && read === null) return null;
  return { positions: sure, family: sure[0] !== undefined ? familyOf.get(sure[0]) ?? null : family, ambiguous: isAmbiguous(key), plural: around.plural };
}

function near(words: readonly string[], at: number, length: number): ReadonlySet<string> {
  return new Set(words.slice(Math.max(0, at - 4), at + length + 4).filter(Boolean));
}

function ownMark(entry: OwnSpelling, at: number, length: number, phrase: string, plural: boolean): Mark {
  const base = { ...EMPTY, from: at, to: at + length, phrase, own: true };
  if ("position" in entry) return { ...base, kind: "part", positions: [entry.position], family: familyOf.get(entry.position) ?? null, plural };
  if ("mode" in entry) return { ...base, kind: "mode", modes: [{ mode: entry.mode, only_families: [], grade: null }] };
  if ("action" in entry) return { ...base, kind: "action", action: { code: "OWN", action: entry.action } };
  return { ...base, kind: "ignored" };
}

/** "left" is a side before a part, what was done with it after one. */
function isSide(words: readonly string[], found: readonly Token[], at: number): boolean {
  const next = words[at + 1] ?? "";
  if (found[at - 1]?.kind === "bracket" && found[at + 1]?.kind === "bracket") return true;
  const behindAction = phrases.get(words[at - 1] ?? "")?.action?.action === "replaced" && found[at + 1]?.kind !== "word";
  if (next === "one" || behindAction) return true;
  return next !== "" && found[at + 1]?.kind === "word" && !["as", "it", "in", "off", "on", "alone", "out", "for", "to"].includes(next) && benchWords.has(next);
}

/** Every reading of a note's words, in order. */
export function marks(found: readonly Token[], context: Surroundings): Mark[] {
  const { words, changed } = rightWords(found, context.book);
  const note = new Set([...words, ...context.complaint].filter(Boolean));
  const out: Mark[] = [];
  for (let at = 0; at < words.length;) {
    const own = context.book && words[at] ? ownMeaning(context.book, words, at, context.reel_kind) : null;
    if (own) {
      out.push(ownMark(own.entry, at, own.length, words.slice(at, at + own.length).join(" "), found[at + own.length - 1]?.plural ?? false));
      at += own.length;
      continue;
    }
    const match = words[at] ? longest(words, at) : null;
    if (!match || (match.key === "left" && isSide(words, found, at))) {
      if (SIDE_NAMES.has(words[at] ?? "") && (found[at - 1]?.kind === "bracket" || words[at + 1] === "one" || words[at] === "left")) out.push({ ...EMPTY, kind: "side", from: at, to: at + 1, phrase: words[at] ?? "" });
      at++;
      continue;
    }
    const { phrase, key, length } = match;
    const corrected = changed.slice(at, at + length).some(Boolean);
    const put = (mark: Partial<Mark> & Pick<Mark, "kind">) => out.push({ ...EMPTY, from: at, to: at + length, phrase: key, corrected, ...mark });
    if (NOUNS.has(key) && ["on", "in", "from", "was", "is"].includes(words[at + length] ?? "")) { put({ kind: "ignored" }); at += length; continue; }
    const pair = found[at + length]?.kind === "quantity" && found[at + length]?.word === "2" && key.endsWith("bearing");
    const plural = pair || found.slice(at, at + length).some((token) => token.plural);
    const bare = length === 1 && BARE.has(key) && !found[at]?.capitals && (found[at]?.end ?? 0) - (found[at]?.start ?? 0) < 4 && !words.slice(at + 1, at + 5).includes("bearing") && !phrases.has(words[at + 1] ?? "");
    const isPart = (phrase.places.length > 0 || phrase.part) && !bare && !lonely(key, words, at, length, context.parts_cell);
    const part = isPart ? named(key, phrase, { reel_kind: context.reel_kind, near: near(words, at, length), note, plural, which: WHICH.has(words[at - 1] ?? "") }) : null;
    if (phrase.say) {
      put({ kind: "say", say: phrase.say });
      if (phrase.say === "whole job" && phrase.action) put({ kind: "action", action: phrase.action });
    }
    else if (phrase.complaint && !part) put({ kind: "complaint" });
    else if (part) put({ kind: "part", ...part });
    else if (phrase.side) put({ kind: "side" });
    else if (phrase.action || phrase.modes.length > 0) {
      if (phrase.modes.length > 0) put({ kind: "mode", modes: phrase.modes });
      if (phrase.action) put({ kind: "action", action: phrase.action });
    } else if (phrase.complaint) put({ kind: "complaint" });
    at += length;
  }
  return out;
}
