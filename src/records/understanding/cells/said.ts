import { plainWords } from "../../vocabulary.ts";

type Water = "salt" | "brackish" | "fresh";

const WATERS: readonly (readonly [Water, readonly string[]])[] = [
  ["salt", ["sea", "salt", "saltwater", "ocean", "surf", "offshore", "marine", "s", "sw"]],
  ["brackish", ["brackish", "estuary", "tidal", "b"]],
  ["fresh", ["fresh", "freshwater", "lake", "lakes", "river", "rivers", "stream", "pond", "ponds", "canal", "reservoir", "f", "fw"]],
];

/**
 * The waters an answer in words names, the saltiest first.
 *
 * @example
 * watersSaid("lake + estuary") // => ["brackish", "fresh"]
 * watersSaid("both") // => ["salt", "fresh"]
 */
export function watersSaid(text: string): Water[] {
  const words = new Set(plainWords(text).split(" "));
  const named = WATERS.flatMap(([water, spellings]) => (spellings.some((word) => words.has(word)) ? [water] : []));
  return named.length === 0 && words.has("both") ? ["salt", "fresh"] : named;
}

/**
 * The water an answer in words names; null when it names none, or several.
 *
 * @example
 * waterSaid("Sea, from rocks") // => "salt"
 * waterSaid("lake + estuary") // => null
 */
export function waterSaid(text: string): Water | null {
  const [named = null, other] = watersSaid(text);
  return other === undefined ? named : null;
}

const RINSE: readonly (readonly [string, RegExp])[] = [
  // In fresh water there is no need to rinse, which is not the same as never rinsing.
  ["", /\bno need\b|\bn a\b|\bnot needed\b/],
  ["sometimes", /\b(?:some|smtimes|sometimes|mostly|usually|often|now and then|when i remember)\b/],
  ["never", /^(?:n|no|never|nope|nie)\b/],
  ["always", /^(?:y|yes|always|every|j|ja|x)\b/],
];

/** How often somebody says he rinses; null when the answer tells nothing. */
export function rinseSaid(text: string): string | null {
  const words = plainWords(text), found = RINSE.find(([, pattern]) => pattern.test(words));
  return found?.[0] === undefined || found[0] === "" ? null : found[0];
}

/**
 * A count in words; null for answers that name no number (`lots`).
 *
 * @example
 * countSaid("~30") // => 30
 */
export function countSaid(text: string): number | null {
  const found = /^(?:~|ca\.?|about|approx\.?|around|abt)?\s*(\d{1,6}(?:[.,]\d{1,2})?)\s*(?:ish|\+|times|trips|days?|x)?$/i.exec(text.trim());
  return found ? Number((found[1] ?? "").replace(",", ".")) : null;
}

const NOTHING = new Set(["", "?", "-", "--", "n a", "na", "none", "nil", "unknown", "dont know", "don t know", "not sure", "no idea", "tbc", "tbd"]);

/** True for cells that say that nothing is known. */
export const saysNothing = (text: string): boolean => /^[?\-–—.\s]*$/.test(text) || NOTHING.has(plainWords(text));
