import { actions, modes, positions, reelKinds } from "../vocabulary-tables.ts";
import type { Action, ReelKind } from "../vocabulary-tables.ts";
import { readingsByKey, type OwnReading } from "./own-readings.ts";
import { phraseWords } from "./words.ts";

/** What the shop says one of its own spellings means; `ignored` is said of words that mean nothing here. */
export type Meaning =
  | { readonly position: string }
  | { readonly mode: string }
  | { readonly action: Action }
  | { readonly ignored: true };
/** One line of the shop's spelling book; `reel_kind` null holds for every kind. */
export type OwnSpelling = Meaning & { readonly spelling: string; readonly reel_kind: ReelKind | null };

/** The shop's spellings, ready to be looked up. */
export interface SpellingBook {
  readonly phrases: ReadonlyMap<string, readonly OwnSpelling[]>;
  /** For each first word, how many words the longest spelling has that starts with it. */
  readonly longest_from: ReadonlyMap<string, number>;
  /** Words of the book: never taken for misspellings of ours. */
  readonly words: ReadonlySet<string>;
  /** What was said of readings that were not sure, by `wordingKey`. */
  readonly readings: ReadonlyMap<string, OwnReading>;
}

const LONGEST = 6;
const MEANINGS = ["position", "mode", "action", "ignored"] as const;
const kindsOf = new Map(positions.map((row) => [row.position, row.reel_kinds]));
const knownModes = new Set(modes.map((row) => row.mode)), knownActions = new Set<string>(actions.map((row) => row.action));
const knownKinds = new Set<string>(reelKinds.map((row) => row.reel_kind));
const keyOf = (spelling: string) => phraseWords(spelling).join(" ");

/** What is wrong with a line of the spelling book, in the owner's words; null when it can be used. */
export function spellingFault(entry: unknown): string | null {
  if (typeof entry !== "object" || entry === null) return "is not a line of the spelling book";
  const line = entry as Record<string, unknown>;
  if (typeof line["spelling"] !== "string") return "has no spelling";
  const words = phraseWords(line["spelling"]);
  if (words.length === 0) return "has no letters or figures in its spelling";
  if (words.length > LONGEST || line["spelling"].length > 60) return `is longer than ${LONGEST} words or 60 letters`;
  const kind = line["reel_kind"];
  if (kind !== null && !(typeof kind === "string" && knownKinds.has(kind))) return "names a kind of reel we do not know";
  const means = MEANINGS.filter((one) => line[one] !== undefined);
  if (means.length !== 1) return "must mean one thing: a part, a fault, an action, or nothing";
  return meaningFault(line, kind as ReelKind | null);
}

function meaningFault(line: Record<string, unknown>, kind: ReelKind | null): string | null {
  const { position, mode, action, ignored } = line;
  if (position !== undefined) {
    const kinds = typeof position === "string" ? kindsOf.get(position) : undefined;
    if (!kinds) return "names a part we do not know";
    if (kind !== null && kind !== "other" && !kinds.includes(kind)) return `names a part that a ${kind} reel does not have`;
  }
  if (mode !== undefined && !(typeof mode === "string" && knownModes.has(mode))) return "names a fault we do not know";
  if (action !== undefined && !(typeof action === "string" && knownActions.has(action))) return "names an action we do not know";
  return ignored !== undefined && ignored !== true ? "must mean one thing: a part, a fault, an action, or nothing" : null;
}

/**
 * The shop's spellings, and what it said of readings, made ready for reading notes.
 *
 * @throws {RangeError} if a line cannot be used (see `spellingFault`), or two lines give one spelling and kind of reel two meanings
 */
export function spellingBook(entries: readonly OwnSpelling[], readings: readonly OwnReading[] = []): SpellingBook {
  const phrases = new Map<string, OwnSpelling[]>(), longest_from = new Map<string, number>(), words = new Set<string>();
  for (const entry of entries) {
    const fault = spellingFault(entry);
    if (fault) throw new RangeError(`spellingBook: needs usable lines; ${JSON.stringify(entry)} ${fault}`);
    const key = keyOf(entry.spelling), split = key.split(" "), first = split[0] as string, here = phrases.get(key) ?? [];
    if (here.some((one) => one.reel_kind === entry.reel_kind)) {
      throw new RangeError(`spellingBook: needs one meaning a spelling and kind of reel, has two for ${entry.spelling}`);
    }
    phrases.set(key, [...here, entry]);
    longest_from.set(first, Math.max(longest_from.get(first) ?? 0, split.length));
    split.forEach((word) => words.add(word));
  }
  return { phrases, longest_from, words, readings: readingsByKey(readings) };
}

/** The book, or an empty one, with what was said of readings elsewhere: that holds before its own. */
export function withReadings(book: SpellingBook | null, readings: readonly OwnReading[]): SpellingBook | null {
  if (readings.length === 0) return book;
  const own = book ?? spellingBook([]);
  return { ...own, readings: new Map([...own.readings, ...readingsByKey(readings)]) };
}

/** The lines with one more: it takes the place of a line for the same spelling and kind of reel. */
export function withSpelling(entries: readonly OwnSpelling[], entry: OwnSpelling): OwnSpelling[] {
  const key = keyOf(entry.spelling);
  return [...entries.filter((one) => keyOf(one.spelling) !== key || one.reel_kind !== entry.reel_kind), entry];
}

/** The lines without the one for this spelling and kind of reel; the same lines when there is none. */
export function withoutSpelling(entries: readonly OwnSpelling[], spelling: string, reel_kind: ReelKind | null): OwnSpelling[] {
  const key = keyOf(spelling);
  return entries.filter((one) => keyOf(one.spelling) !== key || one.reel_kind !== reel_kind);
}

/** The longest spelling of the book that starts at word `at`, with what it means on this kind of reel; null when there is none. */
export function ownMeaning(book: SpellingBook, words: readonly string[], at: number, kind: ReelKind | null): { entry: OwnSpelling; length: number } | null {
  for (let length = Math.min(book.longest_from.get(words[at] ?? "") ?? 0, words.length - at); length > 0; length--) {
    const lines = book.phrases.get(words.slice(at, at + length).join(" ")) ?? [];
    const entry = lines.find((one) => one.reel_kind !== null && one.reel_kind === kind) ?? lines.find((one) => one.reel_kind === null);
    if (entry) return { entry, length };
  }
  return null;
}
