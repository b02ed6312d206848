import { actions, complaints, jobs, modes, modeSpellings, positions, positionSpellings } from "../vocabulary-tables.ts";
import type { ReelKind } from "../vocabulary-tables.ts";
import { phraseWords } from "./words.ts";

export interface ModeReading { readonly mode: string; readonly only_families: readonly string[] }
/** What is said of a part: `bad` only that it is at fault, `good` that it is not. */
export type Say = "doubt" | "later" | "not" | "good" | "routine" | "both" | "all" | "whole job";
export interface ActionReading { readonly code: string; readonly action: string; readonly routine: boolean }

const join = (words: readonly string[]) => words.join(" ");

function put<Value>(map: Map<string, Value[]>, text: string, value: Value): void {
  const key = join(phraseWords(text));
  if (key === "") return;
  const here = map.get(key) ?? [];
  if (!here.some((one) => JSON.stringify(one) === JSON.stringify(value))) here.push(value);
  map.set(key, here);
}

/** Names of things that are used, not fitted: in a note they are what was done, not what failed. */
const USED = new Set(positions.filter((row) => row.group === "CN" && row.position !== "screws_misc").map((row) => row.position));

export const positionPhrases = new Map<string, string[]>();
for (const row of positions) if (!USED.has(row.position)) put(positionPhrases, row.position.replaceAll("_", " "), row.position);
for (const row of positionSpellings) if (!USED.has(row.position)) put(positionPhrases, row.spelling, row.position);

/** Words said of any part at fault without saying what is wrong. */
const BAD = ["bad", "faulty", "us", "dead", "duff", "knackered", "shot", "buggered", "kaput", "gone", "stuffed", "had it", "rubbish", "toast", "failed", "rough", "noisy"];
const NOT_MODES = new Set(["not written", "no fault found"]);
export const modePhrases = new Map<string, ModeReading[]>();
for (const row of modeSpellings) {
  if (!NOT_MODES.has(row.mode) && !["set", "gone", "hard", "line", "intermittent", "fine", "ok"].includes(row.spelling)) {
    put(modePhrases, row.spelling, { mode: row.mode, only_families: row.only_families });
  }
}
for (const row of modes) if (!NOT_MODES.has(row.mode)) put(modePhrases, row.mode, { mode: row.mode, only_families: [] });
for (const word of BAD) put(modePhrases, word, { mode: "not written", only_families: [] });
put(modePhrases, "chewed up", { mode: "galled", only_families: [] });
put(modePhrases, "wont grip", { mode: "slipping", only_families: ["one-way clutch"] });

/** Doing words that also name the whole job; beside a part they are what was done to it. */
const CLEANING = ["cleaned", "cleaned up", "flushed", "degreased", "washed", "cln", "clnd", "dried", "dried out", "freed off", "freed", "freed up", "cleaned out"];
export const actionPhrases = new Map<string, ActionReading[]>();
for (const row of actions) {
  if (["OVERHAUL", "CHECK", "DEFER", "REPL_PREV", "TEST", "WARR", "SCRAP"].includes(row.code)) continue;
  for (const spelling of row.spellings) {
    if (["set", "saved", "lub", "locked", "needed", "chasing", "new seals", "resealed"].includes(spelling)) continue;
    put(actionPhrases, spelling, { code: row.code, action: row.action, routine: row.routine });
  }
}
const more = (code: string, action: string, phrases: readonly string[]) =>
  phrases.forEach((text) => put(actionPhrases, text, { code, action, routine: false }));
more("REPL", "replaced", ["replace", "fitted", "fit", "renew", "rpl", "repl", "replcd", "r/placed", "put in", "put in new", "swap", "change", "new one in", "new ones", "new set", "supplied and fitted", "fitting new", "replacing"]);
more("CLEAN", "cleaned", CLEANING);
more("CLEAN", "cleaned", ["clean", "degrease"]);
more("LUBE", "lubricated", ["grease", "oil", "lube", "re greased", "re oiled", "lubed up", "drop of oil", "packed with grease", "waxed"]);
more("ADJ", "adjusted", ["adjust", "reset", "re set", "straighten", "shim", "tighten", "nip up", "bent straight", "refitted", "refit", "reseated", "resealed", "re tensioned"]);
more("ORDER", "wanted", ["on back order", "need to order", "to order", "not in stock", "out of stock", "none in stock", "awaiting", "to come", "coming from"]);
more("EXTRACT", "adjusted", ["drilled", "drill out", "helicoiled", "extracted"]);
more("DONOR", "replaced", ["donor", "from donor", "second hand part", "used part"]);

export const says = new Map<string, Say[]>();
const saying = (say: Say, phrases: readonly string[]) => phrases.forEach((text) => put(says, text, say));
saying("doubt", ["poss", "possibly", "maybe", "looks like", "suspect", "borderline", "might be", "could be", "perhaps", "starting to", "slightly", "a bit", "bit"]);
saying("later", [
  "next time", "will need", "needs next time", "advise", "advised", "monitor", "to watch", "watch", "recommend", "recommended", "leave", "left it",
  "customer declined", "declined", "cust says leave", "next service", "keep an eye", "eye on", "soon", "did not want", "didnt want", "not wanted", "told him", "told her", "told customer",
]);
saying("not", [
  "no", "not", "nil", "without", "no sign of", "didnt need", "did not need", "doesnt need", "does not need", "did not replace", "didnt replace", "not replaced", "no need",
  "never", "havent", "not needed", "not required", "wasnt", "isnt", "no new",
]);
saying("good", ["ok", "good", "fine", "all good", "no issue", "no issues", "checked ok", "like new", "perfect", "serviceable", "sound", "no fault", "nff", "no problem", "no prob", "reused", "re used", "healthy", "left", "as new", "still good", "checked", "inspected", "tested", "mint"]);
saying("routine", ["routine", "as standard", "preventive", "precaution", "as a precaution", "as precaution", "while in there", "good measure", "for good measure", "service kit", "seal kit fitted", "as usual we"]);
saying("both", ["both"]);
saying("all", ["all"]);
saying("whole job", [
  ...jobs.filter((row) => row.job === "full service").flatMap((row) => row.spellings), "full service", "full strip", "strip clean", "full strip clean",
  "clean and lube", "as usual", "see last time", "usual", "cleaned and lubed", "cleaned and greased", "strip and clean", "clean lube", "full strip clean lube",
]);

export const complaintPhrases = new Map<string, string[]>();
for (const row of complaints) for (const text of row.spellings) if (phraseWords(text).length > 1) put(complaintPhrases, text, row.code);
["not casting far", "slips back", "click when turning", "click each turn", "turn backwards", "slips backwards"].forEach((text) => put(complaintPhrases, text, "C00"));

/** Bare words of a family: not enough to name a position. */
export const FAMILY_WORD: Readonly<Record<string, string>> = {
  bearing: "ball bearing", seal: "seal", oring: "seal", gear: "gear", spring: "spring", washer: "washer or shim", shim: "washer or shim", screw: "screw", gasket: "seal",
};

export const kindsOf = new Map<string, readonly ReelKind[]>(positions.map((row) => [row.position, row.reel_kinds]));
export const familyOf = new Map<string, string>(positions.map((row) => [row.position, row.family]));

/** Every single word of ours, against which a misspelling is measured. */
export const knownWords: ReadonlySet<string> = new Set(
  [positionPhrases, modePhrases, actionPhrases, says, complaintPhrases].flatMap((map) => [...map.keys()].flatMap((key) => key.split(" ")))
    .concat(Object.keys(FAMILY_WORD)).filter((word) => /^[a-z]{3,}$/.test(word)),
);
/** Words of positions alone: proof that a note speaks of a reel. */
export const partWords: ReadonlySet<string> = new Set([...positionPhrases.keys()].flatMap((key) => key.split(" ")));
