import { plainWords, positionNamed } from "../../vocabulary.ts";
import type { ReelKind } from "../../vocabulary.ts";
import type { KnownModel } from "../understanding.ts";

export interface ReelName {
  /** As written; null when the text names none that we can tell. */
  readonly maker: string | null;
  readonly model: string;
  /** What stands behind a model of the shop's list (`left`, `spare spool`); empty for nothing. */
  readonly rest: string;
  /** Kind of reel by the shop's list; null when it does not say. */
  readonly kind: ReelKind | null;
}

/** Letters and figures written together are two words: `Slipdene45` is `slipdene 45`. */
const wordsOf = (text: string) => plainWords(text).replace(/([a-z])(\d)/g, "$1 $2").replace(/(\d)([a-z]{2,})/g, "$1 $2");

const MOST_NAMES = 20_000, FEWEST_MODELS = 2;
const UNKNOWN = /\b(?:don t know|dont know|not sure|unknown|no idea|black one|some reel)\b/;

/** True when two words differ by at most one letter added, left out, changed or swapped with its neighbour. */
function isNear(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && a[start] === b[start]) start += 1;
  const rest_a = a.slice(start), rest_b = b.slice(start);
  if (rest_a.slice(1) === rest_b.slice(1) || rest_a.slice(1) === rest_b || rest_a === rest_b.slice(1)) return true;
  return rest_a[0] === rest_b[1] && rest_a[1] === rest_b[0] && rest_a.slice(2) === rest_b.slice(2);
}

/** Tells maker and model apart by the shop's own list, else by the names of the file itself. */
export class ReelNames {
  private readonly known = new Map<string, KnownModel | null>();
  private readonly makers = new Set<string>();
  /** First word → second words seen behind it. */
  private readonly behind = new Map<string, Set<string>>();
  private readonly read = new Map<string, ReelName | null>();

  constructor(models: readonly KnownModel[]) {
    for (const one of models) {
      const model = wordsOf(one.model);
      if (one.maker !== null) {
        this.makers.add(plainWords(one.maker));
        this.known.set(`${wordsOf(one.maker)} ${model}`, one);
      }
      const before = this.known.get(model);
      // Two makers with one model: the name alone does not say whose it is.
      this.known.set(model, before !== undefined && before?.maker !== one.maker ? null : one);
    }
  }

  /** Learns from a cell of the file. */
  see(text: string): void {
    const [first = "", second = ""] = wordsOf(text).split(" ");
    if (first.length < 4 || !/^[a-z]{3,}$/.test(second) || /\d/.test(first)) return;
    const seconds = this.behind.get(first) ?? new Set<string>();
    seconds.add(second);
    if (this.behind.size < MOST_NAMES) this.behind.set(first, seconds);
  }

  /** After the last `see`: first words with several models behind them are makers. */
  settle(): void {
    for (const [first, seconds] of this.behind) if (seconds.size >= FEWEST_MODELS && !this.behind.has([...seconds][0] ?? "")) this.makers.add(first);
    this.read.clear();
  }

  /** @returns null when the text does not say which reel it is */
  nameOf(text: string): ReelName | null {
    const before = this.read.get(text);
    if (before !== undefined) return before;
    const name = this.split(text.trim().replace(/\s+/g, " "));
    if (this.read.size < MOST_NAMES) this.read.set(text, name);
    return name;
  }

  private split(text: string): ReelName | null {
    const words = wordsOf(text);
    if (words === "" || UNKNOWN.test(words)) return null;
    const exact = this.known.get(words);
    if (exact) return { maker: exact.maker, model: exact.model, rest: "", kind: exact.reel_kind ?? null };
    return this.startOfKnown(words) ?? this.byMaker(text, words);
  }

  /** A known model with more words behind it. */
  private startOfKnown(words: string): ReelName | null {
    const split = words.split(" ");
    for (let length = split.length - 1; length > 1; length -= 1) {
      const found = this.known.get(split.slice(0, length).join(" "));
      if (found) return { maker: found.maker, model: found.model, rest: split.slice(length).join(" "), kind: found.reel_kind ?? null };
    }
    return null;
  }

  private byMaker(text: string, words: string): ReelName {
    const { name, rest } = withoutParts(text), first = name.split(" ")[0] ?? "", plain = plainWords(first);
    const isMaker = this.makers.has(plain) || (plain.length > 5 && [...this.makers].some((maker) => isNear(maker, plain)));
    const model = name.slice(first.length).trim();
    return isMaker && model !== "" && words.includes(" ") ? { maker: first, model, rest, kind: null } : { maker: null, model: name, rest, kind: null };
  }
}

/** What stands behind a slash and names no reel (`Ekholt 30 / spare spool`) is no part of the name. */
function withoutParts(text: string): { name: string; rest: string } {
  const at = text.search(/\s[/+&]\s|\s\(/);
  if (at < 1 || looksLikeReel(text.slice(at).replace(/^\s*[/+&(]\s*/, ""))) return { name: text, rest: "" };
  return { name: text.slice(0, at), rest: text.slice(at).replace(/^\s*[/+&]?\s*/, "") };
}

function looksLikeReel(text: string): boolean {
  return /^\p{L}{3,}.*\d/u.test(text.trim()) && positionNamed(text) === null;
}

/**
 * The reels a cell names, each as written: one, or several with `and`, `/`, `+`, `&` between them.
 *
 * @example
 * reelsIn("Withy 5 and Fernhowe 7") // => ["Withy 5", "Fernhowe 7"]
 * reelsIn("Ekholt 30 / spare spool") // => ["Ekholt 30 / spare spool"]
 */
export function reelsIn(text: string): string[] {
  const parts = text.split(/\s+(?:and|und|\+|&|\/)\s+|\s*;\s*/i).map((part) => part.trim()).filter((part) => part !== "");
  return parts.length > 1 && parts.every(looksLikeReel) ? parts : [text.trim()];
}

/** How many reels a text says it is about (`x3 reels`, `3 reels`); 1 when it says nothing. Not `3 of 6`. */
export function reelCount(text: string): number {
  const found = /\bx\s?(\d{1,2})\s*reels?\b|\b(\d{1,2})\s*(?:x\s*)?reels\b|\ball\s+(\d{1,2})\s+reels\b/i.exec(text);
  const count = Number(found?.[1] ?? found?.[2] ?? found?.[3] ?? 1);
  return count >= 1 && count <= 50 ? count : 1;
}
