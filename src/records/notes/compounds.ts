import { FILLERS } from "./sayings.ts";
import type { Mark } from "./marks.ts";
import { ARTICLES, at, isHead, lastWord, placeOf, smallPart, word } from "./part-names.ts";
import { FAMILY_WORD } from "./part-words.ts";
import { sharedAhead, sharedBehind } from "./shared-names.ts";
import type { Token } from "./tokens.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

const IN: ReadonlySet<string> = new Set(["in", "on", "of", "off", "from", "under", "for", "inside", "at", "holding", "securing"]);

/** "Bearing and seal in the handle knob": both are of the knob. */
function bothInside(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  all.forEach((mark, index) => {
    const second = all[index + 1], owner = all[index + 2];
    if (!isHead(mark) || !second || !isHead(second) || owner?.kind !== "part" || isHead(owner)) return;
    const joined = found.slice(mark.to, second.from), inside = found.slice(second.to, owner.from).map(word).filter((one) => !ARTICLES.has(one));
    if (joined.length !== 1 || joined[0]?.kind !== "list" || joined[0].word === "," || inside.length !== 1 || !IN.has(inside[0] ?? "")) return;
    for (const [step, head] of [mark, second].entries()) {
      const place = smallPart(owner, head.phrase, kind, head.plural, true);
      out[index + step] = { ...head, phrase: `x ${head.phrase}`, ambiguous: true, ...(place === null ? {} : at(place)) };
    }
    out[index + 2] = { ...owner, kind: "ignored" };
  });
  return out;
}

/** "Bearing in the line roller", "bearing x2 handle knob": one part. */
function inside(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (let index = 0; index < all.length; index++) {
    const mark = all[index] as Mark, next = all[index + 1];
    const between = next && isHead(mark) ? found.slice(mark.to, next.from).filter((token) => token.kind !== "size" && token.word !== "kit" && token.word !== "set") : [],
      small = between.map(word).filter((one) => !ARTICLES.has(one));
    const joins = next?.kind === "part" && small.length === 1
      && (IN.has(small[0] ?? "") || between[0]?.kind === "quantity" || between[0]?.word === "(" || (between[0]?.kind === "dash" && !mark.plural));
    const place = joins ? placeOf(`${next.phrase} ${mark.phrase}`, kind)
      ?? (small[0] === "holding" || small[0] === "securing" ? smallPart(next, mark.phrase, kind) : null) : null;
    if (place !== null && next) {
      out.push({ ...mark, ...at(place), to: next.to, phrase: `${next.phrase} ${mark.phrase}`, ambiguous: false });
      index++;
    } else out.push(mark);
  }
  return out;
}

/** Three measures are a bearing's: "new 4x7x2.5 in roller", "4x7x2.5 (knob)". */
const BEARING_SIZE = /^\d.*x.*x/;
function sizedInside(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  return all.map((mark, index) => {
    let sign = mark.from - 1;
    while (ARTICLES.has(word(found[sign]))) sign--;
    const joins = mark.kind === "part" && !isHead(mark) && mark.family !== "ball bearing" && (IN.has(word(found[sign])) || found[sign]?.word === "(");
    const sized = joins && found[sign - 1]?.kind === "size" && BEARING_SIZE.test(found[sign - 1]?.word ?? "") && !isHead(all[index - 1] ?? mark);
    const place = sized ? smallPart(mark, "bearing", kind) : null;
    return place === null ? mark : { ...mark, ...at(place), from: sign - 1, phrase: `${mark.phrase} bearing`, ambiguous: false };
  });
}

const WHICH: ReadonlySet<string> = new Set(["top", "bottom", "rear", "front", "upper", "lower", "center"]);
/** Nothing, or one word we do not know, stands between them ("thumb bar return spring"). */
const touches = (found: readonly Token[], owner: Mark, mark: Mark) =>
  mark.from - owner.to <= 2 && found.slice(owner.to, mark.from).every((token) => token.kind === "word" && (token.word === "side" || (!FILLERS.has(token.word)
    && !/ed$|^\d/.test(token.word))));

/** A part's name just before a bare family word is one name of a part: a known one ("pawl spring"), or one we cannot place ("knob seal"). */
function joinedNames(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (const mark of all) {
    let owner = out.at(-1);
    if (!isHead(mark) || owner?.kind !== "part" || !touches(found, owner, mark) || isHead(owner)) { out.push(mark); continue; }
    const place = owner.to === mark.from || WHICH.has(word(found[owner.to])) ? smallPart(owner, mark.phrase, kind, mark.plural, true) : null;
    let from = owner.from;
    out.pop();
    for (owner = out.at(-1); owner?.kind === "part" && owner.to === from; owner = out.at(-1)) { from = owner.from; out.pop(); }
    const phrase = `x ${mark.phrase}`, family = FAMILY_WORD.get(mark.phrase) ?? null;
    out.push({ ...mark, from, phrase, ambiguous: true, ...(place === null ? { positions: [], family } : at(place)) });
  }
  return out;
}

/** "Thumb bar return spring", "AR switch knob": of two names that touch, the first tells whose the second is, unless the second is no more than a word. */
function touchingNames(all: readonly Mark[]): Mark[] {
  const out = [...all];
  all.forEach((owner, index) => {
    const mark = all[index + 1];
    if (owner.kind !== "part" || mark?.kind !== "part" || owner.to !== mark.from || isHead(owner) || isHead(mark) || owner.own || mark.own
      || FAMILY_WORD.has(lastWord(owner.phrase))) return;
    if (mark.phrase.includes(" ")) out[index] = { ...owner, kind: "ignored" };
    else if (owner.phrase.includes(" ")) out[index + 1] = { ...mark, kind: "ignored" };
  });
  return out;
}

/** "Bearing, line roller. Seal, body": lines of a parts list with the word of the family first; a single one may be two parts. */
function inverted(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const ends = (token: Token | undefined) => token === undefined || token.kind === "stop", out: Mark[] = [];
  if (!found.some(({ kind: sign }) => sign === "stop")) return [...all];
  for (const mark of all) {
    const head = out.at(-1), alone = head !== undefined && isHead(head) && !head.plural && head.positions.length === 0 && ends(found[head.from - 1]);
    const place = alone && mark.kind === "part" && !isHead(mark) && mark.from === head.to + 1 && found[head.to]?.word === "," && ends(found[mark.to])
      ? smallPart(mark, head.phrase, kind) : null;
    if (place === null || !head) out.push(mark);
    else out[out.length - 1] = { ...head, ...at(place), to: mark.to, phrase: `${mark.phrase} ${head.phrase}` };
  }
  return out;
}

/** Small parts that are called by the part they belong to: "cover of the clutch", "nut on the rotor". */
const OWNED: ReadonlySet<string> = new Set(["cover", "cap", "lever", "nut", "pin", "lock", "clip", "arm", "knob", "gear", "screw", "spring", "washer", "shim", "bush",
  "sleeve", "seal", "oring", "gasket", "bearing", "spacer", "plate", "pawl", "magnet", "dial", "shaft", "housing", "collar", "rim", "edge", "lip", "hub", "tab"]);
function ofOwner(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (const owner of all) {
    let index = owner.from - 1;
    while (ARTICLES.has(word(found[index]))) index--;
    const noun = IN.has(word(found[index])) ? index - 1 : -1, name = word(found[noun]), last = out.at(-1), covered = last !== undefined && last.to > noun;
    const free = noun >= 0 && OWNED.has(name) && owner.kind === "part" && !isHead(owner) && (!covered || (last.from === noun && last.to === noun + 1 && last.positions.length === 0));
    const place = free ? placeOf(`${owner.phrase} ${name}`, kind) : null;
    if (place !== null && covered) out.pop();
    out.push(place === null ? owner : { ...owner, ...at(place), from: noun, phrase: `${owner.phrase} ${name}`, plural: found[noun]?.plural ?? false, ambiguous: false });
  }
  return out;
}

/** "O-ring body, o-ring knob": the word of the family first, the part behind it; unknown ones name no place. */
function turnedNames(all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out: Mark[] = [];
  for (const mark of all) {
    const head = out.at(-1);
    if (!head || !isHead(head) || head.positions.length > 0 || head.plural || mark.kind !== "part" || head.to !== mark.from
      || isHead(mark)) { out.push(mark); continue; }
    const place = smallPart(mark, head.phrase, kind, head.plural, true);
    out[out.length - 1] = { ...head, to: mark.to, phrase: `x ${head.phrase}`, ambiguous: true, ...(place === null ? {} : at(place)) };
  }
  return out;
}

/** "Line roller: bearing stiff", "LR - new brg": the part named ahead says whose bearing it is. */
function headings(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const dropped = new Set<Mark>();
  const out = [...all];
  all.forEach((owner, index) => {
    if (owner.kind !== "part" || isHead(owner) || found[owner.to]?.kind !== "dash") return;
    for (let next = index + 1; next < all.length && !found.slice(owner.to + 1, (all[next] as Mark).from).some((token) => token.kind === "stop"); next++) {
      const mark = all[next] as Mark, place = isHead(mark) ? smallPart(owner, mark.phrase, kind) : null;
      if (place === null) { if (mark.kind === "part" && mark.positions.length > 0 && mark.phrase !== "roller") break; else continue; }
      out[next] = { ...mark, ...at(place), phrase: `${owner.phrase} ${mark.phrase}`, ambiguous: false };
      if (found.slice(owner.to + 1, mark.from).every((token) => token.kind === "word")) dropped.add(owner);
    }
  });
  return out.map((mark) => (dropped.has(mark) ? { ...mark, kind: "ignored" } : mark));
}

const INSTEAD: ReadonlySet<string> = new Set(["by", "with", "a", "new", "pair", "of", "two"]);
/** "Knob bushes replaced with bearings": what was fitted is another part in the same place; the old one tells no more. */
function instead(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  all.forEach((head, index) => {
    const action = all[index - 1], old = all[index - 2];
    if (!isHead(head) || action?.action?.action !== "replaced" || old?.kind !== "part" || old.positions.length !== 1
      || old.family === FAMILY_WORD.get(head.phrase)) return;
    const between = found.slice(action.to, head.from);
    if (between.length === 0 && !/ (?:for|with)$/.test(action.phrase)) return;
    if (between.some((token) => token.kind !== "quantity" && !INSTEAD.has(word(token)))) return;
    const place = placeOf(`${old.phrase.split(" ").slice(0, -1).join(" ")} ${head.phrase}`, kind);
    if (place === null) return;
    out[index - 2] = { ...old, kind: "ignored" };
    out[index] = { ...head, ...at(place), ambiguous: true };
  });
  return out;
}

/** Names of parts that stand in pieces, put together. */
export function compounds(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const whole = touchingNames(turnedNames(joinedNames(found, ofOwner(found, sizedInside(found, inside(found, bothInside(found, inverted(found, all, kind), kind), kind), kind), kind), kind), kind));
  return instead(found, headings(found, sharedAhead(found, sharedBehind(found, whole, kind), kind), kind), kind);
}
