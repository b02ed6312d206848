import { mostOf } from "./lexicon.ts";
import type { Spoken } from "./attach.ts";
import type { Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";

const NUMBERS: ReadonlyMap<string, number> = new Map([["two", 2], ["three", 3], ["four", 4], ["five", 5], ["six", 6], ["pair", 2], ["pr", 2]]);
const COUNT = /^(?:[1-9]|1\d)$/;
/** Words after a number that make it something else than a count of parts. */
const UNITS: ReadonlySet<string> = new Set(["kg", "lb", "mm", "ml", "min", "hr", "hour", "day", "week", "wk", "wks", "month", "year", "time", "reel", "g",
  "gm", "ft", "m", "off", "turn", "drop"]);

/** "3 of 5": the five are not the ones meant. */
const ofMany = (found: readonly Token[], at: number) => found[at - 1]?.word === "of" && COUNT.test(found[at - 2]?.word ?? "");
/** "12/5" is a day. */
const dated = (found: readonly Token[], at: number) => [1, -1].some((step) => found[at + step]?.word === "/" && /^\d+$/.test(found[at + 2 * step]?.word ?? ""));

function counted(found: readonly Token[], at: number): number | null {
  const token = found[at];
  if (!token || UNITS.has(found[at + 1]?.word ?? "") || ofMany(found, at) || dated(found, at)) return null;
  if (token.kind === "quantity") return Number(token.word);
  if (token.kind !== "word") return null;
  return COUNT.test(token.word) ? Number(token.word) : NUMBERS.get(token.word) ?? null;
}

/** A number just before the part, over its size and small words ("2x 3x10x4 spool brgs", "both main brgs", "2 of the dogs"). */
function before(found: readonly Token[], part: Mark, from: number): number | null {
  for (let at = part.from - 1; at >= Math.max(from, part.from - 4); at--) {
    const token = found[at] as Token, here = token.word === "both" ? 2 : counted(found, at);
    if (here !== null) return here;
    if (token.kind !== "size" && !["new", "of", "the", "pair", "more", "off", "x"].includes(token.word)) return null;
  }
  return null;
}

/** A marked quantity ("x2", "(4)", "pair") behind the part, before the next one; in a list of parts also a bare number. */
function behind(found: readonly Token[], part: Mark, to: number, listed: boolean, alone: boolean): number | null {
  const first = found[part.to]?.kind === "word" && (found[part.to + 1]?.kind !== "word" || found[part.to + 1]?.word === "all")
    && COUNT.test(found[part.to]?.word ?? "") ? counted(found, part.to) : null;
  if (first !== null && part.to < to) return first;
  for (let at = part.to; at < to; at++) {
    const token = found[at] as Token;
    if (found[at - 1]?.word === "(" && found[at + 1]?.kind === "bracket" && counted(found, at) !== null) return counted(found, at);
    if (token.kind === "quantity" && !UNITS.has(found[at + 1]?.word ?? "")) return Number(token.word);
    if (token.word === "all" && COUNT.test(found[at + 1]?.word ?? "")) return Number(found[at + 1]?.word);
    if (token.kind === "word" && ["pair", "pr"].includes(token.word)) return 2;
    if (token.word === "both" && (part.plural || (at === part.to && alone))) return 2;
  }
  const end = found[to - 1];
  return listed && to - 1 >= part.to && end?.kind === "word" && COUNT.test(end.word) && to - part.to <= 2 ? Number(end.word) : null;
}

/** A number beside the action where that stands in its own item ("fitted 2", "3 new", "two drilled out"). */
function withAction(found: readonly Token[], one: Spoken): number | null {
  const acts = one.told.filter(({ mark, reach }) => mark.kind === "action"
    && (mark.action?.code === "SHIM" || ["replaced", "wanted"].includes(mark.action?.action ?? "")) && reach !== "ahead" && reach !== "shared");
  for (const { mark, among } of [...acts].reverse()) {
    if (mark.from >= one.item.from && mark.to <= one.item.to) continue;
    if (mark.phrase.endsWith(" pair")) return among > 1 ? 1 : 2;
    const near = counted(found, found[mark.to]?.word === "of" ? mark.to + 1 : mark.to)
      ?? (found[mark.from - 2]?.word === "of" ? counted(found, mark.from - 3) : null) ?? counted(found, mark.from - 1) ?? inItem(found, mark.from);
    const head = near ?? headed(found, one.part.to, mark.from);
    if (head !== null) return head;
  }
  return null;
}

/** "Frame screws: 3 seized, replaced": a number just behind a sign, before what was wrong. */
function headed(found: readonly Token[], from: number, to: number): number | null {
  for (let at = from + 1; at < to; at++) {
    if (found[at - 1]?.kind !== "word" && found[at - 1]?.kind !== "stop" && found[at]?.kind === "word" && found[at + 1]?.kind === "word") {
      const here = counted(found, at);
      if (here !== null) return here;
    }
  }
  return null;
}

/** "two drilled out and replaced": the number at the head of the run of actions. */
function inItem(found: readonly Token[], from: number): number | null {
  const joined = found[from - 1]?.kind === "list" && ["and", "&", "+"].includes(found[from - 1]?.word ?? "");
  if (!joined) return null;
  for (let at = from - 2; at >= Math.max(0, from - 5); at--) {
    if (found[at]?.kind !== "word") return null;
    const here = counted(found, at);
    if (here !== null) return here;
  }
  return null;
}

/** How many pieces a plural without a number means: a pair where the reel has a pair of bearings or springs, else one set. */
function assumed(part: Mark, position: string | null): number {
  if (!part.plural || position === null) return 1;
  if (part.positions.length > 1) return 1;
  return part.family === "ball bearing" || (mostOf.get(position) === 2 && part.family !== "lever or pawl" && part.family !== "seal") ? 2 : 1;
}

/** Pieces of one part, and whether the note says so. A number of parts named as left and right is shared between them. */
export function pieces(found: readonly Token[], one: Spoken, position: string | null, listed: boolean): { qty: number; assumed: boolean } {
  const { part, item } = one, next = item.parts.find((other) => other.from > part.from),
    previous = [...item.parts].reverse().find((other) => other.to <= part.from);
  if (/ pair$/.test(part.phrase)) return { qty: 2, assumed: false };
  const inside = found.slice(part.from, part.to).find((token) => token.kind === "quantity");
  const written = inside ? Number(inside.word) : withAction(found, one)
    ?? before(found, part, previous === undefined ? item.from : previous.to + (found[previous.to]?.kind === "quantity" ? 1 : 0))
    ?? behind(found, part, next?.from ?? item.to, listed, one.told.every((had) => had.among === 1));
  if (written === null) return { qty: assumed(part, position), assumed: true };
  return { qty: part.positions.length > 1 ? Math.max(1, Math.round(written / part.positions.length)) : written, assumed: false };
}
