import { isAmbiguous, readAmbiguous, type Around } from "./ambiguous.ts";
import { actionPhrases, complaintPhrases, FAMILY_WORD, familyOf, kindsOf, knownWords, modePhrases, partWords, positionPhrases, says, type ActionReading, type ModeReading, type Say } from "./lexicon.ts";
import { corrected } from "./spelling.ts";
import type { Token } from "./tokens.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** What a stretch of words in a note was read as. `from` and `to` are token numbers, `to` not included. */
export interface Mark {
  readonly kind: "part" | "unspecified" | "mode" | "action" | "say" | "complaint";
  readonly from: number;
  readonly to: number;
  readonly positions: readonly string[];
  readonly family: string | null;
  readonly modes: readonly ModeReading[];
  readonly action: ActionReading | null;
  readonly say: Say | null;
  readonly plural: boolean;
  readonly corrected: boolean;
  readonly phrase: string;
}

const EMPTY = { positions: [], family: null, modes: [], action: null, say: null, plural: false, corrected: false } as const;
const LONGEST = 6;
/** Common English words that are parts only beside another reel word or an action word. */
const NEEDS_NEIGHBOUR = new Set(["frame", "check", "ring", "post", "case", "counter", "stem", "leg", "latch", "star", "jack", "cup", "stud", "lid", "body", "line", "bridge", "clamp", "carrier", "crank", "grip", "cage", "screen", "board", "display", "spool", "slider", "cog", "axle", "worm", "cork", "brake"]);

/** Words of a note with misspellings put right, one for each token ("" for signs). */
export function rightWords(found: readonly Token[]): { words: string[]; changed: boolean[] } {
  const changed: boolean[] = [];
  const words = found.map((token, at) => {
    const better = token.kind === "word" ? corrected(token.word, knownWords) : null;
    changed[at] = better !== null;
    return token.kind === "word" ? better ?? token.word : "";
  });
  return { words, changed };
}

/** The longest phrase of `map` that starts at `at`, in the order written or, from two words on, in any order. */
function longest(map: ReadonlyMap<string, unknown>, words: readonly string[], at: number): { key: string; length: number } | null {
  for (let length = Math.min(LONGEST, words.length - at); length > 0; length--) {
    const slice = words.slice(at, at + length);
    if (slice.includes("")) continue;
    if (map.has(slice.join(" "))) return { key: slice.join(" "), length };
  }
  return null;
}

/** Position phrases by their words in alphabetical order: "bearing ar" is "ar bearing". */
const anyOrder = new Map<string, string>();
for (const key of positionPhrases.keys()) {
  const parts = key.split(" ");
  if (parts.length > 1 && parts.length < 5) anyOrder.set([...parts].sort().join(" "), key);
}
function longestPart(words: readonly string[], at: number): { key: string; length: number } | null {
  for (let length = Math.min(LONGEST, words.length - at); length > 0; length--) {
    const slice = words.slice(at, at + length);
    if (slice.includes("")) continue;
    const key = slice.join(" ");
    if (positionPhrases.has(key) || isAmbiguous(key)) return { key, length };
    const other = length > 1 ? anyOrder.get([...slice].sort().join(" ")) : undefined;
    if (other !== undefined) return { key: other, length };
  }
  return null;
}

function onKind(positions: readonly string[], kind: ReelKind | null): string[] {
  return kind === null || kind === "other" ? [...positions] : positions.filter((position) => kindsOf.get(position)?.includes(kind));
}

function partAt(found: readonly Token[], words: readonly string[], at: number, around: Omit<Around, "plural">): Omit<Mark, "corrected"> | null {
  const match = longestPart(words, at);
  const bare = FAMILY_WORD[words[at] ?? ""];
  if (!match && bare === undefined) return null;
  const length = match?.length ?? 1, plural = found.slice(at, at + length).some((token) => token.plural);
  const key = match?.key ?? words[at] ?? "";
  if (key === "ar" && !found[at]?.capitals) return null;
  const lonely = length === 1 && NEEDS_NEIGHBOUR.has(key) && ![...around.near].some((word) => word !== key && (partWords.has(word) || actionPhrases.has(word) || modePhrases.has(word)));
  if (lonely) return null;
  const read = readAmbiguous(key, { ...around, plural });
  const positions = onKind(read ?? positionPhrases.get(key) ?? [], around.reel_kind);
  const one = read !== null || positions.length === 1 ? positions : [];
  const family = one[0] !== undefined ? familyOf.get(one[0]) ?? null : bare ?? null;
  if (one.length === 0 && bare === undefined && read === null && positions.length === 0) return null;
  return { ...EMPTY, kind: one.length > 0 ? "part" : "unspecified", from: at, to: at + length, positions: one, family, plural, phrase: key };
}

/** Every reading of a note's words, in order; complaints first, so that their verbs are not taken for parts. */
export function marks(found: readonly Token[], context: { reel_kind: ReelKind | null; complaint: readonly string[] }): Mark[] {
  const { words, changed } = rightWords(found);
  const note = new Set([...words, ...context.complaint].filter(Boolean));
  const out: Mark[] = [];
  for (let at = 0; at < words.length;) {
    if (words[at] === "") { at++; continue; }
    const around = { reel_kind: context.reel_kind, near: new Set(words.slice(Math.max(0, at - 4), at + 6).filter(Boolean)), note };
    const part = partAt(found, words, at, around);
    const complaint = longest(complaintPhrases, words, at), say = longest(says, words, at);
    const action = longest(actionPhrases, words, at), mode = longest(modePhrases, words, at);
    const was = (length: number) => changed.slice(at, at + length).some(Boolean);
    const best = Math.max(part ? part.to - at : 0, say?.length ?? 0, action?.length ?? 0, mode?.length ?? 0, complaint?.length ?? 0);
    if (best === 0) { at++; continue; }
    const put = (mark: Partial<Mark> & Pick<Mark, "kind">, length: number) =>
      out.push({ ...EMPTY, from: at, to: at + length, phrase: words.slice(at, at + length).join(" "), ...mark, corrected: was(length) });
    if (say?.length === best) put({ kind: "say", say: says.get(say.key)?.[0] ?? null }, best);
    else if (complaint?.length === best && !(part && part.to - at >= 2)) put({ kind: "complaint" }, best);
    else if (part && part.to - at === best) {
      out.push({ ...part, corrected: was(best) });
      inner(words, at, best).forEach((reading) => put({ kind: "mode", modes: reading }, best));
    } else if (action?.length === best) put({ kind: "action", action: actionPhrases.get(action.key)?.[0] ?? null }, best);
    else if (mode) {
      put({ kind: "mode", modes: modePhrases.get(mode.key) ?? [] }, best);
      const named = partInside(found, words, at, best, around);
      if (named) out.push({ ...named, corrected: was(best) });
    }
    at += best;
  }
  return out;
}

/** What a part's own phrase says is wrong ("bail bent"). */
function inner(words: readonly string[], at: number, length: number): ModeReading[][] {
  if (length < 2) return [];
  return words.slice(at, at + length).flatMap((word) => { const reading = modePhrases.get(word); return reading ? [reading] : []; });
}

/** The part that a fault's own phrase names ("burnt drags"). */
function partInside(found: readonly Token[], words: readonly string[], at: number, length: number, around: Omit<Around, "plural">): Omit<Mark, "corrected"> | null {
  if (length < 2) return null;
  for (let inside = at; inside < at + length; inside++) {
    const part = partAt(found.slice(0, at + length), words.slice(0, at + length), inside, around);
    if (part) return part;
  }
  return null;
}
