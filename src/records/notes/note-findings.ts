import { familyOf } from "./lexicon.ts";
import { sentences, type Item } from "./items.ts";
import { marks, type Mark } from "./marks.ts";
import { tokens, type Token } from "./tokens.ts";
import { phraseWords } from "./words.ts";
import type { Action, ReelKind } from "../vocabulary-tables.ts";

export interface NoteFinding {
  /** Null where the words name only a family ("bearing"); such a line counts for stock by its size, never for a position. */
  readonly position: string | null;
  readonly family: string | null;
  readonly action: Action | null;
  readonly routine: boolean;
  readonly mode: string | null;
  /** Highest grade the words allow: 2 under doubt or put off, 1 when said to be fine; null when nothing is said. */
  readonly grade_at_most: number | null;
  readonly qty: number | null;
  readonly qty_assumed: boolean;
  readonly size: string | null;
  /** The words it was read from, and how. */
  readonly text: string;
  readonly rule: string;
  readonly confidence: number;
}

export interface NoteReading {
  readonly findings: readonly NoteFinding[];
  readonly whole_job: boolean;
  /** Stretches of words in which nothing was understood. */
  readonly unknown: readonly string[];
}

export interface NoteContext {
  readonly reel_kind: ReelKind | null;
  readonly complaint?: string | null;
  /** What is meant where nothing is said: a cell of parts used lists what was replaced. */
  readonly unsaid?: Action | null;
}

interface Said { action: Action | null; routine: boolean; rule: string; sure: number }
const has = (item: Item, say: Mark["say"]) => item.marks.some((mark) => mark.say === say);
const parts = (item: Item) => item.marks.filter((mark) => mark.kind === "part" || mark.kind === "unspecified");
/** A part that is only the subject of a complaint ("handle slips back") is no finding. */
const subject = (item: Item, part: Mark) =>
  actions(item).length === 0 && item.marks.some((mark) => mark.kind === "complaint" && mark.from >= part.to && mark.from - part.to <= 1);
const actions = (item: Item) => item.marks.filter((mark) => mark.kind === "action" && mark.action);
const faults = (item: Item) => item.marks.filter((mark) => mark.kind === "mode");

/** The action that belongs to one part of an item: the next one behind it, else the last one before it. */
function actionOf(item: Item, part: Mark): Mark | null {
  const all = actions(item), next = parts(item).find((other) => other.from > part.from);
  const behind = all.find((mark) => mark.from >= part.to && (!next || mark.from < next.from));
  const before = [...all].reverse().find((mark) => mark.to <= part.from);
  return behind ?? before ?? all[0] ?? null;
}

function settled(item: Item, done: Mark | null, rule: string, sure: number): Said {
  const said = done?.action ?? null;
  if (has(item, "later")) return { action: "left", routine: false, rule: `${rule}, put off`, sure };
  if (has(item, "not") && (said?.action === "replaced" || said === null)) return { action: "left", routine: false, rule: `${rule}, denied`, sure };
  if (has(item, "good") && said === null && faults(item).length === 0) return { action: "left", routine: false, rule: "said to be fine", sure };
  if (said === null) return { action: null, routine: false, rule: "no action said", sure: 0.6 };
  return { action: said.action as Action, routine: said.routine || has(item, "routine"), rule, sure };
}

const speaks = (item: Item) => actions(item).length > 0 || has(item, "later") || has(item, "not") || has(item, "good");
const leads = (item: Item) => { const first = actions(item)[0], part = parts(item)[0]; return first && part ? first.from < part.from : false; };
const trails = (item: Item) => { const last = actions(item).at(-1), part = parts(item)[0]; return last && part ? last.from >= part.to : parts(item).length === 0 && actions(item).length > 0; };

/** What was done to the parts of item `at`, from its own words or its neighbours' in the same sentence. */
function said(items: readonly Item[], at: number, part: Mark): Said {
  const item = items[at] as Item;
  if (speaks(item)) return settled(item, actionOf(item, part), "said beside the part", 0.97);
  const faulty = faults(item).length > 0;
  const together = items.slice(at + 1, at + 4).find((other) => parts(other).length === 0 && speaks(other) && (has(other, "both") || has(other, "all")));
  if (together) return settled(together, actions(together)[0] ?? null, "said of all in the list", 0.9);
  for (let next = at + 1; next < items.length; next++) {
    const other = items[next] as Item;
    const alone = parts(other).length === 0;
    if (!speaks(other)) { if (faulty || (alone && faults(other).length > 0)) break; continue; }
    if (alone && (next === at + 1 || has(other, "both") || has(other, "all") || !faulty)) return settled(other, actions(other)[0] ?? null, "said after the list", 0.9);
    if (!faulty && trails(other) && !has(other, "good") && !has(other, "not")) return settled(other, actionOf(other, parts(other)[0] as Mark), "said at the end of the list", 0.88);
    break;
  }
  for (let last = at - 1; last >= 0; last--) {
    const other = items[last] as Item;
    if (!speaks(other)) continue;
    if (leads(other) && parts(other).length > 0) return settled(other, actionOf(other, parts(other)[0] as Mark), "said before the list", 0.88);
    break;
  }
  if (item.quantity !== null) return { action: "replaced", routine: false, rule: "a quantity says that it was fitted", sure: 0.85 };
  return { action: null, routine: false, rule: "no action said", sure: 0.6 };
}

function modeOf(item: Item, part: Mark, position: string | null): string | null {
  const family = position === null ? part.family : familyOf.get(position) ?? null;
  const near = faults(item).sort((a, b) => Math.abs(a.from - part.from) - Math.abs(b.from - part.from))[0];
  if (!near || has(item, "not")) return null;
  const fitting = near.modes.filter((reading) => reading.only_families.length === 0 || (family !== null && reading.only_families.includes(family)));
  return (fitting.length > 0 ? fitting.find((reading) => reading.only_families.length > 0) ?? fitting[0] : near.modes[0])?.mode ?? null;
}

const PAIRS = new Set(["spool_bearings_pair"]);

function finding(items: readonly Item[], at: number, part: Mark, position: string | null, context: NoteContext, text: string): NoteFinding {
  const item = items[at] as Item, told = said(items, at, part), alone = parts(item).length === 1;
  const action = told.action ?? (faults(item).length > 0 && context.unsaid !== "replaced" ? null : context.unsaid ?? null);
  const qty = item.quantity ?? (position !== null && PAIRS.has(position) && part.plural ? 2 : null);
  const counted = action === "replaced" || action === "wanted";
  const doubtful = item.doubt || has(item, "doubt");
  return {
    position, family: part.family, action, routine: told.routine, mode: modeOf(item, part, position),
    grade_at_most: action === "left" && has(item, "good") ? 1 : doubtful || has(item, "later") ? 2 : null,
    qty: counted ? qty ?? 1 : null, qty_assumed: counted && qty === null,
    size: alone || parts(item)[0] === part ? item.sizes[0] ?? null : null,
    text, rule: `${part.corrected ? "misspelt part, " : ""}${told.rule}`,
    confidence: Math.round((told.action === null && context.unsaid !== undefined ? 0.9 : told.sure) * (part.corrected ? 0.93 : 1) * (doubtful ? 0.9 : 1) * 100) / 100,
  };
}

/** A sentence that only says "on order" speaks of the parts before it that nothing was done to. */
function withOrders(all: readonly (readonly Item[])[]): Item[][] {
  const out: Item[][] = [];
  for (const items of all) {
    const only = items.every((item) => parts(item).length === 0) && items.some((item) => actions(item).some((mark) => mark.action?.code === "ORDER"));
    const last = out.at(-1);
    if (only && last?.some((item) => parts(item).length > 0)) last.push(...items.filter((item) => actions(item).length > 0));
    else out.push([...items]);
  }
  return out;
}

function unknownWords(found: readonly Token[], read: readonly Mark[], text: string): string[] {
  const known = new Set(read.flatMap((mark) => Array.from({ length: mark.to - mark.from }, (_, index) => mark.from + index)));
  const out: string[] = [];
  let start = -1, end = -1;
  const close = () => { if (start >= 0) out.push(text.slice(start, end).trim()); start = -1; };
  found.forEach((token, at) => {
    if (token.kind !== "word" || known.has(at) || token.word.length < 3 || /^\d/.test(token.word)) return close();
    if (start < 0) start = token.start;
    end = token.end;
  });
  close();
  return out;
}

/**
 * What a bench note says was found and done, part by part.
 *
 * Reads spellings, quantities, sizes, negation ("not replaced"), doubt ("?", "poss"), putting off ("next time") and lists.
 * Words with several meanings are settled by the reel kind and their neighbours or left without a position; nothing is guessed.
 */
export function noteFindings(text: string, context: NoteContext): NoteReading {
  const found = tokens(text);
  const read = marks(found, { reel_kind: context.reel_kind, complaint: context.complaint ? phraseWords(context.complaint) : [] });
  const findings: NoteFinding[] = [];
  for (const items of withOrders(sentences(found, read))) {
    items.forEach((item, at) => {
      const words = text.slice(found[item.from]?.start ?? 0, found[item.to - 1]?.end ?? 0).trim();
      for (const part of parts(item).filter((one) => !subject(item, one))) {
        for (const position of part.positions.length > 0 ? part.positions : [null]) findings.push(finding(items, at, part, position, context, words));
      }
    });
  }
  return { findings, whole_job: read.some((mark) => mark.say === "whole job"), unknown: unknownWords(found, read, text) };
}
