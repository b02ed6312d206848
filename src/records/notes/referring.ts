import { FILLERS, PLACE_ALWAYS } from "./sayings.ts";
import { compounds } from "./compounds.ts";
import { familyOf, knownWords } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import { ARTICLES, at, isHead, lastWord, placeOf, smallPart } from "./part-names.ts";
import { sides } from "./sides.ts";
import type { Token } from "./tokens.ts";
import { LAST_OF } from "./words.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** Parts whose own small parts follow them by a bare name: "dog worn, spring ok". */
const OWNERS: ReadonlySet<string> = new Set([
  "dog", "ar dog", "clicker", "clicker pawl", "trip lever", "bail trip", "click", "click pawl", "bail", "bail arm", "lineroller", "roller", "yoke",
    "clutch yoke", "knob", "handle knob", "pawl", "handle", "clutch", "roller clutch", "oneway clutch", "clutch roller", "ar roller", "bail wire",
    "handle folding joint", "handle joint", "tongue", "clicker tongue", "click tongue",
  "tension knob", "tension cap", "cast cap", "spool tension knob", "mainshaft", "spool shaft", "ar", "oneway", "ar clutch", "clutch assy", "bait clicker", "drag knob", "cast control", "cast control knob", "cast control cap",
]);
const GROUPING: ReadonlySet<string> = new Set(["and", "&", "+", "w/", "/"]);
/** How many readings a bare word may look back over. */
const WINDOW = 24;
/** Last words of names that say too little to stand for the name. */
const NO_NAME: ReadonlySet<string> = new Set(["side", "left", "right", "set", "stack", "drag", "in", "under"]);
/** Words behind a part's name that make it the name of something else. */
const NOUNS: ReadonlySet<string> = new Set([
  "thread", "soak", "setting", "pressure", "noise", "bag", "box", "area", "hole", "seat", "surface", "face", "price", "number", "tension", "test", "oil",
    "size", "mesh", "knock",
  "nut", "pin", "cap", "cover", "lever", "plate", "wheel", "lock", "counterbalance", "clip", "tube", "button", "rivet", "housing", "bracket", "tab", "stop",
    "collar",
  "block", "weight", "circlip", "key", "link", "peg", "insert", "guard", "shield", "race", "logo", "sticker", "paint", "finish", "coating", "pivot",
    "hinge", "post",
]);

/** The position that a bare word means because the part was named in full before; null when none or several were. */
function namedBefore(before: readonly Mark[], head: string): readonly string[] | null {
  const same = before.filter((mark) => mark.kind === "part" && mark.positions.length > 0
    && (lastWord(mark.phrase) === head || LAST_OF.get(lastWord(mark.phrase)) === head || (mark.to - mark.from === 1 && mark.phrase.startsWith(`${head} `))));
  const places = new Set(same.map((mark) => mark.positions.join()));
  return places.size === 1 ? same[0]?.positions ?? null : null;
}

const ofRoller = (small: string, kind: ReelKind | null) => placeOf(`lineroller ${small}`, kind);

/** The small part of the part named just before: "dog + spring", "line roller grooved, bearing ok". */
function belonging(found: readonly Token[], small: string, plural: boolean, before: readonly Mark[], joint: string, kind: ReelKind | null): string | null {
  const owner = [...before].reverse().find((one) => one.kind === "part");
  if (!owner || owner.positions.length !== 1 || PLACE_ALWAYS.has(found[owner.from - 1]?.word ?? "")) return null;
  const close = GROUPING.has(joint) && before.at(-1) === owner, first = owner.phrase === "clutch bar" ? "thumb bar" : owner.phrase.split(" ")[0] ?? "";
  const together = (owner.positions[0] ?? "").startsWith("line_roller") && small !== "seal" && small !== "oring";
  if (!close && !OWNERS.has(owner.phrase) && !together) return null;
  if (together && !close && !OWNERS.has(owner.phrase)) return /^lineroller (?:roller)?$/.test(small) ? null : ofRoller(small, kind);
  return smallPart(owner, small, kind, plural) ?? (close ? placeOf(`${lastWord(owner.phrase)} ${small}`, kind) ?? placeOf(`${first} ${small}`, kind) : null);
}

/** The sign before a word, over small words ("pawl and its cap"). */
function jointBefore(found: readonly Token[], index: number): string {
  let at = index - 1;
  const isSmall = ({ kind, word }: Token) => kind === "quantity" || (kind === "word" && (ARTICLES.has(word) || /^(?:new|\d+)$/.test(word)));
  while (at >= 0 && isSmall(found[at] as Token)) at--;
  return found[at]?.kind === "list" ? found[at]?.word ?? "" : "";
}

/** "A screw" is one not spoken of before. */
const indefinite = (found: readonly Token[], mark: Mark) => ["a", "an", "another", "some"].includes(found[mark.from - 1]?.word ?? "");
/** "Xyz spring": a word we do not know tells which spring it is. */
export function qualified(found: readonly Token[], mark: Mark): boolean {
  const before = found[mark.from - 1];
  return before?.kind === "word" && !FILLERS.has(before.word) && !knownWords.has(before.word) && !/^\d|.ly$/.test(before.word);
}

/** Words for small parts that stand by themselves behind the part they belong to: "pinion bearing + its clip". */
const SMALL_PART: ReadonlySet<string> = new Set(["clip", "cap", "cover", "plate", "pin", "nut", "lever", "ring", "sleeve", "spacer"]);

/** What one reading means after those before it. */
function settledBy(found: readonly Token[], mark: Mark, before: readonly Mark[], kind: ReelKind | null): Mark {
  const sized = found.slice(Math.max(0, mark.from - 2), mark.to + 2).some((token) => token.kind === "size");
  const open = mark.kind === "part" && !mark.own && !mark.phrase.includes(" ") && (mark.positions.length === 0 || mark.ambiguous);
  const known = open && mark.positions.length < 2 && !indefinite(found, mark) && !(sized && mark.positions.length === 0);
  const again = known ? namedBefore(before, mark.phrase) : null;
  if (again) return { ...mark, positions: again, family: familyOf.get(again[0] ?? "") ?? null, ambiguous: false };
  const joined = SMALL_PART.has(mark.phrase) && GROUPING.has(jointBefore(found, mark.from));
  const placeless = (isHead(mark) || joined) && mark.positions.length === 0 && !indefinite(found, mark) && !qualified(found, mark);
  const loose = mark.phrase === "screw" && (found[mark.from - 1]?.kind === "quantity" || /^\d+$/.test(found[mark.from - 1]?.word ?? ""));
  const part = placeless && !sized && !loose ? belonging(found, mark.phrase, mark.plural, before, jointBefore(found, mark.from), kind) : null;
  return part === null ? mark : { ...mark, ...at(part), ambiguous: true };
}

/** The part ahead of a colon or dash in the same sentence, where a word stands alone behind it: "cast control: cap cleaned, spacer replaced". */
function headed(found: readonly Token[], index: number, before: readonly Mark[]): Mark | null {
  if (found[index - 1]?.kind === "word" && !ARTICLES.has(found[index - 1]?.word ?? "") && found[index - 1]?.word !== "new") return null;
  for (const mark of [...before].reverse()) {
    if (found.slice(mark.to, index).some((token) => token.kind === "stop")) return null;
    const named = mark.kind === "part" || mark.kind === "ignored";
    if (named && mark.positions.length === 1 && found[mark.to]?.kind === "dash") return { ...mark, kind: "part" };
  }
  return null;
}

/** The small part of a heading that the word at `index` names. */
function underHeading(found: readonly Token[], index: number, before: readonly Mark[], kind: ReelKind | null): Mark | null {
  const { word, plural } = found[index] as Token, owner = headed(found, index, before);
  const place = owner && (placeOf(`${owner.phrase} ${word}`, kind) ?? smallPart(owner, word, kind, plural)
    ?? placeOf(`${lastWord(owner.phrase)} ${word}`, kind));
  return owner && place !== null ? { ...owner, ...at(place), from: index, to: index + 1, phrase: `x ${word}`, plural, ambiguous: true } : null;
}

/** A word that is no name by itself, but ends the full name of a part named before, or is the small part of the one just named. */
function shortened(found: readonly Token[], index: number, before: readonly Mark[], kind: ReelKind | null): Mark | null {
  const token = found[index] as Token, last = before.at(-1);
  if (token.kind !== "word" || token.word.length < 3 || FILLERS.has(token.word) || NO_NAME.has(token.word) || !last) return null;
  const joint = jointBefore(found, index), small = GROUPING.has(joint) && last.to >= index - 2
    ? belonging(found, token.word, token.plural, before, joint, kind) : null;
  if (small !== null) return { ...last, ...at(small), kind: "part", from: index, to: index + 1, phrase: token.word, plural: token.plural, ambiguous: true };
  const under = underHeading(found, index, before, kind);
  if (under) return under;
  const previous = found[index - 1], alone = previous?.kind !== "word" || FILLERS.has(previous.word) || (last.to === index && last.kind !== "part");
  const again = alone ? namedBefore(before, token.word) : null, owner = again ? before.find((mark) => mark.positions === again) : undefined;
  return owner ? { ...owner, from: index, to: index + 1, phrase: token.word, plural: token.plural, ambiguous: true } : null;
}

/** "Clamp missing 1 nut": it is something else that is missing. */
function lacks(found: readonly Token[], from: number): boolean {
  let index = from;
  while (found[index]?.kind === "quantity" || /^(?:\d+|its|a|one|the|two)$/.test(found[index]?.word ?? "")) index++;
  return found[index]?.kind === "word" && NOUNS.has(found[index]?.word ?? "");
}

/** "Drag setting", "screw thread": the part's name only says which setting or thread. */
function onlyNames(found: readonly Token[], mark: Mark, next: Mark | undefined): boolean {
  const behind = found[mark.to];
  if (mark.kind === "part" && next?.from === mark.to && next.phrase === "missing") return lacks(found, next.to);
  if (mark.kind !== "part" || behind?.kind !== "word" || (next?.from === mark.to
    && !(mark.family === "screw" && next.phrase.startsWith("thread")))) return false;
  return NOUNS.has(behind.word) || (mark.phrase === "drag" && !mark.plural && !FILLERS.has(behind.word));
}

/** Readings with the words that refer to others settled: names in pieces, sides, bare words for parts named before. */
export function referring(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const known = sides(found, compounds(found, all, kind), kind), out: Mark[] = [];
  let index = 0;
  const words = (to: number) => {
    for (; index < to; index++) {
      const again = shortened(found, index, out.slice(-WINDOW), kind);
      if (again) out.push(again);
    }
  };
  known.forEach((mark, number) => {
    words(mark.from);
    index = Math.max(index, mark.to);
    const settled = settledBy(found, mark, out.slice(-WINDOW), kind);
    out.push(onlyNames(found, mark, known[number + 1]) ? { ...settled, positions: [], family: null } : settled);
  });
  words(found.length);
  return out;
}
