import { FILLERS, PLACE_AFTER_PART, PLACE_ALWAYS } from "./bench-words.ts";
import type { Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";

/** What stands between two list signs: parts with what was said and done in the same breath. */
export interface Item {
  readonly from: number;
  readonly to: number;
  /** The sign before it: none at the start of a sentence, else `,` `+` `&` `/` `and` `w/`, or `-` after a dash. */
  readonly joint: string;
  readonly parts: readonly Mark[];
  /** Faults, actions and sayings, in order. */
  readonly told: readonly Mark[];
  readonly complaint: boolean;
  readonly doubt: boolean;
  readonly sizes: readonly string[];
  /** Words in which nothing was understood. */
  readonly unknown: number;
  /** It names no part of ours, and what it says may be meant of something we did not understand ("pin replaced"). */
  readonly other_subject: boolean;
  /** The part was only put out of the way ("star off"). */
  readonly cleared: boolean;
  /** A part and its fault before a dash or colon, behind which the parts at fault are named. */
  readonly symptom: boolean;
}

/** "No rust" is good news, "not replaced" a refusal; other "no"s deny nothing we read. */
function denied(found: readonly Token[], all: readonly Mark[]): Mark[] {
  const out: Mark[] = [];
  for (let index = 0; index < all.length; index++) {
    const mark = all[index] as Mark, next = all[index + 1];
    const close = mark.say === "not" && next && next.from - mark.to <= 1 && found.slice(mark.to, next.from).every((token) => token.kind === "word");
    if (close && next.kind === "mode") {
      out.push({ ...mark, say: "good", to: next.to });
      for (index++; all[index + 1]?.from === next.from; index++);
    } else if (close && next.kind === "action" && next.action?.code !== "ORDER") {
      out.push({ ...mark, say: "declined", to: next.to });
      index++;
    } else out.push(mark);
  }
  return out;
}

const wordBefore = (found: readonly Token[], at: number): { word: string; at: number } => {
  for (let back = at - 1; back >= 0; back--) {
    const token = found[back] as Token;
    if (token.kind === "quantity" || token.kind === "size") continue;
    if (token.kind !== "word") return { word: "", at: back };
    if (!["the", "a", "an", "his", "her", "its", "this", "that", "my", "top", "bottom", "rear", "front", "inner", "outer", "other"].includes(token.word) && !/^\d+$/.test(token.word)) return { word: token.word, at: back };
  }
  return { word: "", at: -1 };
};

/** A part named only as a place ("behind the rotor"), opened on the way ("took the handle off"), or denied ("not the clutch"). */
function aside(found: readonly Token[], inside: readonly Mark[], part: Mark, from: number): boolean {
  const before = wordBefore(found, part.from);
  if (before.at < from) return false;
  const covering = inside.find((mark) => mark.from <= before.at && mark.to > before.at);
  if (covering?.say === "not" && inside.some((mark) => mark.phrase === "available")) return false;
  if (covering?.say === "opened" || covering?.say === "not" || covering?.say === "elsewhere") return true;
  if (PLACE_ALWAYS.has(before.word)) return true;
  return PLACE_AFTER_PART.has(before.word) && inside.some((mark) => mark.kind === "part" && mark.to <= before.at);
}

/** Words that carry no news beside a part; adverbs and figures are among them. */
const isFiller = (word: string) => FILLERS.has(word) || /^\d|.ly$/.test(word);

/**
 * Words that are not what they look like where they stand: "drum clean" says how it is, "oil on rollers" what is on them,
 * and "new one on order" is not there yet.
 */
function withAdjectives(told: readonly Mark[], inside: readonly Mark[]): Mark[] {
  const part = inside.find((mark) => mark.kind === "part"), ordered = told.some((mark) => mark.action?.code === "ORDER");
  return told.flatMap((mark, index) => {
    const before = told[index - 1];
    if (mark.kind === "action" && before?.say === "later" && mark.from - before.to <= 1) return [];
    if (ordered && mark.action?.code === "REPL" && mark.phrase.startsWith("new")) return [];
    if (mark.kind === "action" && mark.phrase === "clean" && part && mark.from >= part.to) return [{ ...mark, kind: "say" as const, say: "good" as const, action: null }];
    return [mark];
  });
}

/** "Scuffed plate with paper": what was done was done to something we did not understand. */
function withObject(tokens: readonly Token[], told: readonly Mark[], from: number, strange: (token: Token, index: number) => boolean): boolean {
  const end = [...told].reverse().find((mark) => mark.kind === "action" && mark.action?.code !== "ORDER")?.to, next = end === undefined ? undefined : tokens[end - from];
  return next !== undefined && end !== undefined && strange(next, end - from) && !next.word.endsWith("ed");
}

/** Words that start a clause about how it came to be, after which strange words take nothing from what was read. */
const CLAUSE: ReadonlySet<string> = new Set(["where", "because", "since", "when", "after", "from", "due", "as", "by", "while", "despite", "until"]);
function mainClause(tokens: readonly Token[], inside: readonly Mark[], from: number): number {
  const start = tokens.findIndex((token, index) => CLAUSE.has(token.word) && inside.some((mark) => mark.to <= from + index));
  return start < 0 ? tokens.length : start;
}

/** "Needs a new yoke" wants a part; "needs press", "need to ask" want something else. */
const needsPart = (found: readonly Token[], inside: readonly Mark[], needs: Mark) => inside.some((mark) =>
  mark.from >= needs.to && mark.from - needs.to <= 2 && (mark.kind === "part" || mark.action?.action === "replaced")
  && found.slice(needs.to, mark.from).every((token) => token.kind !== "word" || isFiller(token.word)));

/** What family of part a size alone means in a list of parts: three measures are a bearing, a dash number or two an O-ring. */
function sizedPart(found: readonly Token[], from: number, to: number): Mark[] {
  let at = from;
  while (at < to && found[at]?.kind !== "size") at++;
  const size = at < to ? found[at]?.word ?? "" : "";
  const family = /x.*x|^(?:s?mr|6)\d|-\d+-/.test(size) ? "ball bearing" : /^(?:as568-?|-)\d{3}$|x[1-5](?:\.\d+)?$/.test(size) ? "seal" : null;
  if (family === null) return [];
  return [{
    kind: "part", from: at, to: at + 1, phrase: size, positions: [], family, ambiguous: false, plural: false, modes: [], action: null, say: null, corrected: false, own: false,
  }];
}

function item(found: readonly Token[], marked: readonly Mark[], from: number, to: number, joint: string, sizes_alone: boolean): Item {
  const inside = sizes_alone && !marked.some((mark) => mark.kind === "part") ? [...marked, ...sizedPart(found, from, to)] : marked;
  const tokens = found.slice(from, to);
  const covered = new Set(inside.flatMap((mark) => Array.from({ length: mark.to - mark.from }, (_, index) => mark.from + index)));
  const strange = (token: Token, index: number) => token.kind === "word" && !covered.has(from + index) && !isFiller(token.word);
  const told = inside.filter((mark) => mark.kind === "mode" || mark.kind === "action" || (mark.kind === "say" && mark.say !== "neutral" && mark.say !== "opened" && !(mark.say === "needs" && !needsPart(found, inside, mark))));
  const news = told.find((mark) => mark.kind === "mode" || mark.kind === "action")?.from ?? from;
  return {
    from, to, joint,
    parts: inside.filter((mark) => mark.kind === "part" && !aside(found, inside, mark, from)),
    told: withAdjectives(told, inside),
    complaint: inside.some((mark) => mark.kind === "complaint"),
    doubt: tokens.some((token) => token.kind === "doubt") || inside.some((mark) => mark.say === "doubt"),
    sizes: tokens.filter((token) => token.kind === "size").map((token) => token.word),
    unknown: tokens.slice(0, mainClause(tokens, inside, from)).filter(strange).length,
    symptom: false,
    cleared: ["off", "out"].includes(tokens.at(-1)?.word ?? ""),
    other_subject: tokens.slice(0, news - from).some((token, index) => strange(token, index) && !token.word.endsWith("ed")) || withObject(tokens, told, from, strange),
  };
}

const isSymptom = (one: Item, next: Item | undefined) =>
  next?.joint === "-" && next.parts.length > 0 && one.parts.length > 0 && one.told.length > 0 && one.told.every((mark) => mark.kind === "mode");

/** A sentence that speaks of something else than this reel tells nothing. */
const elsewhere = (items: readonly Item[]) => items.some((one) => one.told.some((mark) => mark.say === "elsewhere"));

/** A bracket that holds a part stands in a list like a comma; others are no more than their words. */
function opening(found: readonly Token[], all: readonly Mark[], at: number, next: number): Token | null {
  const token = found[at];
  if (token?.kind !== "bracket") return null;
  let close = at + 1;
  while (close < found.length && close < at + 16 && found[close]?.kind !== "bracket") close++;
  let held = token.word === ")";
  for (let index = next; !held && (all[index]?.from ?? close) < close; index++) held = all[index]?.kind === "part";
  return held ? { ...token, kind: "list" } : null;
}

/** Items of a note, sentence by sentence. `sizes_alone`: a size without a name stands for a part, as in a list of parts. */
export function sentences(found: readonly Token[], read: readonly Mark[], sizes_alone: boolean): Item[][] {
  const out: Item[][] = [], all = denied(found, read);
  let items: Item[] = [], inside: Mark[] = [], from = 0, joint = "", next = 0;
  const end = () => { if (items.length > 0 && !elsewhere(items)) out.push(items.map((one, index) => ({ ...one, symptom: isSymptom(one, items[index + 1]) }))); items = []; };
  for (let at = 0; at <= found.length; at++) {
    for (; next < all.length && (all[next] as Mark).from < at; next++) inside.push(all[next] as Mark);
    const token = opening(found, all, at, next) ?? found[at], covered = inside.some((mark) => mark.to > at);
    if (token && (covered || !["list", "stop", "dash"].includes(token.kind))) continue;
    if (at > from) items.push(item(found, inside, from, at, joint, sizes_alone));
    if (!token || token.kind === "stop") { end(); joint = ""; } else joint = token.kind === "dash" ? "-" : token.word;
    [from, inside] = [at + 1, []];
  }
  return out;
}
