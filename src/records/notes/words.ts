/** Words that mean the same at the bench, brought to one form before phrases are looked up (common practice, no source). */
const SAME: ReadonlyMap<string, string> = new Map(Object.entries({
  brg: "bearing", gskt: "gasket", gsket: "gasket", brng: "bearing", berring: "bearing", bering: "bearing", bgr: "bearing",
  sprg: "spring", spr: "spring", sprng: "spring", scrw: "screw", scr: "screw", bolt: "screw", antireverse: "ar", antirev: "ar",
  bale: "bail", handel: "handle", hndl: "handle", hdl: "handle", nob: "knob", lvl: "level", washr: "washer", wshr: "washer", wshrs: "washer",
  pinon: "pinion", pinnion: "pinion", disk: "disc", fiber: "fibre", oscilating: "oscillation", oscillating: "oscillation",
  oscilation: "oscillation", osc: "oscillation", geer: "gear", rollr: "roller", rlr: "roller", rllr: "roller", linerollr: "lineroller",
  lineroler: "lineroller", lr: "lineroller", clk: "clutch", clch: "clutch", clutches: "clutch", bushing: "bush", bushes: "bush", bnt: "bent",
  bial: "bail", w: "with", ctrl: "control", mn: "main", ch: "changed", chg: "changed", adj: "adjusted", spg: "spring", spgs: "spring",
  sping: "spring", xhead: "crosshead", rotr: "rotor", spl: "spool", wrn: "worn", brkn: "broken", glzd: "glazed", crckd: "cracked", szd: "seized",
  siezed: "seized", seised: "seized", frt: "front", fwd: "front", rr: "rear", hsg: "housing", assembly: "assy", cust: "customer", custy: "customer", yolk: "yoke",
  pall: "pawl", paul: "pawl", thumbar: "thumbbar", brks: "brake", centre: "center",
  thru: "through", tite: "tight", cln: "cleaned", clnd: "cleaned", rpld: "replaced", rplcd: "replaced", replcd: "replaced",
  rpl: "replaced", repl: "replaced", repld: "replaced", ftd: "fitted", chgd: "changed", lhs: "left", rhs: "right", lh: "left", rh: "right", rt:
  "right",
  teeth: "tooth", mg: "maingear", gd: "good",
  drv: "drive", drg: "drag", shft: "shaft", shf: "shaft", gr: "gear", cltch: "clutch", cluch: "clutch", cltc: "clutch", hnd: "handle", slv: "sleeve",
  slve: "sleeve", cvr: "cover", plt: "plate", pwl: "pawl", pnn: "pinion", gask: "gasket", gasgit: "gasket", knb: "knob", bdy: "body", frm: "frame",
  spdl: "spindle", lvr: "lever", leaver: "lever", tnsn: "tension", cst: "cast", retnr: "retainer", clp: "clip", bearin: "bearing", bearring: "bearing",
  bearng: "bearing", washar: "washer", pinyon: "pinion", pinien: "pinion", stak: "stack", stck: "stack", wsh: "washer", sprgs: "spring", crnk: "crank",
  lev: "lever", ecc: "eccentric", brkt: "bracket", pttd: "pitted", rstd: "rusted", rsty: "rusty", rst: "rust", crk: "cracked", crkd: "cracked",
  crack: "cracked", strpd: "stripped", strppd: "stripped", chpd: "chipped", chppd: "chipped", snpd: "snapped", snppd: "snapped", bst: "bust", stk: "stuck",
  ord: "ordered", tgt: "tightened", reseal: "resealed", rsld: "resealed", grs: "greased", grsd: "greased", greese: "grease", greesed: "greased", grese: "grease", olid: "oiled", oild: "oiled", tghtd: "tightened",
  tghtnd: "tightened", tghn: "tighten", adjd: "adjusted", adjst: "adjusted", strtnd: "straightened", polishd: "polished", chk: "checked", chkd: "checked",
  chckd: "checked", insp: "inspected", inspd: "inspected", rplc: "replaced", rplced: "replaced", replacd: "replaced", fittd: "fitted", fttd: "fitted",
  ordrd: "ordered", orderd: "ordered", cleand: "cleaned", cleened: "cleaned", swaped: "swapped", swoped: "swapped", lbd: "lubed", flshd: "flushed",
  dismtl: "dismantled", noisey: "noisy", seezed: "seized", ceased: "seized", wornout: "worn", brocken: "broken", brokn: "broken",
  rite: "right", lft: "left", rght: "right", repaced: "replaced", replased: "replaced", repalced: "replaced", chaged: "changed", chnged: "changed", instld: "installed", instl: "installed", inst: "installed", rplcmnt: "replacement", fitd: "fitted", lubd: "lubed",
}));
/** Several words that are one thing; those that start with the same word stand together. */
const JOINED: readonly (readonly [readonly string[], string])[] = [
  [["anti", "reverse"], "ar"], [["anti", "reserve"], "ar"], [["anti", "rev"], "ar"], [["one", "way"], "oneway"], [["1", "way"], "oneway"],
  [["line", "roller"], "lineroller"], [["line", "rollr"], "lineroller"], [["line", "rlr"], "lineroller"], [["line", "rollers"], "lineroller"],
  [["level", "wind"], "levelwind"], [["lvl", "wind"], "levelwind"], [["o", "ring"], "oring"], [["0", "ring"], "oring"], [["0", "rings"], "oring"], [["o", "rngs"], "oring"], [["o", "rng"], "oring"], [["o", "rings"], "oring"],
  [["side", "plate"], "sideplate"], [["side", "plates"], "sideplate"], [["main", "shaft"], "mainshaft"], [["gear", "box"], "gearbox"],
  [["free", "spool"], "freespool"], [["cross", "head"], "crosshead"], [["main", "gear"], "maingear"], [["main", "gr"], "maingear"],
    [["main", "geer"], "maingear"],
  [["body", "screw"], "bodyscrew"], [["body", "screws"], "bodyscrew"], [["body", "scrw"], "bodyscrew"], [["thumb", "bar"], "thumbbar"],
];
const JOINED_FROM = new Map<string, (readonly [readonly string[], string])[]>();
for (const pair of JOINED) JOINED_FROM.set(pair[0][0] ?? "", [...JOINED_FROM.get(pair[0][0] ?? "") ?? [], pair]);
const KEEP_S = new Set(["this", "sounds", "was", "is", "has", "us", "as", "its", "always", "plus", "bus", "lens", "gas", "yes"]);

function single(word: string): string {
  if (word.length <= 3 || !word.endsWith("s") || word.endsWith("ss") || KEEP_S.has(word)) return word;
  return /(?:ch|sh|ss)es$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}

/** One word in the form in which words are compared: singular, one spelling. */
export function sameWord(word: string): string {
  const known = SAME.get(word);
  if (known !== undefined) return known;
  const one = single(word);
  return SAME.get(one) ?? one;
}

/** The last word of a name that is written as one here: "maingear" is a gear. */
export const LAST_OF: ReadonlyMap<string, string> = new Map([
  ["maingear", "gear"], ["bodyscrew", "screw"], ["mainshaft", "shaft"], ["lineroller", "roller"], ["sideplate", "plate"], ["bodyseal", "seal"],
    ["thumbbar", "bar"],
]);

/** How many words, from `at` on, are one thing under another name; with that name, or null. */
export function joinedWord(words: readonly string[], at: number): { word: string; length: number } | null {
  for (const [parts, word] of JOINED_FROM.get(words[at] ?? "") ?? []) {
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
  const raw = text.normalize("NFKD").replace(/[\p{M}'’]/gu, "").toLowerCase()
    .replace(/\ba\/r\b/g, "ar").replace(/\bl\/r\b/g, "lr").replace(/\bl\/roller\b/g, "line roller").match(/[a-z0-9.]+/g) ?? [];
  const words: string[] = [];
  for (let at = 0; at < raw.length;) {
    const joined = joinedWord(raw, at);
    words.push(joined ? joined.word : sameWord(raw[at] ?? ""));
    at += joined ? joined.length : 1;
  }
  return words;
}
