import { jobs } from "../vocabulary-tables.ts";
import type { ReelKind } from "../vocabulary-tables.ts";
import { attach } from "./attach.ts";
import { isPassing, turningIn } from "./confidence.ts";
import { findings } from "./finding.ts";
import { strangeWords, type Item, type Read } from "./item.ts";
import { sentences } from "./items.ts";
import { withLikely } from "./likely-places.ts";
import { marks, type Mark } from "./marks.ts";
import { merged } from "./merging.ts";
import type { NoteContext, NoteFinding, NoteReading } from "./note-finding.ts";
import { withoutKind } from "./note-kind.ts";
import { isPlain } from "./plain-words.ts";
import { referring } from "./referring.ts";
import { parted } from "./spelling.ts";
import { tokens, type Token } from "./tokens.ts";
import { isComplaint, mentioned, workOf } from "./weighing.ts";
import { phraseWords } from "./words.ts";

const jobNames: ReadonlySet<string> = new Set(jobs.flatMap((row) => [row.job, ...row.spellings]).map((text) => phraseWords(text).join(" ")));
const LONGEST_JOB = 4;

/** A first sentence that is the name of a job ("line roller.") says what the reel was in for, and names no part. */
function namesJob(items: readonly Item[], found: readonly Token[]): boolean {
  const from = items[0]?.from ?? 0, to = items.at(-1)?.to ?? 0;
  return from === 0 && to <= LONGEST_JOB && jobNames.has(found.slice(0, to).map((token) => token.word).join(" "));
}

const isWhole = (items: readonly Item[] | undefined) =>
  items?.some((item) => item.told.some((mark) => mark.say === "whole job" && mark.to <= (item.parts[0]?.from ?? mark.to))) ?? false;

const isCount = (token: Token) => token.kind === "quantity" || (token.kind === "word" && /^(?:[1-9]|1\d)$/.test(token.word));

/** A sentence that is nothing but parts, the first with a marked quantity ("LRB x1, body gasket"). */
const onlyCounted = (items: readonly Item[], found: readonly Token[]) => items.length > 1
  && items.every((item) => item.parts.length > 0 && item.told.length === 0 && item.unknown === 0)
  && found.slice(items[0]?.from ?? 0, items[0]?.to ?? 0).some((token) => token.kind === "quantity");

/** "Service, drag washers, LRB": a whole job and then nothing but parts. */
const onlyParts = (items: readonly Item[]) => items.length > 2 && items[0]?.parts.length === 0
  && items.slice(1).every((item) => item.parts.length > 0 && item.told.length === 0 && item.unknown === 0 && !item.doubt);

/** Sentences in which a bare list means fitted parts: it follows a whole service, and an item of it carries a quantity or there is nothing else in it. */
function fittedLists(all: readonly (readonly Item[])[], found: readonly Token[]): ReadonlySet<number> {
  const out = new Set<number>();
  all.forEach((items, index) => {
    const counted = items.some((item) => item.parts.length > 0 && found.slice(item.from, item.to).some(isCount));
    if (isWhole(items) && onlyParts(items)) out.add(index);
    if (counted && (isWhole(items) || isWhole(all[index - 1]) || onlyCounted(items, found))) out.add(index);
  });
  return out;
}

const SMALL: ReadonlySet<string> = new Set(["and", "the", "a", "x", "pair", "set"]);
/** Whether a note is nothing but names of parts with their numbers: what was done is left open, and no word of it was overlooked. */
function nothingElse(found: readonly Token[], named: readonly Mark[]): boolean {
  const parts = named.filter(({ kind }) => kind === "part" || kind === "side");
  return found.every((token, at) => token.kind !== "word" || SMALL.has(token.word) || /^\d/.test(token.word)
    || parts.some((mark) => mark.from <= at && mark.to > at));
}

/** Stretches of words of weight in which nothing was read, without everyday words. */
function unknownStretches({ found, strange }: Read, text: string): string[] {
  const out: string[] = [];
  const asked = strange.map((is, at) => is && !isPlain(found[at]?.word ?? ""));
  for (let at = 0; at < found.length; at++) {
    if (!asked[at] || (found[at]?.word.length ?? 0) < 3) continue;
    const start = found[at]?.start ?? 0;
    while (asked[at + 1]) at++;
    out.push(text.slice(start, found[at]?.end ?? text.length));
  }
  return out;
}

function lastWork(all: readonly (readonly Item[])[]): number {
  let last = -1;
  for (const items of all) for (const item of items) for (const mark of item.told) if (mark.kind === "action") last = Math.max(last, mark.from);
  return last;
}

/** No bench note is longer (common practice, no source); what stands behind is told as not understood. */
const LONGEST_NOTE = 20_000;
/** Letters of the unread rest that are told. */
const REST_SHOWN = 60;

/** Where reading ends: at the end of the text, or of the last whole word of a text that is too long. */
function readTo(text: string): number {
  if (text.length <= LONGEST_NOTE) return text.length;
  const space = text.lastIndexOf(" ", LONGEST_NOTE);
  return space > LONGEST_NOTE - 200 ? space : LONGEST_NOTE;
}

const counts = (one: NoteFinding) => one.position !== null || (one.family !== null && (one.action === "replaced" || one.action === "wanted"));

/**
 * What a cell of free text says was found and done, part by part.
 *
 * Reads spellings, quantities, sizes, negation ("not replaced"), doubt ("?", "poss"), putting off ("next time") and lists.
 * Words with several meanings are settled by the reel kind and their neighbours, or name no position; a part that is only
 * mentioned, or among words we do not know, is left out. A complaint cell gives no findings. Of a cell of more than 20,000
 * characters the rest is not read, and its beginning is among the `unknown`.
 *
 * @example
 * noteFindings("LR brg seized, replaced", { reel_kind: "spinning", cell: "note" }).findings[0]?.position // => "line_roller_bearing"
 */
export function noteFindings(text: string, context: NoteContext): NoteReading {
  const end = readTo(text), reading = read(text.slice(0, end), context);
  return end < text.length ? { ...reading, unknown: [...reading.unknown, text.slice(end, end + REST_SHOWN).trim()] } : reading;
}

/** What a text of bearable length says. */
function read(text: string, context: NoteContext): NoteReading {
  const { cell } = context, book = context.book ?? null, parts_cell = cell === "parts";
  const found = parted(tokens(text), book), complaint = context.complaint ? phraseWords(context.complaint) : [];
  const look = (kind: ReelKind | null) => marks(found, { complaint, parts_cell, book, reel_kind: kind });
  const { said, kind: reel_kind } = context.reel_kind === null ? withoutKind(look) : { said: look(context.reel_kind), kind: context.reel_kind };
  const whole_job = said.some((mark) => mark.say === "whole job"), named = withLikely(found, referring(found, said, reel_kind), reel_kind, parts_cell);
  const plain = nothingElse(found, named);
  const words = { found, strange: strangeWords(found, named) }, turning = turningIn(found, named), unknown = unknownStretches(words, text);
  if (cell === "complaint") return { findings: [], mentions: [], whole_job, unknown };
  const whole = sentences(words, named, parts_cell), first = whole[0];
  const all = cell === "note" && first && namesJob(first, found) ? [first.map((item) => ({ ...item, parts: [] })), ...whole.slice(1)] : whole;
  const spoken = attach(all), lists = fittedLists(all, found), work = workOf(lastWork(all), spoken);
  const weighed = spoken.flat().filter((one) => !isComplaint(one, cell)).flatMap((part) => {
    const weak = part.part.guessed || (parts_cell ? part.item.doubt && part.bare : mentioned(part, work) || (part.told.length === 0 && !lists.has(part.sentence) && !plain));
    return findings(part, { found, note: text, cell, listed: lists.has(part.sentence), turning })
      .filter(({ action }) => !isPassing(part, action)).map((one) => ({ one, weak }));
  });
  const { firm, mentioned: mentions } = merged(weighed, cell);
  return { findings: firm.filter(counts), mentions: mentions.filter((one) => one.position !== null), whole_job, unknown };
}
