import { aside, byOthers, lacking, touched } from "./asides.ts";
import { FILLERS } from "./sayings.ts";
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
  /** "With" or "by" stands between two of its parts: the second was put in or did it, the first is what it was done to. */
  readonly put_between: boolean;
  /** A part and its fault before a dash or colon, behind which the parts at fault are named. */
  readonly symptom: boolean;
}
/** The note's tokens, and which of them are words we know nothing of. */
export interface Read { readonly found: readonly Token[]; readonly strange: readonly boolean[] }

/** Words that carry no news beside a part; adverbs and figures are among them. */
const isFiller = (word: string) => FILLERS.has(word) || /^\d|.ly$/.test(word);

/** Which tokens are words of weight that no reading covers. */
export function strangeWords(found: readonly Token[], all: readonly Mark[]): boolean[] {
  const out = found.map((token) => token.kind === "word" && !isFiller(token.word));
  for (const mark of all) out.fill(false, mark.from, mark.to);
  return out;
}

/** "Quoted for a new one" is not done. */
const OFFERED: ReadonlySet<string> = new Set(["quoted", "quote", "price", "priced", "cost", "estimate", "waiting", "asked", "asking"]);
const onlyOffered = (found: readonly Token[], mark: Mark) => found[mark.from - 1]?.word === "for" && OFFERED.has(found[mark.from - 2]?.word ?? "");

/** What is used up stands among parts as a thing, not as work. */
const USED_UP = /^(?:oil|grease|lube|thread ?lock(?:ed|er)?|(?:new|fresh|silicone) (?:oil|grease))$/;

/** "Rotor off to get at the bearing" orders nothing. */
const REACHED: ReadonlySet<string> = new Set(["at", "to", "in", "into", "off", "access", "out", "behind", "under", "it", "them", "inside", "through"]);
/** Words after which "grease" is what was done: "I grease it". */
const BEFORE_WORK: ReadonlySet<string> = new Set(["after", "i", "we", "then", "just"]);

/** Names of what is put on: work only where they start, or right before a part ("grease pinion"). */
const BARE: ReadonlySet<string> = new Set(["oil", "grease", "lube"]);

/**
 * Words that are not what they look like where they stand: "drum clean" says how it is, "oil on rollers" what is on them,
 * and "new one on order" is not there yet.
 */
function withAdjectives(found: readonly Token[], told: readonly Mark[], inside: readonly Mark[], from: number): Mark[] {
  const part = inside.find((mark) => mark.kind === "part"), ordered = told.some((mark) => mark.action?.code === "ORDER");
  const others = told.some((mark) => mark.kind === "action" && byOthers(found, mark));
  return told.flatMap((mark, index) => {
    const before = told[index - 1];
    if (others && (mark.action?.action === "replaced" || (mark.kind === "action" && byOthers(found, mark)))) return [];
    if (BARE.has(mark.phrase) && mark.from > from && found[mark.from - 1]?.kind === "word" && !BEFORE_WORK.has(found[mark.from - 1]?.word ?? "")
      && !inside.some((one) => one.kind === "part" && one.from - mark.to <= 1 && one.from >= mark.to)) return [];
    if (mark.action?.action === "replaced" && (["last", "since"].includes(found[mark.to]?.word ?? "") || /^(?:19|20)\d\d$/.test(found[mark.to]?.word ?? ""))) return [];
    if (takenOut(inside, mark)) return [{ ...mark, kind: "action" as const, say: null, action: SHIMMED }];
    if (mark.kind === "action" && before?.say === "later" && mark.from - before.to <= 1) return [];
    if (mark.phrase === "fixed" && found[mark.to]?.kind === "dash") return [];
    if (mark.phrase === "to get" && REACHED.has(found[mark.to]?.word ?? "")) return [];
    if (mark.phrase === "fit" && found[mark.from - 1]?.word === "to") return [];
    if (mark.action?.code === "REPL" && mark.phrase.startsWith("new") && onlyOffered(found, mark)) return [];
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
  return end >= 0 && end < to && (strange[end] ?? false) && !isPast(found[end]) && !found.slice(end + 1, end + 3).some(({ word }) => word === "one");
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

/** "Needs: LR brg, body seal". */
const headsList = ({ found }: Read, needs: Mark) => found[needs.to]?.kind === "dash";

/** Shims are added and taken out to set a distance. */
const SHIMMED = { code: "SHIM", action: "adjusted" } as const;
const takenOut = (inside: readonly Mark[], mark: Mark) => mark.say === "opened" && /^(?:removed|pulled|took|took out)$/.test(mark.phrase)
  && inside.find((one) => one.kind === "part")?.family === "washer or shim";

/** Sayings that tell nothing of a part. */
const SILENT: ReadonlySet<string> = new Set(["neutral", "opened"]);
const tells = (read: Read, inside: readonly Mark[], mark: Mark) =>
  mark.kind === "mode" || mark.kind === "action" || takenOut(inside, mark) || (mark.say !== null && !SILENT.has(mark.say)
    && (mark.say !== "needs" || headsList(read, mark) || needsPart(read, inside, mark)));

/** "Knobs swapped over", "clicker stripped down": something was said of it that is no news. */
const putAside = (inside: readonly Mark[]) => inside.some((mark, index) => {
  const before = inside[index - 1];
  return mark.say === "neutral" && before?.kind === "part" && before.to === mark.from;
});

/** What family of part a size alone means in a list of parts: three measures are a bearing, a dash number or two an O-ring. */
function sizedPart(found: readonly Token[], from: number, to: number): Mark[] {
  let at = from;
  while (at < to && found[at]?.kind !== "size") at++;
  const size = at < to ? found[at]?.word ?? "" : "";
  const family = /x.*x|^(?:s?mr|6)\d|-\d+-/.test(size) ? "ball bearing" : /^(?:as568-?|-)\d{3}$|x[1-5](?:\.\d+)?$/.test(size) ? "seal" : null;
  return family === null ? [] : [marked("part", at, at + 1, size, false, { part: { positions: [], family, ambiguous: false, plural: false } })];
}

/** "Dog + spring in": the part is in, that is, fitted. */
function putIn(found: readonly Token[], inside: readonly Mark[], to: number): Mark[] {
  const last = inside.at(-1);
  const between = last ? found.slice(last.to, to - 1) : [];
  const close = between.every((token) => token.kind === "quantity" || ["kit", "set", "pair"].includes(token.word));
  const named = last?.kind === "part" || last?.kind === "ignored", told = inside.some((mark) => mark.kind === "action" || mark.kind === "mode");
  if (found[to - 1]?.word !== "in" || !close || !named || told) return [];
  return [marked("action", to - 1, to, "in", false, { action: { code: "REPL", action: "replaced" } })];
}

/** "Parts: AR clutch, bail spring". */
function partsHeading(found: readonly Token[], from: number, to: number): Mark[] {
  if (to - from !== 1 || !/^(?:parts?|spares?)$/.test(found[from]?.word ?? "") || found[to]?.kind !== "dash") return [];
  return [marked("action", from, to, "parts", false, { action: { code: "REPL", action: "replaced" } })];
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
    passed: asides.filter((mark) => touched(found, inside, mark)),
    told: [...withAdjectives(found, told, inside, from), ...lacking(inside), ...putIn(found, inside, to), ...partsHeading(found, from, to)]
      .filter((mark) => !(sizes_alone && USED_UP.test(mark.phrase))),
    complaint: inside.some((mark) => mark.kind === "complaint"),
    doubt: doubt || inside.some((mark) => mark.say === "doubt"),
    unknown: strangers(read, inside, from, means),
    strangers: strangers(read, [], from, Math.min(means, told.find((mark) => mark.action?.code === "ORDER")?.to ?? to)),
    cleared: ((last === "off" || last === "out") && !inside.some((mark) => mark.kind === "action" && mark.to === to)) || putAside(inside),
    with_others: withOthers(found, inside[0]),
    put_between: named.slice(1).some((mark, index) => found.slice((named[index] as Mark).to, mark.from).some(({ word }) => ["with", "by"].includes(word))),
    other_subject: otherSubject(read, told, from, means),
  };
}
