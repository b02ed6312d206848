import { FILLERS, PLACE_AFTER_PART, PLACE_ALWAYS } from "./sayings.ts";
import { marked, type Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";

/** What stands between two list signs: parts with what was said and done in the same breath. */
export interface Item {
  readonly from: number;
  readonly to: number;
  /** The sign before it: none at the start of a sentence, else `,` `+` `&` `/` `and` `w/`, or `-` after a dash. */
  readonly joint: string;
  /** It stands in brackets. */
  readonly bracket: boolean;
  readonly parts: readonly Mark[];
  /** Parts named only as what another touches ("seized to the pinion"). */
  readonly passed: readonly Mark[];
  /** Faults, actions and sayings, in order. */
  readonly told: readonly Mark[];
  readonly complaint: boolean;
  readonly doubt: boolean;
  readonly sizes: readonly string[];
  /** It carries a marked number of pieces ("2x"). */
  readonly counted: boolean;
  /** Words in which nothing was understood: in its main clause, and in all of it. */
  readonly unknown: number;
  readonly strangers: number;
  /** It names no part of ours, and what it says may be meant of something we did not understand ("pin replaced"). */
  readonly other_subject: boolean;
  /** The part was only put out of the way ("star off"). */
  readonly cleared: boolean;
  /** "Replaced along with the springs": what was done was done to the parts before as well. */
  readonly with_others: boolean;
  /** A part and its fault before a dash or colon, behind which the parts at fault are named. */
  readonly symptom: boolean;
}
/** The note's tokens, and which of them are words we know nothing of. */
export interface Read { readonly found: readonly Token[]; readonly strange: readonly boolean[] }

const NOT_BETWEEN: ReadonlySet<string> = new Set(["the", "a", "an", "his", "her", "its", "this", "that", "my", "top", "bottom", "rear", "front", "inner",
  "outer", "other"]);

/** The nearest word of weight before token `at` in the same breath, and where it stands. */
function wordBefore(found: readonly Token[], at: number): { word: string; at: number } {
  for (let back = at - 1; back >= 0; back--) {
    const token = found[back] as Token;
    if (token.kind === "quantity" || token.kind === "size") continue;
    if (token.kind !== "word") return { word: "", at: back };
    if (!NOT_BETWEEN.has(token.word) && !/^\d+$/.test(token.word)) return { word: token.word, at: back };
  }
  return { word: "", at: -1 };
}

/** "No bail spring" is one that is missing; "no drag" and "no bearings replaced" are not. */
const isLacking = (not: Mark, part: Mark, inside: readonly Mark[]) =>
  not.say === "not" && not.phrase === "no" && not.to === part.from && part.positions.length === 1 && part.phrase.includes(" ")
    && inside.every((mark) => mark.action === null && mark.say !== "good");
const lacking = (inside: readonly Mark[]): Mark[] => inside.flatMap((mark, index) => {
  const part = inside[index + 1];
  return part?.kind === "part" && isLacking(mark, part, inside) ? [{ ...mark, say: "without" as const }] : [];
});

/** "Gearbox opened, …" only says how one got there. */
function wasOpened(found: readonly Token[], inside: readonly Mark[], part: Mark): boolean {
  return inside.some((mark) => mark.say === "opened" && (/^(?:opened|unscrewed|split)/.test(mark.phrase) || found[mark.to]?.word === "to")
    && mark.from === part.to) && !inside.some((mark) => mark.kind === "action" || mark.kind === "mode");
}

/** "Clip that holds the washers": the second part only tells which the first is. */
const RELATIVE: ReadonlySet<string> = new Set(["hold", "holding", "retaining", "retain"]);

/** A part named only as a place ("behind the rotor"), opened on the way ("took the handle off"), or denied ("not the clutch"). */
function aside(found: readonly Token[], inside: readonly Mark[], part: Mark, from: number): boolean {
  if (wasOpened(found, inside, part)) return true;
  const before = wordBefore(found, part.from);
  if (before.at < from) return false;
  const covering = inside.find((mark) => mark.from <= before.at && mark.to > before.at);
  if (covering?.say === "not" && inside.some((mark) => mark.phrase === "available")) return false;
  if (covering?.say === "not" && isLacking(covering, part, inside)) return false;
  if (covering?.say === "opened" || covering?.say === "not" || covering?.say === "elsewhere") return true;
  const reached = found[before.at - 1]?.word === "get" || (before.word === "from" && covering === undefined
    && inside.some((mark) => mark.to === before.at && mark.phrase === "missing"));
  if (PLACE_ALWAYS.has(before.word) && !reached) return true;
  if (before.word === "in" && found[before.at - 1]?.word === "found") return true;
  if (RELATIVE.has(before.word) && inside.some((mark) => mark.kind === "part" && mark.to <= before.at)) return true;
  if (["on", "in"].includes(before.word) && inside.some((mark) => mark.action?.action === "replaced" && mark.to <= before.at
    && mark.to > from + 1)) return true;
  return PLACE_AFTER_PART.has(before.word) && inside.some((mark) => mark.kind === "part" && mark.to <= before.at);
}

const TOUCHING: ReadonlySet<string> = new Set(["to", "on", "in", "through", "into", "against"]);
const touched = (found: readonly Token[], part: Mark) => TOUCHING.has(wordBefore(found, part.from).word) && found[part.to]?.word !== "side";

/** Words that carry no news beside a part; adverbs and figures are among them. */
const isFiller = (word: string) => FILLERS.has(word) || /^\d|.ly$/.test(word);

/** Which tokens are words of weight that no reading covers. */
export function strangeWords(found: readonly Token[], all: readonly Mark[]): boolean[] {
  const out = found.map((token) => token.kind === "word" && !isFiller(token.word));
  for (const mark of all) out.fill(false, mark.from, mark.to);
  return out;
}

/** Names of what is put on: work only where they start, or right before a part ("grease pinion"). */
const BARE: ReadonlySet<string> = new Set(["oil", "grease", "lube"]);

/**
 * Words that are not what they look like where they stand: "drum clean" says how it is, "oil on rollers" what is on them,
 * and "new one on order" is not there yet.
 */
function withAdjectives(found: readonly Token[], told: readonly Mark[], inside: readonly Mark[], from: number): Mark[] {
  const part = inside.find((mark) => mark.kind === "part"), ordered = told.some((mark) => mark.action?.code === "ORDER");
  return told.flatMap((mark, index) => {
    const before = told[index - 1];
    if (BARE.has(mark.phrase) && mark.from > from && found[mark.from - 1]?.kind === "word"
      && !inside.some((one) => one.kind === "part" && one.from - mark.to <= 1 && one.from >= mark.to)) return [];
    if (mark.action?.action === "replaced" && found[mark.to]?.word === "last") return [];
    if (mark.kind === "action" && before?.say === "later" && mark.from - before.to <= 1) return [];
    if (mark.phrase === "fit" && found[mark.from - 1]?.word === "to") return [];
    if (ordered && mark.action?.code === "REPL" && mark.phrase.startsWith("new")) return [];
    if (mark.kind === "action" && mark.phrase === "clean" && part && mark.from >= part.to
      && found[mark.from - 1]?.word !== "after") return [{ ...mark, kind: "say" as const, say: "good" as const, action: null }];
    return [mark];
  });
}

const isPast = (token: Token | undefined) => token?.word.endsWith("ed") ?? false;

/** Whether what is said may be meant of something strange: its subject ("pin replaced") or its object ("scuffed plate with paper"). */
function otherSubject({ found, strange }: Read, told: readonly Mark[], from: number, to: number): boolean {
  let news = from, end = -1;
  for (const mark of told) {
    if (news === from && (mark.kind === "mode" || mark.kind === "action")) news = mark.from;
    if (mark.kind === "action" && mark.action?.code !== "ORDER") end = mark.to;
  }
  for (let at = from; at < news; at++) if (strange[at] && !isPast(found[at])) return true;
  return end >= 0 && end < to && (strange[end] ?? false) && !isPast(found[end]);
}

/** Words before what something was done with. */
const MEANS: ReadonlySet<string> = new Set(["with", "using", "in", "by"]);
/** Where an item ends for counting strange words: before what was worked with ("cleaned with lighter fluid"). */
function withoutMeans(found: readonly Token[], inside: readonly Mark[], told: readonly Mark[], to: number): number {
  const named = told[0]?.from ?? 0, behind = inside.some((mark) => mark.kind === "part" && mark.to <= named);
  const act = told.find((mark) => mark.kind === "action" && (behind || mark.action?.action !== "replaced") && MEANS.has(found[mark.to]?.word ?? ""));
  return act ? Math.min(to, act.to) : to;
}
/** Words that start a clause about how it came to be, after which strange words take nothing from what was read. */
const CLAUSE: ReadonlySet<string> = new Set(["where", "because", "since", "when", "after", "from", "due", "as", "by", "while", "despite", "until"]);

function strangers({ found, strange }: Read, inside: readonly Mark[], from: number, to: number): number {
  const first = inside[0]?.to ?? to;
  let count = 0;
  for (let at = from; at < to && !(at >= first && CLAUSE.has(found[at]?.word ?? "")); at++) if (strange[at]) count++;
  return count;
}

/** "Needs a new yoke" wants a part; "needs press", "need to ask" want something else. */
const needsPart = ({ strange }: Read, inside: readonly Mark[], needs: Mark) => inside.some((mark) =>
  mark.from >= needs.to && mark.from - needs.to <= 2 && (mark.kind === "part" || mark.action?.action === "replaced")
    && !strange.slice(needs.to, mark.from).includes(true));

/** Sayings that tell nothing of a part. */
const SILENT: ReadonlySet<string> = new Set(["neutral", "opened"]);
const tells = (read: Read, inside: readonly Mark[], mark: Mark) =>
  mark.kind === "mode" || mark.kind === "action" || (mark.say !== null && !SILENT.has(mark.say) && (mark.say !== "needs" || needsPart(read, inside, mark)));

/** What family of part a size alone means in a list of parts: three measures are a bearing, a dash number or two an O-ring. */
function sizedPart(found: readonly Token[], from: number, to: number): Mark[] {
  let at = from;
  while (at < to && found[at]?.kind !== "size") at++;
  const size = at < to ? found[at]?.word ?? "" : "";
  const family = /x.*x|^(?:s?mr|6)\d|-\d+-/.test(size) ? "ball bearing" : /^(?:as568-?|-)\d{3}$|x[1-5](?:\.\d+)?$/.test(size) ? "seal" : null;
  return family === null ? [] : [marked("part", at, at + 1, size, false, { part: { positions: [], family, ambiguous: false, plural: false } })];
}

const withOthers = (found: readonly Token[], lead: Mark | undefined) => lead?.kind === "action"
  && (["along", "together"].includes(found[lead.to]?.word ?? "") || (found[lead.to]?.word === "with" && found[lead.to + 1]?.word === "its"));

/** One item, from token `from` to before `to`, with the readings that stand in it. */
export function item(read: Read, readings: readonly Mark[], from: number, to: number, joint: string, sizes_alone: boolean, bracket: boolean): Item {
  const { found } = read, sized = sizes_alone && !readings.some((mark) => mark.kind === "part");
  const inside = sized ? [...readings, ...sizedPart(found, from, to)] : readings, told = inside.filter((mark) => tells(read, inside, mark));
  const last = found[to - 1]?.word ?? "", sizes: string[] = [];
  const named = inside.filter((mark) => mark.kind === "part"), asides = named.filter((mark) => aside(found, inside, mark, from));
  const means = withoutMeans(found, inside, told, to);
  let doubt = false;
  for (let at = from; at < to; at++) {
    if (found[at]?.kind === "size") sizes.push(found[at]?.word ?? "");
    doubt ||= found[at]?.kind === "doubt";
  }
  return {
    from, to, joint, bracket, sizes, symptom: false, counted: found.slice(from, to).some((token) => token.kind === "quantity"),
    parts: named.filter((mark) => !asides.includes(mark)),
    passed: asides.filter((mark) => touched(found, mark)),
    told: withAdjectives(found, told, inside, from).concat(lacking(inside)).filter((mark) => !(sizes_alone && BARE.has(mark.phrase))),
    complaint: inside.some((mark) => mark.kind === "complaint"),
    doubt: doubt || inside.some((mark) => mark.say === "doubt"),
    unknown: strangers(read, inside, from, means),
    strangers: strangers(read, [], from, Math.min(means, told.find((mark) => mark.action?.code === "ORDER")?.to ?? to)),
    cleared: last === "off" || last === "out",
    with_others: withOthers(found, inside[0]),
    other_subject: otherSubject(read, told, from, means),
  };
}
