import { readAmbiguous } from "./ambiguous.ts";
import { FILLERS } from "./sayings.ts";
import { familyOf, kindsOf, phrases } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import { FAMILY_WORD } from "./part-words.ts";
import type { Token } from "./tokens.ts";
import { phraseWords } from "./words.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

const NONE: ReadonlySet<string> = new Set();
const IN: ReadonlySet<string> = new Set(["in", "on", "of", "from", "under", "for", "inside", "at", "holding", "securing"]);
export const ARTICLES: ReadonlySet<string> = new Set(["the", "a", "an", "his", "her", "its", "this", "that", "my"]);

/** Parts that have a bearing of their own name. */
const WITH_BEARING: ReadonlySet<string> = new Set(["lineroller", "roller", "ar", "oneway", "pinion", "knob", "handle knob", "spool", "worm"]);

/** The one position this phrase names on this kind of reel; null when none or several. */
export function placeOf(text: string, kind: ReelKind | null, plural = false): string | null {
  const key = phraseWords(text).join(" ");
  const all = readAmbiguous(key, { reel_kind: kind, breath: NONE, near: NONE, note: NONE, plural }) ?? phrases.get(key)?.places ?? [];
  const here = kind === null || kind === "other" ? all : all.filter((position) => kindsOf.get(position)?.includes(kind));
  return here.length === 1 ? here[0] ?? null : null;
}

const SIDE = /^(?:left|right) /;
/** A last word that names the part whatever stands before it ("pinion yoke"). */
const ownName = (word: string) => (["yoke", "pawl", "dog", "slider"].includes(word) ? word : "");
export const at = (position: string) => ({ positions: [position], family: familyOf.get(position) ?? null });
export const lastWord = (phrase: string) => phrase.slice(phrase.lastIndexOf(" ") + 1);
const word = (token: Token | undefined) => (token?.kind === "word" ? token.word : "");
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

/** "Bearing in the line roller", "bearing x2 handle knob": one part. */
function inside(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (let index = 0; index < all.length; index++) {
    const mark = all[index] as Mark, next = all[index + 1];
    const between = next && isHead(mark) ? found.slice(mark.to, next.from).filter((token) => token.kind !== "size") : [],
      small = between.map(word).filter((one) => !ARTICLES.has(one));
    const joins = next?.kind === "part" && small.length === 1
      && (IN.has(small[0] ?? "") || between[0]?.kind === "quantity" || between[0]?.word === "(" || (between[0]?.kind === "dash" && !mark.plural));
    const place = joins ? placeOf(`${next.phrase} ${mark.phrase}`, kind)
      ?? (small[0] === "holding" || small[0] === "securing" ? smallPart(next, mark.phrase, kind) : null) : null;
    if (place !== null && next) {
      out.push({ ...mark, ...at(place), to: next.to, phrase: `${next.phrase} ${mark.phrase}`, ambiguous: false });
      index++;
    } else out.push(mark);
  }
  return out;
}

const WHICH: ReadonlySet<string> = new Set(["top", "bottom", "rear", "front", "upper", "lower", "center"]);
/** Nothing, or one word we do not know, stands between them ("thumb bar return spring"). */
const touches = (found: readonly Token[], owner: Mark, mark: Mark) =>
  mark.from - owner.to <= 2 && found.slice(owner.to, mark.from).every((token) => token.kind === "word" && !FILLERS.has(token.word)
    && !/ed$|^\d/.test(token.word));

/** A part's name just before a bare family word is one name of a part: a known one ("pawl spring"), or one we cannot place ("knob seal"). */
function joinedNames(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (const mark of all) {
    let owner = out.at(-1);
    if (!isHead(mark) || owner?.kind !== "part" || !touches(found, owner, mark) || isHead(owner)) { out.push(mark); continue; }
    const place = owner.to === mark.from || WHICH.has(word(found[owner.to])) ? smallPart(owner, mark.phrase, kind, mark.plural, true) : null;
    let from = owner.from;
    out.pop();
    for (owner = out.at(-1); owner?.kind === "part" && owner.to === from; owner = out.at(-1)) { from = owner.from; out.pop(); }
    const phrase = `x ${mark.phrase}`, family = FAMILY_WORD.get(mark.phrase) ?? null;
    out.push({ ...mark, from, phrase, ambiguous: true, ...(place === null ? { positions: [], family } : at(place)) });
  }
  return out;
}

/** "O-ring body, o-ring knob": the word of the family first, the part behind it; unknown ones name no place. */
function turnedNames(all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (const mark of all) {
    const head = out.at(-1);
    if (!head || !isHead(head) || head.positions.length > 0 || head.plural || mark.kind !== "part" || head.to !== mark.from
      || isHead(mark)) { out.push(mark); continue; }
    const place = smallPart(mark, head.phrase, kind, head.plural, true);
    out[out.length - 1] = { ...head, to: mark.to, phrase: `x ${head.phrase}`, ambiguous: true, ...(place === null ? {} : at(place)) };
  }
  return out;
}

/** "Main & pinion gears": the word of the family is said once, behind. */
function sharedBehind(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  for (const head of all) {
    const family = lastWord(head.phrase);
    if (head.kind !== "part" || !head.plural || !FAMILY_WORD.has(family)) continue;
    for (let index = head.from - 1; index >= 0; index--) {
      const token = found[index] as Token, joint = found[index + 1];
      if ((token.kind === "list" && ["and", "&", "/"].includes(token.word)) || token.word === "both") continue;
      const mark = out.find((one) => one.from <= index && one.to > index);
      if (token.kind !== "word" || (joint?.kind !== "list" && joint?.word !== "both")
        || (mark && !(mark.kind === "part" && (mark.phrase === "main" || (family === "bearing" && WITH_BEARING.has(mark.phrase)))))) break;
      const phrase = mark ? mark.phrase : token.word, place = lastWord(phrase) === family ? null : placeOf(`${phrase} ${family}`, kind);
      if (place === null) break;
      const made: Mark = { ...(mark ?? { ...head, from: index, to: index + 1, plural: false }), ...at(place), phrase: `${phrase} ${family}`, ambiguous: true };
      if (mark) out[out.indexOf(mark)] = made; else out.push(made);
      index = made.from;
    }
  }
  return out.sort((a, b) => a.from - b.from);
}

/** Words between a heading and its colon ("bearing kit fitted:"). */
const HEADING_WORDS: ReadonlySet<string> = new Set(["kit", "set", "all", "new", "fitted", "replaced", "changed", "gone", "shot", "done", "out"]);

/** A colon or a bracket behind a heading, over a number and small words. */
function heads(found: readonly Token[], at: number): boolean {
  let sign = at;
  while (sign < at + 4 && (found[sign]?.kind === "quantity" || /^\d$/.test(word(found[sign])) || HEADING_WORDS.has(word(found[sign])))) sign++;
  const spoken = found.slice(at, sign).some((token) => token.kind === "word" && !/^\d$/.test(token.word));
  return found[sign]?.kind === "dash" || (!spoken && found[sign]?.word === "(");
}

const signAfter = (found: readonly Token[], at: number) => found.findIndex((token, index) => index >= at
  && (token.kind === "dash" || token.kind === "bracket"));

/** "Bearings: 2 spool, 1 pinion": the word of the family is said once, ahead. */
function sharedAhead(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  for (const head of all) {
    if (!isHead(head) || !(head.plural || ["kit", "set"].includes(word(found[head.to]))) || head.positions.length > 0 || !heads(found, head.to)) continue;
    let used = false;
    for (let index = signAfter(found, head.to) + 1; index < found.length && found[index]?.kind !== "stop"; index++) {
      const token = found[index] as Token, mark = out.find((one) => one.from <= index && one.to > index);
      const starts = found[index - 1]?.kind !== "word" || /^\d+$/.test(found[index - 1]?.word ?? "");
      if (token.kind !== "word" || /^\d+$/.test(token.word) || !starts) continue;
      const phrase = mark?.kind === "part" ? mark.phrase : token.word, place = mark && mark.kind !== "part" ? null : placeOf(`${phrase} ${head.phrase}`, kind);
      if (place === null) break;
      const made: Mark = { ...(mark ?? { ...head, from: index, to: index + 1, plural: false }), ...at(place), phrase: `${phrase} ${head.phrase}`,
        ambiguous: true };
      if (mark) out[out.indexOf(mark)] = made; else out.push(made);
      [index, used] = [made.to - 1, true];
    }
    if (used) out.splice(out.indexOf(head), 1);
  }
  return out.sort((a, b) => a.from - b.from);
}

/** "Line roller: bearing stiff", "LR - new brg": the part named ahead says whose bearing it is. */
function headings(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const dropped = new Set<Mark>();
  const out = [...all];
  all.forEach((owner, index) => {
    if (owner.kind !== "part" || isHead(owner) || found[owner.to]?.kind !== "dash") return;
    for (let next = index + 1; next < all.length && !found.slice(owner.to + 1, (all[next] as Mark).from).some((token) => token.kind === "stop"); next++) {
      const mark = all[next] as Mark, place = isHead(mark) ? smallPart(owner, mark.phrase, kind) : null;
      if (place === null) { if (mark.kind === "part" && mark.positions.length > 0 && mark.phrase !== "roller") break; else continue; }
      out[next] = { ...mark, ...at(place), phrase: `${owner.phrase} ${mark.phrase}`, ambiguous: false };
      if (found.slice(owner.to + 1, mark.from).every((token) => token.kind === "word")) dropped.add(owner);
    }
  });
  return out.filter((mark) => !dropped.has(mark));
}

const INSTEAD: ReadonlySet<string> = new Set(["by", "with", "a", "new", "pair", "of", "two"]);
/** "Knob bushes replaced with bearings": what was fitted is another part in the same place; the old one tells no more. */
function instead(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  all.forEach((head, index) => {
    const action = all[index - 1], old = all[index - 2];
    if (!isHead(head) || action?.action?.action !== "replaced" || old?.kind !== "part" || old.positions.length !== 1
      || old.family === FAMILY_WORD.get(head.phrase)) return;
    const between = found.slice(action.to, head.from);
    if (between.length === 0 || between.some((token) => token.kind !== "quantity" && !INSTEAD.has(word(token)))) return;
    const place = placeOf(`${old.phrase.split(" ").slice(0, -1).join(" ")} ${head.phrase}`, kind);
    if (place === null) return;
    out[index - 2] = { ...old, kind: "ignored" };
    out[index] = { ...head, ...at(place), ambiguous: true };
  });
  return out;
}

/** Names of parts that stand in pieces, put together. */
export function compounds(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  return instead(found, headings(found, sharedAhead(found, sharedBehind(found, turnedNames(joinedNames(found, inside(found, all, kind), kind), kind), kind),
    kind), kind), kind);
}
