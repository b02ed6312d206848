import { joinedWord, sameWord } from "./words.ts";

export interface Token {
  /** `word`, a written `size`, a `quantity`, a `doubt` mark, a `bracket`, or what stands between items (`list`, `dash`) and sentences (`stop`). */
  readonly kind: "word" | "size" | "quantity" | "doubt" | "list" | "stop" | "dash" | "bracket";
  /** As compared: lower case, singular, one spelling; for a quantity the number. */
  readonly word: string;
  readonly plural: boolean;
  readonly capitals: boolean;
  readonly start: number;
  readonly end: number;
}

/** Slashes and signs that stand inside a word, and what they mean (common practice, no source). */
const SHORT: Readonly<Record<string, string>> = {
  "a/r": "ar", "l/r": "lr", "l/roller": "line roller", "o/h": "overhaul", "c/o": "cleaned", "b/o": "back order", "o/o": "on order", "o/s": "out of stock",
  "w/o": "without", "s/h": "second hand part", "f/s": "full service", "l/h": "lh", "r/h": "rh", "h/side": "handle side", "h/s": "handle side",
  "o/side": "off side", "u/s": "faulty", "n/a": "", "w/": ",", "c&l": "cleaned", "c/l": "cleaned", "s/c": "side cover", "s/s": "", "c/w": ",", "o/ring": "oring", "o/rings": "oring", "on/off": "on off", "n/s": "out of stock",
};
const NUMBER = "\\d{1,3}(?:\\.\\d{1,2})?";
/** One group a kind of piece, in the order of GROUPS. */
const PATTERN = new RegExp([
  "(\\b\\d{1,2}x(?=\\d+(?:\\.\\d+)?x\\d+x\\d)|\\bx\\s?\\d{1,2}\\b|\\b\\d{1,2}\\s?x(?![a-z\\d])|\\(\\d{1,2}\\)|\\*\\s?\\d{1,2}\\b|\\b\\d{1,2}\\s?off\\b)",
  `((?<![\\d.])${NUMBER}[x×*]${NUMBER}(?:[x×*]${NUMBER})?(?!\\d)|(?<![\\d.])${NUMBER} [x×*] ${NUMBER}(?: [x×*] ${NUMBER})?(?!\\d)` +
    "|\\b\\d{1,2}-\\d{1,2}-\\d(?:\\.\\d)?\\b|\\b(?:s?mr)\\d{2,3}(?:zz|2rs|rs)?\\b|\\b6\\d{2}(?:zz|2rs|rs)\\b|\\bas568-?\\d{3}\\b" +
    "|(?<![\\w.])-\\d{3}\\b|\\bhfl?\\d{4}\\b)",
  `((?<![a-z])(?:${Object.keys(SHORT).sort((a, b) => b.length - a.length).join("|")})(?![a-z]))`,
  "((?<![a-z])[a-z](?:\\.[a-z])+\\b\\.?)",
  "((?<![\\w.])\\.\\d+|\\d+(?:[.,]\\d+)?)",
  "(\\p{L}[\\p{L}\\p{M}\\d]*(?:['’]\\p{L}+)?)",
  "(\\?+)",
  "([.;!\\n\\r]+)",
  "(\\s-+\\s|[:=>]|[–—])",
  "([,+&/])",
  "([()[\\]])",
].join("|"), "giu");

/** Shortened words after which a point ends no sentence, unless a capital follows. */
const SHORTENED = new Set(["adj", "sw", "ch", "lvl", "orig", "std", "osc", "frt", "rr", "poss", "approx", "incl", "cust", "temp", "rev", "anti"]);

/** Shortened words for what was done: at the start of a sentence what it was done to follows. */
const LEADS = new Set(["ch", "chg", "repl", "rpl", "rplcd", "chgd", "cln", "clnd", "adj", "frt"]);
const PLAIN = /^[A-Za-z0-9]+$/;
/** Short for a side, not for several of something. */
const SIDE_SHORT = /^(?:[lr]h|h|o)s$/i;
function words(text: string, start: number, end: number): Token {
  const raw = PLAIN.test(text) ? text : text.normalize("NFKD").replace(/['’][ds]$/iu, "").replace(/[\p{M}'’]/gu, "");
  return {
    kind: "word", word: raw.toLowerCase(), plural: /[^s]s$/i.test(raw) && !SIDE_SHORT.test(raw), capitals: raw.length > 1 && raw === raw.toUpperCase(), start, end,
  };
}

function endsNothing(text: string, at: number, last: Token | undefined, opens: boolean): boolean {
  if (last?.kind !== "word" || last.end !== at) return false;
  return opens ? LEADS.has(last.word) : SHORTENED.has(last.word) && /^\.\s*[a-z\d]/.test(text.slice(at, at + 12));
}

/** Before a part "o/s" is a side, elsewhere it is what a part is out of. */
const OFF_SIDE = /^\s+(?:main|mn|spool|spl|brg|bearing|drive|drv|handle|side|cap|cover|screw)/i;

function short(text: string, start: number, end: number, behind: string): Token[] {
  const key = text.toLowerCase(), meaning = key === "o/s" && OFF_SIDE.test(behind) ? "off side" : SHORT[key] ?? "";
  if (meaning === ",") return [{ kind: "list", word: "w/", plural: false, capitals: false, start, end }];
  return meaning.split(" ").filter(Boolean).map((word) => ({ kind: "word", word, plural: false, capitals: true, start, end }));
}

const GROUPS = ["quantity", "size", "short", "dotted", "number", "word", "doubt", "stop", "dash", "list", "bracket"] as const;
function groupOf(match: RegExpExecArray): (typeof GROUPS)[number] {
  for (let group = 0; group < GROUPS.length; group++) if (match[group + 1] !== undefined) return GROUPS[group] as (typeof GROUPS)[number];
  throw new RangeError(`tokens: needs one group to hold ${match[0]}`);
}
const sign = (kind: Token["kind"], word: string, start: number, end: number): Token => ({ kind, word, plural: false, capitals: false, start, end });

function piece(group: (typeof GROUPS)[number], text: string, start: number, end: number, behind: string): Token | Token[] {
  switch (group) {
    case "word": return words(text, start, end);
    case "dotted": return words(text.replaceAll(".", ""), start, end);
    case "number": return sign("word", text, start, end);
    case "size": return sign("size", text.toLowerCase().replace(/\s/g, "").replace(/[×*]/g, "x"), start, end);
    case "quantity": return sign("quantity", text.replace(/\D/g, ""), start, end);
    case "short": return short(text, start, end, behind);
    case "doubt": return sign("doubt", "?", start, end);
    case "stop": return sign("stop", ".", start, end);
    case "dash": return sign("dash", "-", start, end);
    case "list": return sign("list", text, start, end);
    case "bracket": return sign("bracket", text === "(" || text === "[" ? "(" : ")", start, end);
  }
}

/** A run of letters that is a word whatever stands around it: the commonest piece, taken without the whole pattern. */
const LETTERS = /[A-Za-z]{2,}(?=[\s,;:)!?+]|$)/y;

/** Pieces of a note in order, each with its place in the text; words joined and brought to one spelling. */
export function tokens(text: string): Token[] {
  const found: Token[] = [];
  for (let at = 0; at < text.length;) {
    LETTERS.lastIndex = at;
    const plain = isLetter(text.charCodeAt(at)) && !isLetter(text.charCodeAt(at - 1)) ? LETTERS.exec(text) : null;
    if (plain) {
      found.push(words(plain[0], at, at + plain[0].length));
      at += plain[0].length;
      continue;
    }
    if (text[at] === " " && isLetter(text.charCodeAt(at + 1))) { at++; continue; }
    PATTERN.lastIndex = at;
    const match = PATTERN.exec(text);
    if (!match) break;
    const start = match.index, end = start + match[0].length, group = groupOf(match);
    at = end;
    if (group === "stop" && endsNothing(text, start, found.at(-1), found.length === 1 || found.at(-2)?.kind === "stop")) continue;
    const here = piece(group, match[0], start, end, group === "short" ? text.slice(end, end + 12) : "");
    if (Array.isArray(here)) found.push(...here); else found.push(here);
  }
  return joined(found);
}

const isLetter = (code: number) => (code >= 97 && code <= 122) || (code >= 65 && code <= 90);

/** Pieces with words that are one thing put together, each in the form in which words are compared. */
export function joined(raw: readonly Token[]): Token[] {
  const plain = raw.map((token) => (token.kind === "word" ? token.word : ""));
  const out: Token[] = [];
  for (let at = 0; at < raw.length;) {
    const token = raw[at] as Token;
    const pair = token.kind === "word" ? joinedWord(plain, at) : null;
    const last = pair ? raw[at + pair.length - 1] : token;
    if (token.kind === "word" && (token.word === "and" || token.word === "plus")) out.push({ ...token, kind: "list", word: "and" });
    else if (token.kind === "word" && (token.word === "except" || token.word === "excluding")) out.push({ ...token, kind: "list", word: "," });
    else if (token.kind === "word") {
      out.push({ ...token, word: pair ? pair.word : sameWord(token.word), plural: last?.plural ?? token.plural, end: last?.end ?? token.end });
    } else out.push(token);
    at += pair ? pair.length : 1;
  }
  return out;
}
