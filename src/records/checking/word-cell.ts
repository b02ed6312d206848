import type { Column } from "../columns.ts";
import { actionNamed, ambiguousWords, families, familyNamed, jobNamed, modeNamed, plainWords, position, positionNamed, reelKindNamed } from "../vocabulary.ts";
import type { ReelKind } from "../vocabulary.ts";
import { Wrong, quoted } from "./wrong.ts";

/** Columns whose words have spellings in the vocabulary. */
const NAMED: Record<string, (text: string) => string | null> = {
  job: jobNamed,
  reel_kind: reelKindNamed,
  action: (text) => actionNamed(text)?.action ?? null,
  family: familyNamed,
};

/** Plain words of shops for columns that have only a few. */
const SPELLINGS: Record<string, ReadonlyMap<string, string>> = {
  water: new Map([["sea", "salt"], ["saltwater", "salt"], ["salt water", "salt"], ["s", "salt"], ["freshwater", "fresh"], ["fresh water", "fresh"],
    ["river", "fresh"], ["lake", "fresh"], ["f", "fresh"], ["estuary", "brackish"], ["b", "brackish"]]),
  rinse: new Map([["every time", "always"], ["now and then", "sometimes"]]),
  came_in: new Map([["routine", "planned"], ["service", "planned"], ["dunked", "immersion"], ["fault", "complaint"]]),
  outcome: new Map([["collected", "returned"], ["ready", "returned"], ["waiting parts", "waiting"], ["waiting for parts", "waiting"],
    ["ber", "beyond repair"], ["scrap", "beyond repair"]]),
};

/** A file with ever new words must not fill the memory. */
const MOST_WORDS = 10_000;

/** The same few words come again and again; what they mean is found once. */
function remembered(read: (text: string) => string | Wrong): (text: string) => string | Wrong {
  const known = new Map<string, string | Wrong>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const value = read(text);
    if (known.size < MOST_WORDS) known.set(text, value);
    return value;
  };
}

const readers = new Map<Column, (text: string) => string | Wrong>();

function reader(column: Column): (text: string) => string | Wrong {
  const words = column.words ?? [], allowed = new Map(words.map((word) => [plainWords(word), word]));
  return remembered((text) => {
    const plain = plainWords(text);
    const word = allowed.get(plain) ?? NAMED[column.name]?.(text) ?? SPELLINGS[column.name]?.get(plain) ?? null;
    if (word !== null && words.includes(word)) return word;
    return new Wrong(`${quoted(text)} is not one of: ${words.join(", ")}`);
  });
}

/** Reads one of the words a column allows, or a spelling of it. */
export function wordCell(text: string, column: Column): string | Wrong {
  let read = readers.get(column);
  if (!read) readers.set(column, (read = reader(column)));
  return read(text);
}

const severalMeanings = new Set(ambiguousWords.filter(({ treat }) => treat !== "settled").map(({ word }) => plainWords(word)));

/**
 * Stands before a family of part (`?ball bearing`) where a text names no position: such a finding counts for what was used,
 * never for a position that was inspected or failed.
 */
export const UNSPECIFIED = "?";

function readPosition(text: string, kind: ReelKind | null): string | Wrong {
  const family = text.startsWith(UNSPECIFIED) ? text.slice(UNSPECIFIED.length) : null;
  if (family !== null && families.some((one) => one.family === family)) return text;
  const code = positionNamed(text, kind);
  if (code !== null) return code;
  if (severalMeanings.has(plainWords(text))) return new Wrong(`${quoted(text)} can mean several parts; write which one`);
  return new Wrong(`${quoted(text)} is not a part of a reel that we know by this name; call it as the drawing of a reel does, such as line roller bearing`);
}

const positionsOf = new Map<string | null, (text: string) => string | Wrong>();

/** Reads the part's place in the reel; words that mean one thing only on this kind of reel are settled by it. */
export function positionCell(text: string, reel_kind: string | null): string | Wrong {
  let read = positionsOf.get(reel_kind);
  if (!read) positionsOf.set(reel_kind, (read = remembered((cell) => readPosition(cell, reel_kind as ReelKind | null))));
  return read(text);
}

const modesOf = new Map<string | null, (text: string) => string | Wrong>();

function readMode(text: string, family: string | null): string | Wrong {
  const mode = modeNamed(text, family);
  return mode ?? new Wrong(`${quoted(text)} is not a fault that we know by this name; write for instance worn, corroded or seized, or leave it empty`);
}

/** Reads what is wrong with the part at `position`. */
export function modeCell(text: string, at: string | null): string | Wrong {
  let read = modesOf.get(at);
  if (!read) {
    const family = at === null ? null : at.startsWith(UNSPECIFIED) ? at.slice(UNSPECIFIED.length) : position(at).family;
    modesOf.set(at, (read = remembered((cell) => readMode(cell, family))));
  }
  return read(text);
}

const routineWords = new Map<string, boolean>();

/** True when an action's word says that it was done as a matter of routine. */
export function isRoutineWord(text: string): boolean {
  let routine = routineWords.get(text);
  if (routine === undefined) {
    routine = actionNamed(text)?.routine ?? false;
    if (routineWords.size < MOST_WORDS) routineWords.set(text, routine);
  }
  return routine;
}
