import { familyOf } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import { at, isHead, lastWord, placeOf, placesOf, word } from "./part-names.ts";
import { FAMILY_WORD } from "./part-words.ts";
import type { Token } from "./tokens.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** Parts that have a bearing of their own name. */
const WITH_BEARING: ReadonlySet<string> = new Set(["lineroller", "roller", "ar", "oneway", "pinion", "knob", "handle knob", "spool", "worm"]);

/** Where a name of the list "bearings: mains, pinion" sits: one position, or both of a pair; null when it cannot be told. */
function listedPlaces(phrase: string, head: string, kind: ReelKind | null, plural: boolean): Pick<Mark, "positions" | "family"> | null {
  const named = phrase === "roller" && kind === "spinning" ? "lineroller" : phrase;
  const place = placeOf(`${named} ${head}`, kind), pair = place === null || phrase === "main" ? placesOf(`${phrase} ${head}`, kind, plural) : [];
  if (pair.length === 2 && pair.every((one) => one.startsWith("main_bearing_"))) return { positions: pair, family: familyOf.get(pair[0] ?? "") ?? null };
  return place === null ? null : at(place);
}

/** "Main & pinion gears": the word of the family is said once, behind. */
export function sharedBehind(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  for (const head of all) {
    const family = lastWord(head.phrase);
    if (head.kind !== "part" || !head.plural || !FAMILY_WORD.has(family)) continue;
    for (let index = head.from - 1; index >= 0; index--) {
      const token = found[index] as Token, joint = found[index + 1];
      if ((token.kind === "list" && ["and", "&", "/"].includes(token.word)) || token.word === "both") continue;
      const mark = out.find((one) => one.from <= index && one.to > index);
      if (token.kind !== "word" || (joint?.kind !== "list" && joint?.word !== "both")
        || (mark && !(mark.kind === "part" && (mark.phrase === "main" || (family === "bearing" && WITH_BEARING.has(mark.phrase)))))) break;
      const phrase = mark ? mark.phrase : token.word, place = lastWord(phrase) === family ? null : placeOf(`${phrase} ${family}`, kind);
      if (place === null) break;
      const made: Mark = { ...(mark ?? { ...head, from: index, to: index + 1, plural: false }), ...at(place), phrase: `${phrase} ${family}`,
        ambiguous: true };
      if (mark) out[out.indexOf(mark)] = made; else out.push(made);
      index = made.from;
    }
  }
  return out.sort((a, b) => a.from - b.from);
}

/** Words between a heading and its colon ("bearing kit fitted:"). */
const HEADING_WORDS: ReadonlySet<string> = new Set(["kit", "set", "upgrade", "upgraded", "swap", "all", "new", "fitted", "replaced", "changed", "gone", "shot", "done", "out", "in"]);

/** A colon or a bracket behind a heading, over a number and small words. */
function heads(found: readonly Token[], at: number): boolean {
  let sign = at;
  while (sign < at + 4 && (found[sign]?.kind === "quantity" || /^\d$/.test(word(found[sign])) || HEADING_WORDS.has(word(found[sign])))) sign++;
  const spoken = found.slice(at, sign).some((token) => token.kind === "word" && !/^\d$/.test(token.word));
  return found[sign]?.kind === "dash" || ((!spoken || found[at]?.kind === "quantity") && found[sign]?.word === "(");
}

const signAfter = (found: readonly Token[], at: number) => found.findIndex((token, index) => index >= at
  && (token.kind === "dash" || token.kind === "bracket"));

const unplaced = (head: Mark) => ({ positions: [], family: FAMILY_WORD.get(head.phrase) ?? null });

/** "Bearings: 2 spool, 1 pinion": the word of the family is said once, ahead. */
export function sharedAhead(found: readonly Token[], all: readonly Mark[], kind: ReelKind | null): Mark[] {
  const out = [...all];
  for (const head of all) {
    if (!isHead(head) || !(head.plural || ["kit", "set", "upgrade", "swap"].includes(word(found[head.to]))) || head.positions.length > 0 || !heads(found, head.to)) continue;
    let used = false;
    for (let index = signAfter(found, head.to) + 1; index < found.length && found[index]?.kind !== "stop"; index++) {
      const token = found[index] as Token, mark = out.find((one) => one.from <= index && one.to > index);
      const starts = found[index - 1]?.kind !== "word" || /^\d+$/.test(found[index - 1]?.word ?? "");
      if (token.kind !== "word" || /^\d+$/.test(token.word) || !starts) continue;
      const phrase = mark?.kind === "part" ? mark.phrase : token.word;
      const several = token.plural || [found[index - 1], found[mark?.to ?? index + 1]].some((near) => near?.word === "2");
      const place = mark && mark.kind !== "part" ? null : listedPlaces(phrase, head.phrase, kind, several);
      if (place === null && mark?.kind !== "part") {
        if (mark) continue;
        break;
      }
      if (place === null && (!used || mark?.phrase.includes(" "))) break;
      const made: Mark = { ...(mark ?? { ...head, from: index, to: index + 1, plural: false }), ...(place ?? unplaced(head)),
        phrase: `${phrase} ${head.phrase}`, ambiguous: true };
      if (mark) out[out.indexOf(mark)] = made; else out.push(made);
      [index, used] = [made.to - 1, true];
    }
    if (used) out[out.indexOf(head)] = { ...head, kind: "ignored" };
  }
  return out.sort((a, b) => a.from - b.from);
}
