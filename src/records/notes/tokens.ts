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
  "w/o": "without", "s/h": "second hand part", "f/s": "full service", "l/h": "lh", "r/h": "rh", "h/side": "handle side",
  "o/side": "off side", "u/s": "faulty", "n/a": "", "w/": ",", "c&l": "cleaned", "c/l": "cleaned", "s/c": "side cover", "s/s": "",
};
const NUMBER = "\\d{1,3}(?:\\.\\d{1,2})?";
const PATTERN = new RegExp([
  `(?<size>(?<![\\d.])${NUMBER}[x×*]${NUMBER}(?:[x×*]${NUMBER})?(?!\\d)|(?<![\\d.])${NUMBER} [x×*] ${NUMBER}(?: [x×*] ${NUMBER})?(?!\\d)` +
    "|\\b\\d{1,2}-\\d{1,2}-\\d(?:\\.\\d)?\\b|\\b(?:s?mr)\\d{2,3}(?:zz|2rs|rs)?\\b|\\b6\\d{2}(?:zz|2rs|rs)\\b|\\bas568-?\\d{3}\\b" +
    "|(?<![\\w.])-\\d{3}\\b|\\bhfl?\\d{4}\\b)",
  "(?<quantity>\\bx\\s?\\d{1,2}\\b|\\b\\d{1,2}\\s?x(?![a-z\\d])|\\(\\d{1,2}\\)|\\*\\s?\\d{1,2}\\b|\\b\\d{1,2}\\s?off\\b)",
  `(?<short>(?<![a-z])(?:${Object.keys(SHORT).sort((a, b) => b.length - a.length).join("|")})(?![a-z]))`,
  "(?<number>\\d+(?:[.,]\\d+)?)",
  "(?<word>\\p{L}[\\p{L}\\p{M}\\d]*(?:['’]\\p{L}+)?)",
  "(?<doubt>\\?+)",
  "(?<stop>[.;!\\n\\r]+)",
  "(?<dash>\\s-+\\s|[:=>]|[–—])",
  "(?<list>[,+&/])",
  "(?<bracket>[()[\\]])",
].join("|"), "giu");

/** Shortened words after which a point ends no sentence, unless a capital follows. */
const SHORTENED = new Set(["frt", "rr", "poss", "approx", "incl", "cust", "temp"]);

function words(text: string, start: number, end: number): Token {
  const raw = text.normalize("NFKD").replace(/[\p{M}'’]/gu, "");
  return {
    kind: "word", word: raw.toLowerCase(), plural: /[^s]s$/i.test(raw), capitals: raw.length > 1 && raw === raw.toUpperCase(), start, end,
  };
}

function endsNothing(text: string, at: number, last: Token | undefined): boolean {
  return last?.kind === "word" && last.end === at && SHORTENED.has(last.word) && /^\.\s*[a-z\d]/.test(text.slice(at, at + 12));
}

function short(text: string, start: number, end: number): Token[] {
  const meaning = SHORT[text.toLowerCase()] ?? "";
  if (meaning === ",") return [{ kind: "list", word: "w/", plural: false, capitals: false, start, end }];
  return meaning.split(" ").filter(Boolean).map((word) => ({ kind: "word", word, plural: false, capitals: true, start, end }));
}

/** Pieces of a note in order, each with its place in the text; words joined and brought to one spelling. */
export function tokens(text: string): Token[] {
  const found: Token[] = [];
  for (const match of text.matchAll(PATTERN)) {
    const start = match.index, end = start + match[0].length, group = match.groups ?? {};
    const sign = (kind: Token["kind"], word: string) => found.push({ kind, word, plural: false, capitals: false, start, end });
    if (group["size"] !== undefined) sign("size", match[0].toLowerCase().replace(/\s/g, "").replace(/[×*]/g, "x"));
    else if (group["quantity"] !== undefined) sign("quantity", match[0].replace(/\D/g, ""));
    else if (group["short"] !== undefined) found.push(...short(match[0], start, end));
    else if (group["word"] !== undefined) found.push(words(match[0], start, end));
    else if (group["number"] !== undefined) sign("word", match[0]);
    else if (group["doubt"] !== undefined) sign("doubt", "?");
    else if (group["stop"] !== undefined) { if (!endsNothing(text, start, found.at(-1))) sign("stop", "."); }
    else if (group["bracket"] !== undefined) sign("bracket", match[0] === "(" || match[0] === "[" ? "(" : ")");
    else sign(group["dash"] !== undefined ? "dash" : "list", group["dash"] !== undefined ? "-" : match[0]);
  }
  return joined(found);
}

function joined(raw: readonly Token[]): Token[] {
  const plain = raw.map((token) => (token.kind === "word" ? token.word : ""));
  const out: Token[] = [];
  for (let at = 0; at < raw.length;) {
    const token = raw[at] as Token;
    const pair = token.kind === "word" ? joinedWord(plain, at) : null;
    const last = pair ? raw[at + pair.length - 1] : token;
    if (token.kind === "word" && (token.word === "and" || token.word === "plus")) out.push({ ...token, kind: "list", word: "and" });
    else if (token.kind === "word") {
      out.push({ ...token, word: pair ? pair.word : sameWord(token.word), plural: last?.plural ?? token.plural, end: last?.end ?? token.end });
    } else out.push(token);
    at += pair ? pair.length : 1;
  }
  return out;
}
