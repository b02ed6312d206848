import { familyOf, kindsOf, phrases } from "./lexicon.ts";
import { FILLERS } from "./bench-words.ts";
import { readAmbiguous } from "./ambiguous.ts";
import type { Mark } from "./marks.ts";
import { FAMILY_WORD } from "./part-words.ts";
import type { Token } from "./tokens.ts";
import { phraseWords } from "./words.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** Parts whose own small parts follow them by a bare name: "dog worn, spring ok". */
const OWNERS: ReadonlySet<string> = new Set(["dog", "ar dog", "clicker", "click", "click pawl", "bail", "bail arm", "lineroller", "roller", "yoke", "knob", "handle knob", "pawl"]);
const IN: ReadonlySet<string> = new Set(["in", "on", "of", "from", "under", "for", "inside", "at"]);
const ARTICLES: ReadonlySet<string> = new Set(["the", "a", "his", "her", "its", "this", "that"]);

/** How many readings a bare word may look back over. */
const WINDOW = 24;
const SIDE_WORDS: ReadonlySet<string> = new Set(["side", "left", "right", "set", "stack", "arm", "drag"]);
const NONE: ReadonlySet<string> = new Set();

/** The one position this phrase names on this kind of reel; null when none or several. */
function placeOf(text: string, kind: ReelKind | null): string | null {
  const key = phraseWords(text).join(" ");
  const all = readAmbiguous(key, { reel_kind: kind, near: NONE, note: NONE, plural: false }) ?? phrases.get(key)?.places ?? [];
  const here = kind === null || kind === "other" ? all : all.filter((position) => kindsOf.get(position)?.includes(kind));
  return here.length === 1 ? here[0] ?? null : null;
}

const at = (position: string) => ({ positions: [position], family: familyOf.get(position) ?? null });
const last = (phrase: string) => phrase.slice(phrase.lastIndexOf(" ") + 1);
const word = (token: Token | undefined) => (token?.kind === "word" ? token.word : "");
const headed = (mark: Mark) => mark.kind === "part" && !mark.own && FAMILY_WORD.has(mark.phrase);
const bare = (mark: Mark) => headed(mark) && mark.positions.length === 0;

/** "Bearing in the line roller" is one part. */
function inside(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (let index = 0; index < all.length; index++) {
    const mark = all[index] as Mark, next = all[index + 1];
    const between = next ? found.slice(mark.to, next.from) : [], small = between.map(word).filter((one) => !ARTICLES.has(one));
    const joins = headed(mark) && next?.kind === "part" && (small.length === 1 && (IN.has(small[0] ?? "") || between[0]?.kind === "quantity"));
    const place = joins ? placeOf(`${next.phrase} ${mark.phrase}`, kind) : null;
    if (place !== null && next) { out.push({ ...mark, ...at(place), to: next.to }); index++; } else out.push(mark);
  }
  return out;
}

/** "Main & pinion gears", "bearings: 2 spool, 1 pinion": the word of the family is said once. */
function shared(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  for (const head of all) {
    const family = last(head.phrase);
    if (head.kind !== "part" || !head.plural || !FAMILY_WORD.has(family)) continue;
    const heading = head.positions.length === 0 && found[head.to]?.kind === "dash";
    const step = heading ? 1 : -1, first = heading ? head.to + 1 : head.from - 1;
    let used = false;
    for (let index = first; index >= 0 && index < found.length; index += step) {
      const token = found[index] as Token;
      if (token.kind === "list" && (heading || ["and", "&", "/"].includes(token.word))) continue;
      if (heading ? token.kind === "quantity" || /^\d+$/.test(token.word) : token.word === "both") continue;
      const mark = out.find((one) => one.from <= index && one.to > index);
      if (!heading && mark?.kind === "part" && family !== "bearing") break;
      if (token.kind !== "word" || (!heading && found[index + 1]?.kind !== "list" && found[index + 1]?.word !== "both")) break;
      const phrase = mark?.kind === "part" ? mark.phrase : token.word, place = last(phrase) === family ? null : placeOf(`${phrase} ${family}`, kind);
      const pair = place === null && heading ? placeOf(`${phrase} ${family}s`, kind) : place;
      if (pair === null || (mark && mark.kind !== "part")) break;
      const made: Mark = { ...(mark ?? { ...head, from: index, to: index + 1, plural: false }), ...at(pair), phrase: `${phrase} ${family}`, ambiguous: true };
      if (mark) out[out.indexOf(mark)] = made; else out.push(made);
      index = step < 0 ? made.from : index;
      used = true;
    }
    if (used && heading) out.splice(out.indexOf(head), 1);
  }
  return out.sort((a, b) => a.from - b.from);
}

/** Sides of the reel as positions of bearings that exist on both. */
const SIDED: ReadonlyMap<string, readonly [left: string, right: string]> = new Map([
  ["spool_bearings_pair", ["spool_bearing_left", "spool_bearing_right"]], ["main_bearing_handle", ["main_bearing_plate", "main_bearing_handle"]],
]);

/** "Palm side spool bearing": which of the two is meant. */
function oneSide(all: readonly Mark[], kind: ReelKind | null): Mark[] {
  return all.map((mark, index) => {
    const before = all[index - 1], after = all[index + 1], pair = mark.positions.length === 1 ? SIDED.get(mark.positions[0] ?? "") : undefined;
    const side = before?.kind === "side" && before.to === mark.from ? before : after?.kind === "side" && after.from === mark.to ? after : null;
    if (!pair || !side || (pair[0] === "main_bearing_plate" && kind !== "spinning")) return mark;
    return { ...mark, positions: [/handle|gear|right|head/.test(side.phrase) ? pair[1] : pair[0]], plural: false };
  });
}

/** A part's name before a bare family word is one name of a part we cannot place ("knob seal"). */
function compound(all: readonly Mark[]): Mark[] {
  const out: Mark[] = [];
  for (const mark of all) {
    const owner = out.at(-1);
    if (owner?.kind === "part" && headed(mark) && owner.to === mark.from && !owner.phrase.includes(" ") && !headed(owner)) {
      out[out.length - 1] = { ...mark, from: owner.from, positions: [], family: FAMILY_WORD.get(mark.phrase) ?? null, phrase: `${owner.phrase} ${mark.phrase}` };
    } else out.push(mark);
  }
  return out;
}

/** Left and right one named after "spool bearings". */
function bothSides(found: readonly Token[], all: readonly Mark[]): Mark[] {
  return all.map((mark) => {
    const side = last(mark.phrase), other = word(found[mark.to + 1]);
    const opposite = /^(l|left)$/.test(side) ? /^(r|right)$/ : /^(r|right)$/.test(side) ? /^(l|left)$/ : null;
    const both = mark.kind === "part" && /^spool_bearing_(left|right)$/.test(mark.positions[0] ?? "") && opposite?.test(other) && found[mark.to]?.kind === "list";
    return both ? { ...mark, positions: ["spool_bearing_left", "spool_bearing_right"], to: mark.to + 2, plural: false } : mark;
  });
}

/** The position that a bare word means because the part was named in full before; null when none or several were. */
function namedBefore(before: readonly Mark[], head: string): readonly string[] | null {
  const same = before.filter((mark) => mark.kind === "part" && mark.positions.length > 0 && mark.phrase !== head && (last(mark.phrase) === head || (head === "gear" && mark.phrase === "maingear")));
  const places = new Set(same.map((mark) => mark.positions.join()));
  return places.size === 1 ? same[0]?.positions ?? null : null;
}

/** The small part of the part named just before: "dog + spring", "line roller grooved, bearing ok". */
function belonging(mark: Mark, before: readonly Mark[], joint: string, kind: ReelKind | null): string | null {
  const owner = [...before].reverse().find((one) => one.kind === "part");
  if (!owner || owner.positions.length !== 1) return null;
  const close = ["and", "&", "+", "w/"].includes(joint) && before.at(-1) === owner;
  if (!close && !OWNERS.has(owner.phrase)) return null;
  const position = owner.positions[0] as string, small = [`${position}_${mark.phrase}`, `${position}_${mark.phrase}s`].find((code) => familyOf.has(code));
  const first = owner.phrase.split(" ")[0] ?? "";
  return small ?? placeOf(`${owner.phrase} ${mark.phrase}`, kind) ?? (close ? placeOf(`${last(owner.phrase)} ${mark.phrase}`, kind) ?? placeOf(`${first} ${mark.phrase}`, kind) : null);
}

/** What one reading means after those before it. */
function settledBy(found: readonly Token[], mark: Mark, before: readonly Mark[], kind: ReelKind | null): Mark {
  const sized = found.slice(Math.max(0, mark.from - 2), mark.to + 2).some((token) => token.kind === "size");
  const open = mark.kind === "part" && !mark.own && !mark.phrase.includes(" ") && (mark.positions.length === 0 || mark.ambiguous);
  const again = open && !(sized && mark.positions.length === 0) ? namedBefore(before, mark.phrase) : null;
  if (again) return { ...mark, positions: again, family: familyOf.get(again[0] ?? "") ?? null };
  const joint = found[mark.from - 1]?.kind === "list" ? found[mark.from - 1]?.word ?? "" : "";
  const part = bare(mark) && !sized ? belonging(mark, before, joint, kind) : null;
  return part === null ? mark : { ...mark, ...at(part), ambiguous: true };
}

/** A word that is no name by itself but ends the full name of a part named before ("handle nut rounded, replaced nut"). */
function shortened(found: readonly Token[], index: number, before: readonly Mark[]): Mark | null {
  const token = found[index] as Token, last = before.at(-1);
  if (token.kind !== "word" || token.word.length < 3 || FILLERS.has(token.word) || SIDE_WORDS.has(token.word) || before.length === 0) return null;
  const previous = found[index - 1], alone = previous?.kind !== "word" || FILLERS.has(previous.word) || (last?.to === index && last.kind !== "part");
  const again = alone ? namedBefore(before, token.word) : null;
  const owner = again ? before.find((mark) => mark.positions === again) : undefined;
  return again && owner ? { ...owner, from: index, to: index + 1, phrase: token.word, plural: token.plural, ambiguous: true } : null;
}

/** "Drag soak", "drag setting": the part's name only says which soak or setting. */
const onlyNames = (found: readonly Token[], mark: Mark, next: Mark | undefined) =>
  mark.phrase === "drag" && found[mark.to]?.kind === "word" && next?.from !== mark.to && !FILLERS.has(found[mark.to]?.word ?? "");

/** Bare words settled by what was named before them in the note. */
export function referring(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const known = bothSides(found, oneSide(shared(found, compound(inside(found, all, kind)), kind), kind));
  const out: Mark[] = [];
  let at = 0;
  known.forEach((mark, index) => {
    for (; at < mark.from; at++) {
      const again = shortened(found, at, out.slice(-WINDOW));
      if (again) out.push(again);
    }
    at = Math.max(at, mark.to);
    if (!onlyNames(found, mark, known[index + 1])) out.push(settledBy(found, mark, out.slice(-WINDOW), kind));
  });
  for (; at < found.length; at++) {
    const again = shortened(found, at, out.slice(-WINDOW));
    if (again) out.push(again);
  }
  return out;
}
