/** Words that mean the same at the bench, brought to one form before phrases are looked up (common practice, no source). */
const SAME: Readonly<Record<string, string>> = {
  brg: "bearing", brgs: "bearing", brng: "bearing", berring: "bearing", bering: "bearing", bearings: "bearing", brngs: "bearing",
  sprg: "spring", spr: "spring", sprgs: "spring", scrw: "screw", scrws: "screw", orings: "oring", antireverse: "ar", oneway: "oneway",
  bale: "bail", handel: "handle", hndl: "handle", nob: "knob", lvl: "level", washr: "washer", wshr: "washer", wshrs: "washer",
  pinon: "pinion", pinnion: "pinion", gearbox: "gearbox", disk: "disc", disks: "disc", fiber: "fibre", oscilating: "oscillating",
  sideplate: "sideplate", geer: "gear", rollr: "roller", rlr: "roller", linerollr: "lineroller", lr: "lineroller", clk: "clutch",
  clch: "clutch", berings: "bearing", bush: "bush", bushing: "bush", bushings: "bush", bnt: "bent", xhead: "crosshead",
};
/** Several words that are one thing; longest first. */
const JOINED: readonly (readonly [readonly string[], string])[] = [
  [["anti", "reverse"], "ar"], [["anti", "reserve"], "ar"], [["anti", "rev"], "ar"], [["one", "way"], "oneway"], [["1", "way"], "oneway"],
  [["line", "roller"], "lineroller"], [["level", "wind"], "levelwind"], [["lvl", "wind"], "levelwind"], [["o", "ring"], "oring"],
  [["side", "plate"], "sideplate"], [["main", "shaft"], "mainshaft"], [["gear", "box"], "gearbox"], [["free", "spool"], "freespool"],
  [["cross", "head"], "crosshead"],
];
const KEEP_S = new Set(["brass", "press", "less", "loss", "glass", "gas", "this", "was", "is", "has", "us", "as", "always", "plus", "bus", "lens"]);

/** One word in the form in which words are compared: singular, one spelling. */
export function sameWord(word: string): string {
  const known = SAME[word];
  if (known !== undefined && Object.hasOwn(SAME, word)) return known;
  const single = word.length > 3 && word.endsWith("s") && !word.endsWith("ss") && !KEEP_S.has(word) ? word.slice(0, -1) : word;
  return Object.hasOwn(SAME, single) ? SAME[single] ?? single : single;
}

/** How many words, from `at` on, are one thing under another name; with that name, or null. */
export function joinedWord(words: readonly string[], at: number): { word: string; length: number } | null {
  for (const [parts, word] of JOINED) {
    if (parts.every((part, index) => words[at + index] === part)) return { word, length: parts.length };
  }
  return null;
}

/**
 * A phrase as the list of words in which it is looked up.
 *
 * @example
 * phraseWords("Anti-reverse brgs") // => ["ar", "bearing"]
 */
export function phraseWords(text: string): string[] {
  const raw = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase()
    .replace(/\ba\/r\b/g, "ar").replace(/\bl\/r(oller)?\b/g, "lr").match(/[a-z0-9.]+/g) ?? [];
  const words: string[] = [];
  for (let at = 0; at < raw.length;) {
    const joined = joinedWord(raw, at);
    words.push(joined ? joined.word : sameWord(raw[at] ?? ""));
    at += joined ? joined.length : 1;
  }
  return words;
}
