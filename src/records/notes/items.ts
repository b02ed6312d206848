import type { Mark } from "./marks.ts";
import type { Token } from "./tokens.ts";

/** What stands between two list signs: parts with what was said and done in the same breath. */
export interface Item {
  readonly from: number;
  readonly to: number;
  readonly marks: readonly Mark[];
  /** The sign before it: none at the start of a sentence, else `,` `+` `&` `/` `and`, or `-` after a dash. */
  readonly joint: string;
  readonly doubt: boolean;
  readonly quantity: number | null;
  readonly sizes: readonly string[];
}

const COUNT = /^(?:[1-9]|1\d)$/;

function quantityIn(found: readonly Token[], from: number, to: number, parts: readonly Mark[]): number | null {
  for (let at = from; at < to; at++) {
    const token = found[at];
    if (token?.kind === "quantity") return Number(token.word);
    if (token?.kind === "word" && (token.word === "pr" || token.word === "pair")) return 2;
    const before = parts.some((part) => part.from - at >= 1 && part.from - at <= 2);
    if (token?.kind === "word" && COUNT.test(token.word) && (before || found[at - 1]?.word === "all")) return Number(token.word);
  }
  return null;
}

/** Items of a note, sentence by sentence. */
export function sentences(found: readonly Token[], read: readonly Mark[]): Item[][] {
  const out: Item[][] = [];
  let items: Item[] = [], from = 0, joint = "";
  const close = (to: number) => {
    const inside = read.filter((mark) => mark.from >= from && mark.to <= to);
    const tokens = found.slice(from, to);
    if (tokens.length > 0) {
      items.push({
        from, to, joint, marks: inside, doubt: tokens.some((token) => token.kind === "doubt"),
        quantity: quantityIn(found, from, to, inside.filter((mark) => mark.kind === "part" || mark.kind === "unspecified")),
        sizes: tokens.filter((token) => token.kind === "size").map((token) => token.word),
      });
    }
  };
  found.forEach((token, at) => {
    if (token.kind !== "list" && token.kind !== "stop" && token.kind !== "dash") return;
    close(at);
    from = at + 1;
    joint = token.kind === "list" ? token.word : token.kind === "dash" ? "-" : "";
    if (token.kind === "stop" && items.length > 0) { out.push(items); items = []; }
  });
  close(found.length);
  if (items.length > 0) out.push(items);
  return out;
}
