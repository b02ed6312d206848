import type { Mark } from "./marks.ts";
import { PLACE_AFTER_PART, PLACE_ALWAYS } from "./sayings.ts";
import type { Token } from "./tokens.ts";

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
/** Parts that a note says are not there. */
export const lacking = (inside: readonly Mark[]): Mark[] => inside.flatMap((mark, index) => {
  const part = inside[index + 1];
  return part?.kind === "part" && isLacking(mark, part, inside) ? [{ ...mark, say: "without" as const }] : [];
});

/** "Gearbox opened, …" only says how one got there. */
function wasOpened(found: readonly Token[], inside: readonly Mark[], part: Mark): boolean {
  const opened = inside.find((mark) => mark.say === "opened" && mark.from === part.to), why = found[opened?.to ?? 0]?.word ?? "";
  if (!opened) return false;
  return why === "for" || ((/^(?:opened|unscrewed|split)/.test(opened.phrase) || why === "to")
    && !inside.some((mark) => mark.kind === "action" || mark.kind === "mode"));
}

/** "Clip that holds the washers": the second part only tells which the first is. */
const RELATIVE: ReadonlySet<string> = new Set(["hold", "holding", "retaining", "retain"]);

/** Who is not the bench. */
const OTHERS: ReadonlySet<string> = new Set(["customer", "owner", "skipper", "he", "she", "him", "someone", "somebody", "previous", "factory", "dealer",
  "mate", "who", "they"]);
const OTHER_BENCH: ReadonlySet<string> = new Set(["last", "another", "other"]);
/** "Fitted by customer", "owner had packed it": the bench did something else, or nothing. */
export function byOthers(found: readonly Token[], mark: Mark): boolean {
  const behind = mark.to + (["the", "a", "his"].includes(found[mark.to + 1]?.word ?? "") ? 2 : 1), who = found[behind]?.word ?? "";
  if (found[mark.to]?.word === "by" && (OTHERS.has(who) || OTHER_BENCH.has(who))) return true;
  const subject = found[mark.from - (["had", "has"].includes(found[mark.from - 1]?.word ?? "") ? 2 : 1)];
  return subject?.kind === "word" && OTHERS.has(subject.word);
}

/** "Water in the rotor" tells of what was found there, not of the part around it. */
const INSIDE = /^(?:water|sand|salt|grit) (?:in|in the|under)$/;
/** What leads to the part at fault: "noise from the pinion bearing". */
const HEARD: ReadonlySet<string> = new Set(["noise", "coming", "came", "come", "grind", "grinding", "squeal", "squeak", "knock", "knocking", "rattle",
  "play", "rumble", "sound", "sounds", "click", "clicking"]);

const SMALL: ReadonlySet<string> = new Set(["its", "a", "an", "the", "one", "two", "both", "all", "of", "small"]);
/** "Cast control knob missing o-ring, fitted": the first part only tells where the second is missing. */
function lacksAnother(found: readonly Token[], inside: readonly Mark[], part: Mark): boolean {
  const missing = inside.find((mark) => mark.kind === "mode" && mark.from === part.to && mark.phrase === "missing");
  let next = missing?.to ?? found.length;
  while (SMALL.has(found[next]?.word ?? "") || /^\d+$/.test(found[next]?.word ?? "") || found[next]?.kind === "quantity") next++;
  return missing !== undefined && inside.some((mark) => mark.kind === "part" && mark.from === next);
}
/** What is felt or seen in the part at fault: "handle has play in the joint". */
const SEEN_IN: ReadonlySet<string> = new Set(["play", "slop", "crack", "cracked", "wear", "movement", "groove", "rust", "slack", "burr", "split", "hole",
  "corrosion", "pitting", "wobble"]);
/** A part named only as a place ("behind the rotor"), opened on the way ("took the handle off"), or denied ("not the clutch"). */
export function aside(found: readonly Token[], inside: readonly Mark[], part: Mark, from: number): boolean {
  if (wasOpened(found, inside, part)) return true;
  if (lacksAnother(found, inside, part)) return true;
  const before = wordBefore(found, part.from);
  if (before.at < from) return false;
  const covering = inside.find((mark) => mark.from <= before.at && mark.to > before.at);
  if (covering?.say === "not" && inside.some((mark) => mark.phrase === "available")) return false;
  if (covering?.say === "not" && isLacking(covering, part, inside)) return false;
  if (covering?.say === "opened" && part.family === "washer or shim") return false;
  if (covering?.say === "opened" || covering?.say === "not" || covering?.say === "elsewhere") return true;
  if (covering?.kind === "action" && covering.to === part.from && byOthers(found, covering)) return true;
  if (covering?.kind === "mode" && INSIDE.test(covering.phrase) && part.family === "structure" && part.phrase !== "gearbox") return true;
  const ahead = found[before.at - 1]?.word ?? "", lost = covering === undefined && inside.some((mark) => mark.to === before.at && mark.phrase === "missing");
  const reached = ahead === "get" || ahead === "access" || (before.word === "from" && (HEARD.has(ahead) || lost));
  if (PLACE_ALWAYS.has(before.word) && !reached) return true;
  if (before.word === "in" && found[before.at - 1]?.word === "found") return true;
  if (before.word === "in" && SEEN_IN.has(ahead)) return false;
  if (RELATIVE.has(before.word) && inside.some((mark) => mark.kind === "part" && mark.to <= before.at)) return true;
  if (["on", "in"].includes(before.word) && inside.some((mark) => mark.action?.action === "replaced" && mark.to <= before.at
    && mark.to > from + 1)) return true;
  return PLACE_AFTER_PART.has(before.word) && inside.some((mark) => mark.kind === "part" && mark.to <= before.at);
}

const TOUCHING: ReadonlySet<string> = new Set(["to", "on", "in", "through", "into", "against"]);
/** A part that another one touches or harmed: "seized to the pinion", "chewed by the yoke". */
export function touched(found: readonly Token[], inside: readonly Mark[], part: Mark): boolean {
  const before = wordBefore(found, part.from), harmed = before.word === "by" && inside.some((mark) => mark.kind === "mode" && mark.to === before.at);
  return (harmed || TOUCHING.has(before.word)) && found[part.to]?.word !== "side";
}
