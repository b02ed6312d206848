import { familyOf } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";
import { ARTICLES, lastWord } from "./part-names.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

interface Sided { readonly left: string; readonly right: string }
const PAIR = "spool_bearings_pair";
/** Bearings that sit on both sides of the reel. */
const SPOOL: Sided = { left: "spool_bearing_left", right: "spool_bearing_right" };
const MAIN: Sided = { left: "main_bearing_plate", right: "main_bearing_handle" };
const PINION = ["pinion_bearing_front", "pinion_bearing_rear"];
const RIGHT = /^(?:handle|gear|drive|right|head|r$|hs$)/;

function sidedBy(positions: readonly string[], kind: ReelKind | null): Sided | null {
  const position = positions[0] ?? "";
  if (/^spool_bearing/.test(position)) return SPOOL;
  return kind === "spinning" && /^main_bearing_(?:plate|handle)$/.test(position) ? MAIN : null;
}
const word = (token: Token | undefined) => (token?.kind === "word" ? token.word : "");

/** "Spool bearing, left side": the side is all that stands between two signs. */
const standsAlone = (found: readonly Token[], side: Mark, sign: Token) => sign.kind === "list" && sign.word === "," && sign === found[side.from - 1]
  && found[side.to]?.kind !== "word";

/** The side named just before or behind a part: "palm side spool bearing", "spool bearing on the palm side". */
function sideOf(found: readonly Token[], all: readonly Mark[], index: number): Mark | null {
  const mark = all[index] as Mark, before = all[index - 1], after = all[index + 1];
  if (before?.kind === "side" && before.to === mark.from) return before;
  const later = after?.kind === "action" && all[index + 2]?.kind === "side" && found[after.to]?.kind === "bracket" ? all[index + 2] : null;
  if (later) return later;
  const small = after ? found.slice(mark.to, after.from).filter((token) => token.kind !== "bracket" && !standsAlone(found, after, token)).map(word) : [];
  return after?.kind === "side" && small.length <= 2 && small.every((one) => ARTICLES.has(one) || one === "on" || one === "at") ? after : null;
}

/** "Left and right" behind "spool bearings". */
function both(found: readonly Token[], mark: Mark): Mark | null {
  const side = lastWord(mark.phrase), other = word(found[mark.to + 1]);
  if (side === "front" && mark.positions[0] === PINION[0] && found[mark.to]?.kind === "list" && /^(?:rear|back)$/.test(other)) {
    return { ...mark, positions: PINION, to: mark.to + 2, plural: false };
  }
  if (mark.positions[0] === PINION[0] && !/rear|back/.test(mark.phrase)) {
    const at = found[mark.to]?.word === "(" ? mark.to + 1 : mark.to;
    if (/^(?:rear|back)$/.test(word(found[at])) && found[at + 1]?.kind !== "word") return { ...mark, positions: [PINION[1] ?? ""], to: at + 1, plural: false };
  }
  const opposite = /^(?:l|left)$/.test(side) ? /^(?:r|right)$/ : /^(?:r|right)$/.test(side) ? /^(?:l|left)$/ : null;
  if (!opposite?.test(other) || found[mark.to]?.kind !== "list" || !/^spool_bearing_(?:left|right)$/.test(mark.positions[0] ?? "")) return null;
  return { ...mark, positions: [SPOOL.left, SPOOL.right], to: mark.to + 2, plural: false };
}

/** "Right spool bearing", "left & right spool bearings". */
function pairAhead(found: readonly Token[], mark: Mark, sided: Sided): Mark | null {
  const own = mark.phrase.split(" ")[0] ?? "", opposite = { left: "right", right: "left" }[own];
  if (opposite && word(found[mark.from - 2]) === opposite && found[mark.from - 1]?.kind === "list" && found[mark.from - 1]?.word !== ",") {
    return { ...mark, from: mark.from - 2, positions: [sided.left, sided.right], plural: false };
  }
  const [one, sign, other] = [word(found[mark.from - 3]), found[mark.from - 2]?.kind, word(found[mark.from - 1])];
  const side = { left: sided.left, l: sided.left, right: sided.right, r: sided.right }[other];
  if (side && sign !== "list") return { ...mark, from: mark.from - 1, positions: [side], plural: false };
  const named = (one === "left" && other === "right") || (one === "right" && other === "left");
  return named && sign === "list" ? { ...mark, from: mark.from - 3, positions: [sided.left, sided.right], plural: false } : null;
}

/** The other of two: "left one ok", "palm side one replaced", "one on handle side fine". */
function pronoun(found: readonly Token[], side: Mark, before: readonly Mark[], kind: ReelKind | null): Mark | null {
  const alone = found[side.from - 1]?.kind !== "word" || (found[side.to]?.kind !== "word" && word(found[side.from - 1]) !== "on");
  const one = word(found[side.to]) === "one", ahead = alone || word(found[side.from - 1]) === "one"
    || (["on", "at"].includes(word(found[side.from - 1])) && word(found[side.from - 2]) === "one");
  const owner = one || ahead ? [...before].reverse().find((mark) => mark.kind === "part") : undefined, sided = owner ? sidedBy(owner.positions, kind) : null;
  if (!owner || !sided) return null;
  const right = /^(?:other|opposite)/.test(side.phrase) ? owner.positions[0] === sided.left : RIGHT.test(side.phrase);
  const position = right ? sided.right : sided.left;
  return { ...owner, from: side.from, to: one ? side.to + 1 : side.to, positions: [position], family: familyOf.get(position) ?? null, plural: false };
}

/** Parts of which the reel has one on each side, told apart where the note says which. */
export function sides(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  all.forEach((mark, index) => {
    const sided = mark.kind === "part" ? sidedBy(mark.positions, kind) : null, side = sided ? sideOf(found, all, index) : null;
    const every = sided && word(found[mark.to]) === "both" && word(found[mark.to + 1]) === "side";
    const [one, sign, other] = [word(found[mark.to]), found[mark.to + 1]?.kind, word(found[mark.to + 2])];
    if (sided && sign === "list" && ((/^(?:l|left)$/.test(one) && /^(?:r|right)$/.test(other)) || (/^(?:r|right)$/.test(one) && /^(?:l|left)$/.test(other)))) {
      out.push({ ...mark, positions: [sided.left, sided.right], to: mark.to + 3, plural: false });
      return;
    }
    if (every) {
      const pair = sided === SPOOL && !out.some(({ positions }) => positions.includes(SPOOL.left) || positions.includes(SPOOL.right));
      out.push({ ...mark, positions: pair ? [PAIR] : [sided.left, sided.right], to: mark.to + 2, plural: pair });
      return;
    }
    const named = mark.kind === "part" ? (sided ? pairAhead(found, mark, sided) : null) ?? both(found, mark) : mark.kind === "side"
      ? pronoun(found, mark, out.slice(-4), kind) : null;
    while (named && mark.kind === "part" && (out.at(-1)?.from ?? -1) >= named.from) out.pop();
    if (named) out.push(named);
    else if (sided && side) out.push({ ...mark, positions: [RIGHT.test(side.phrase) ? sided.right : sided.left], plural: false });
    else out.push(mark);
  });
  return out;
}
