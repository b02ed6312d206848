import { knownWords, partWords, phrases } from "./lexicon.ts";
import type { SpellingBook } from "./own-spellings.ts";
import { joined, type Token } from "./tokens.ts";
import { FILLERS } from "./sayings.ts";
import { sameWord } from "./words.ts";

/** Words that look like ours and are not: never corrected. */
const LEAVE = new Set([
  "motor", "sprung", "bench", "nail", "month", "weeks", "years", "hours", "every", "until", "which", "while", "whole", "extra", "early", "great",
  "heard", "heavy", "large", "level", "lines", "loads", "moved", "needs", "parts", "place", "plate", "point", "ready", "really", "reels",
  "season", "seems", "shore", "shops", "sorted", "split", "taken", "thing", "think", "times", "today", "touch", "using", "wants", "weeds", "winter",
  "without", "working", "worked", "collect", "collected", "quoted", "posted", "picked", "stool", "rotor", "sport", "other", "water", "after", "later",
    "never", "cover", "small", "still", "under", "their",
  "there", "where", "these", "those", "place", "found", "sound", "round", "bound", "could", "would", "should", "boat", "board", "caught",
  "might", "right", "light", "night", "today", "quick", "quite", "quiet", "first", "since", "third", "owner", "paper", "house", "horse",
  "again", "about", "above", "below", "along", "friday", "monday", "sunday", "price", "charge", "change", "phone", "called", "cheese",
  "coast", "beach", "river", "liver", "lover", "fever", "power", "tower", "lower", "slower", "brother", "mother", "bottom", "button",
  "cotton", "matter", "better", "letter", "bitter", "butter", "spill", "skill", "shell", "smell", "smart", "start", "short", "shirt",
  "skirt", "stuff", "staff", "stiff", "trial", "trail", "train", "drain", "grain", "brain", "bread", "break", "brake", "tried",
  "dried", "noise", "noisy", "nothing", "trout", "salmon", "cable", "table", "cased", "based", "paired", "paid", "said", "cast", "casting",
  ...`accessed accident advice advised assigned behaving black boring bounded breaking bringing brought building builds carried carries chance
    chapter checking choosing claims clock closer closest collector completed compress concerned conditions constant couldn counted counting
    creating currently damages decent decrease deliver delivers denied detect difference different displayed driven driver electronic excluded
    executed exported extended finger floating followed furnished generate happened harmless health healthy inserted involved issues joins
    larger leading learning leaving lifted listed listing locating machine managing measured measuring offering owing painting paused perhaps
    pieces places plane playing pointed pointing polling ported prevent printed printing processed published pushed pushing putting quotes
    reading received rejected release released reminder renamed renaming repeated reporter responded resulted retrieved reviewed reviewing
    rounded rounding saying selected selling shall share sharing shipped shipping shouldn skipped skipping slice sometimes sources spanning
    spelling spend standards stated stating steal stopping storing stream stripping stroke support supported supposed swift thanks thinking
    thorough threat tracking transform trick trust tuning understood updated updating waited wanting whose wouldn writing`.split(/\s+/),
]);

/** Edits (insert, delete, change, swap of neighbours) between two words, up to `limit`; above it `limit + 1`. */
export function edits(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [], last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, (before[j - 2] ?? 0) + 1);
      row.push(least);
    }
    [before, last] = [last, row];
  }
  return Math.min(last[b.length] ?? 0, limit + 1);
}

/** Known words by first letter: the first letter of a misspelling must stand. */
const byLetter = new Map<string, string[]>();
for (const word of knownWords) if (word.length >= 5) byLetter.set(word[0] ?? "", [...byLetter.get(word[0] ?? "") ?? [], word]);

/** Answers given before; a shop writes the same words again and again. */
const answered = new Map<string, string | null>();
const REMEMBERED = 50_000;

const longer = (a: string, b: string) => (a.length > b.length ? a : b);
/** "Clean" and "cleaned" are one answer. */
const sameRoot = (a: string, b: string) => a.startsWith(b) || b.startsWith(a);

/** Whether `word` is `whole` with letters left out: the commonest slip. */
function leavesOut(word: string, whole: string): boolean {
  let at = 0;
  for (const letter of whole) if (letter === word[at]) at++;
  return at === word.length;
}

/** Of two words as near: the longer of one root, or the one of which letters were left out; null where that does not tell. */
function likelier(word: string, best: string | null, other: string): string | null {
  if (best === null) return null;
  if (sameRoot(best, other)) return longer(best, other);
  const [a, b] = [leavesOut(word, best), leavesOut(word, other)];
  return a === b ? null : a ? best : other;
}

function nearest(word: string): string | null {
  const limit = word.length < 8 ? 1 : 2;
  let best: string | null = null, distance = limit + 1;
  for (const candidate of byLetter.get(word[0] ?? "") ?? []) {
    if (word.length === 5 && !partWords.has(candidate)) continue;
    const here = edits(word, candidate, limit);
    if (here < distance) [best, distance] = [candidate, here];
    else if (here === distance && here <= limit && best !== candidate) best = likelier(word, best, candidate);
  }
  return distance <= limit ? best : null;
}

/**
 * The one known word that a misspelt word most likely means, or null. One edit for 5–7 letters (for 5 only to a word of
 * parts), two from 8 on, none below; the first letter must stand; two candidates at the same distance give none.
 *
 * @example
 * corrected("pinoin") // => "pinion"
 * corrected("motor") // => null
 */
export function corrected(word: string): string | null {
  if (word.length < 5 || word.length > 24 || knownWords.has(word) || LEAVE.has(word) || /[^a-z]/.test(word)) return null;
  const before = answered.get(word);
  if (before !== undefined) return before;
  const answer = nearest(word);
  if (answered.size >= REMEMBERED) answered.clear();
  answered.set(word, answer);
  return answer;
}

/** "Reglued" is glued once more. */
function again(word: string): string | null {
  return word.length > 5 && word.startsWith("re") && !knownWords.has(word) && phrases.get(word.slice(2))?.action ? word.slice(2) : null;
}

/** Heads of names that are often written in one word with what stands before them. */
const HEADS = /^(.{3,})(bearing|brg|seal|spring|gear|washer|screw|roller|knob|nut|shaft|clutch|wire|lever|pawl|sleeve)s?$/;

/** What was found before for words written in one; null for words that are one. */
const splits = new Map<string, readonly [string, string] | null>();

function split(word: string): readonly [string, string] | null {
  const before = splits.get(word);
  if (before !== undefined) return before;
  const [, first = "", head = ""] = HEADS.exec(word) ?? [], owner = sameWord(first);
  const answer = partWords.has(owner) ? [owner, sameWord(head)] as const : null;
  if (splits.size >= REMEMBERED) splits.clear();
  splits.set(word, answer);
  return answer;
}

/** "LRB2": a short name with its number of pieces. */
const NUMBERED = /^([a-z]{2,4})([1-9])$/;
function numbered(token: Token): Token[] {
  const [, name = "", count = ""] = NUMBERED.exec(token.word) ?? [], short = sameWord(name);
  if (!token.capitals || name === "" || !(phrases.get(short)?.places.length || phrases.get(short)?.part)) return [token];
  return [{ ...token, word: short, end: token.end - 1 }, { ...token, kind: "quantity", word: count, start: token.end - 1 }];
}

const isKnown = (word: string) => knownWords.has(word) || FILLERS.has(word) || phrases.has(word);
const isPart = (word: string) => word.length > 2 && partWords.has(sameWord(word));

/** "Carbo nwashers": two words of parts between which the space stands a letter too early or too late. */
function shifted(a: Token, b: Token): [Token, Token] | null {
  if (a.kind !== "word" || b.kind !== "word" || b.start - a.end !== 1 || (isKnown(a.word) && isKnown(b.word))) return null;
  const both = a.word + b.word, at = [a.word.length + 1, a.word.length - 1].find((cut) => isPart(both.slice(0, cut)) && isPart(both.slice(cut)));
  if (at === undefined) return null;
  const end = a.end + at - a.word.length;
  return [{ ...a, word: sameWord(both.slice(0, at)), plural: false, end }, { ...b, word: sameWord(both.slice(at)), start: end }];
}

/** Tokens with misplaced spaces put right. */
function spaced(found: readonly Token[]): readonly Token[] {
  let out: Token[] | null = null;
  for (let at = 0; at < found.length; at++) {
    const token = found[at] as Token;
    if (token.kind !== "word" || isKnown(token.word)) continue;
    for (const first of [at - 1, at]) {
      const [a, b] = [(out ?? found)[first], (out ?? found)[first + 1]], two = a && b ? shifted(a, b) : null;
      if (two) [(out ??= [...found])[first], out[first + 1]] = two;
    }
  }
  return out ? joined(out) : found;
}

/** A note's tokens with "linerollerbearing" as the two words it is, and "LRB2" as a name and a number. */
export function parted(written: readonly Token[], book: SpellingBook | null): readonly Token[] {
  const found = book ? written : spaced(written);
  const isOne = (token: Token) => token.kind !== "word" || token.word.length < 7 || knownWords.has(token.word) || book?.words.has(token.word)
    || split(token.word) === null;
  if (found.every(isOne) && !found.some((token) => NUMBERED.test(token.word))) return found;
  return found.flatMap((token) => {
    if (token.kind === "word" && NUMBERED.test(token.word) && !book?.words.has(token.word)) return numbered(token);
    const two = isOne(token) ? null : split(token.word);
    return two === null ? [token] : [{ ...token, word: two[0], plural: false }, { ...token, word: two[1] }];
  });
}

/** Words of a note with misspellings put right, one for each token ("" for signs but "and"), and which were changed. */
export function rightWords(found: readonly Token[], book: SpellingBook | null): { words: string[]; changed: boolean[] } {
  const changed: boolean[] = [];
  const words = found.map((token, at) => {
    const better = token.kind === "word" && !book?.words.has(token.word) ? again(token.word) ?? corrected(token.word) : null;
    changed[at] = better !== null;
    return token.kind === "word" ? better ?? token.word : token.word === "and" || token.word === "&" ? "and" : "";
  });
  return { words, changed };
}
