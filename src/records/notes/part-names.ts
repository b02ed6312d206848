import { readAmbiguous } from "./ambiguous.ts";
import { familyOf, kindsOf, phrases, placesOn } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import { FAMILY_WORD } from "./part-words.ts";
import type { Token } from "./tokens.ts";
import { phraseWords } from "./words.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

const NONE: ReadonlySet<string> = new Set();
export const ARTICLES: ReadonlySet<string> = new Set(["the", "a", "an", "his", "her", "its", "this", "that", "my"]);

/** The positions this phrase names on this kind of reel. */
export function placesOf(text: string, kind: ReelKind | null, plural: boolean): readonly string[] {
  const key = phraseWords(text).join(" ");
  const phrase = phrases.get(key), all = readAmbiguous(key, { reel_kind: kind, breath: NONE, near: NONE, note: NONE, plural })
    ?? (phrase ? placesOn(phrase, kind) : []);
  return kind === null || kind === "other" ? all : all.filter((position) => kindsOf.get(position)?.includes(kind));
}

/** The one position this phrase names on this kind of reel; null when none or several. */
export function placeOf(text: string, kind: ReelKind | null, plural = false): string | null {
  const here = placesOf(text, kind, plural);
  return here.length === 1 ? here[0] ?? null : null;
}

const SIDE = /^(?:left|right) /;
/** A last word that names the part whatever stands before it ("pinion yoke"). */
const ownName = (word: string) => (["yoke", "pawl", "dog", "slider"].includes(word) ? word : "");
export const at = (position: string) => ({ positions: [position], family: familyOf.get(position) ?? null });
export const lastWord = (phrase: string) => phrase.slice(phrase.lastIndexOf(" ") + 1);
export const word = (token: Token | undefined) => (token?.kind === "word" ? token.word : "");
/** A part named by a bare word of its family. */
export const isHead = (mark: Mark) => mark.kind === "part" && !mark.own && FAMILY_WORD.has(mark.phrase);

/** The small part of `owner` that `small` is on this kind of reel: by its name, or by the name of the owner's position. */
export function smallPart(owner: Mark, small: string, kind: ReelKind | null, plural = false, whole = false): string | null {
  const position = owner.positions[0] ?? "", code = [`${position}_${small}`, `${position}_${small}s`].find((one) => familyOf.has(one));
  if (owner.positions.length === 1 && code !== undefined) return code;
  const words = owner.phrase.split(" "), names = [owner.phrase, whole ? ownName(lastWord(owner.phrase)) : words.slice(0, -1).join(" "),
    SIDE.test(owner.phrase) ? words.slice(1).join(" ") : ""];
  for (const name of names) {
    const place = name === "" ? null : placeOf(`${name} ${small}`, kind, plural);
    if (place !== null) return place;
  }
  return null;
}
