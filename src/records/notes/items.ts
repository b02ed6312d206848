import { item, type Item, type Read } from "./item.ts";
import { marked, type Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";

/** "No rust" is good news, "not replaced" a refusal; other "no"s deny nothing we read. */
function denied(found: readonly Token[], all: readonly Mark[]): Mark[] {
  const out: Mark[] = [];
  for (let index = 0; index < all.length; index++) {
    const mark = all[index] as Mark, next = all[index + 1];
    const close = mark.say === "not" && next && next.from - mark.to <= 1 && found.slice(mark.to, next.from).every((token) => token.kind === "word");
    if (close && next.kind === "mode") {
      out.push({ ...mark, say: "good", to: next.to });
      for (index++; all[index + 1]?.from === next.from; index++);
    } else if (close && next.kind === "action" && next.action?.code !== "ORDER") {
      out.push({ ...mark, say: "declined", to: next.to });
      index++;
    } else out.push(mark);
  }
  return out;
}

const isSymptom = (one: Item, next: Item | undefined) =>
  next?.joint === "-" && next.parts.length > 0 && one.parts.length > 0 && one.told.length > 0 && one.told.every((mark) => mark.kind === "mode");

const isBracketed = (found: readonly Token[], mark: Mark) => found.slice(0, mark.from).findLast(({ kind }) => kind === "bracket" || kind === "stop")?.word === "(";

/** A sentence that speaks of something else than this reel, or of what may come ("if it returns: replace"), tells nothing. */
const elsewhere = (found: readonly Token[], items: readonly Item[]) => found[items[0]?.from ?? 0]?.word === "if"
  || items.some((one) => one.told.some((mark) => mark.say === "elsewhere" && !isBracketed(found, mark)));

/** A bracket that holds a part stands in a list like a comma; others are no more than their words. */
function opening(found: readonly Token[], all: readonly Mark[], at: number, next: number): Token | null {
  const token = found[at];
  if (token?.kind !== "bracket") return null;
  let close = at + 1;
  while (close < found.length && close < at + 16 && found[close]?.kind !== "bracket") close++;
  let held = token.word === ")";
  for (let index = next; !held && (all[index]?.from ?? close) < close; index++) held = all[index]?.kind === "part";
  return held ? { ...token, kind: "list" } : null;
}

const tellsOf = (mark: Mark) => mark.kind === "mode" || mark.kind === "action" || mark.say === "good" || mark.say === "later" || mark.say === "declined";

/** "Rusty/repl", "AR clutch/slips": what was wrong and what was done, or a part and what is said of it, written as one word. */
function oneBreath(found: readonly Token[], inside: readonly Mark[], next: Mark | undefined, at: number): boolean {
  const sign = found[at], before = found[at - 1], after = found[at + 1];
  if (sign?.word !== "/" || before?.end !== sign.start || after?.start !== sign.end || next?.from !== at + 1) return false;
  const last = inside.find((mark) => mark.to === at);
  return last?.kind === "mode" ? next.kind === "action" : (last?.kind === "part" || last?.kind === "side") && tellsOf(next);
}

const NONE: ReadonlySet<string> = new Set(["none", "nil", "no"]);
/** "Seals: none". */
const withNone = (one: Item, at: number): Item => ({ ...one, told: [...one.told, marked("say", at, at + 1, "none", false, { say: "declined" })] });

/** Items of a note, sentence by sentence. `sizes_alone`: a size without a name stands for a part, as in a list of parts. */
export function sentences({ found, strange }: Read, readings: readonly Mark[], sizes_alone: boolean): Item[][] {
  const out: Item[][] = [], all = denied(found, readings), read: Read = { found, strange };
  let items: Item[] = [], inside: Mark[] = [], from = 0, joint = "", next = 0, bracket = false;
  const end = () => { if (items.length > 0 && !elsewhere(found, items)) out.push(items.map((one, index) =>
    ({ ...one, symptom: isSymptom(one, items[index + 1]) }))); items = []; };
  for (let at = 0; at <= found.length; at++) {
    for (; next < all.length && (all[next] as Mark).from < at; next++) inside.push(all[next] as Mark);
    const token = opening(found, all, at, next) ?? found[at], covered = inside.some((mark) => mark.to > at) || oneBreath(found, inside, all[next], at);
    if (token && (covered || token.kind !== "list" && token.kind !== "stop" && token.kind !== "dash")) continue;
    const before = items.at(-1);
    if (before && joint === "-" && at - from === 1 && NONE.has(found[from]?.word ?? "")) items[items.length - 1] = withNone(before, from);
    else if (at > from) items.push(item(read, inside, from, at, joint, sizes_alone, bracket));
    if (!token || token.kind === "stop") { end(); joint = ""; } else joint = token.kind === "dash" ? "-" : token.word;
    bracket = joint === "(" || (bracket && joint !== ")" && joint !== "");
    [from, inside] = [at + 1, []];
  }
  return out;
}
