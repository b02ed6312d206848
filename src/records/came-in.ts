import { complaints, complaintShares, plainWords } from "./vocabulary.ts";

export type CameIn = "planned" | "complaint" | "accident" | "immersion";

const ROUTINE = "C27", WATER_INSIDE = "C17", DAMAGE = "C26";
/** Of the words for water inside, those that say how it got there. */
const WENT_UNDER = new Set(["dunked", "dropped in sea", "went under", "flooded"]);

function kindOf(code: string, spelling: string): CameIn {
  if (code === ROUTINE) return "planned";
  if (code === DAMAGE) return "accident";
  return code === WATER_INSIDE && WENT_UNDER.has(spelling) ? "immersion" : "complaint";
}

/** Longest first, so that "dropped in sea" is not read as "dropped". */
const SPELLINGS = complaints
  .flatMap(({ code, spellings }) => spellings.map((spelling) => ({ words: plainWords(spelling), kind: kindOf(code, spelling) })))
  .sort((a, b) => b.words.length - a.words.length);

/** Something wrong beside a routine word ("service, grinding") is what the reel came in for. */
const WEIGHT: readonly CameIn[] = ["immersion", "accident", "complaint", "planned"];

/** Words that say nothing about what is wrong; beside them a routine word stands alone. */
const FILLERS = new Set("a all and as before complaint complaints due full fully just need needs no none of only please season the usual".split(" "));
const isFiller = (word: string) => word === "" || FILLERS.has(word) || /^\d+$/.test(word);

/** Places of the seals that the trade's list of causes names for water inside. */
export const waterSeals: ReadonlySet<string> = new Set(complaintShares.filter(({ code }) => code === WATER_INSIDE).flatMap(({ positions }) => positions));

const WATER_WORDS = complaints.filter(({ code }) => code === WATER_INSIDE).flatMap(({ spellings }) => spellings.map((spelling) => ` ${plainWords(spelling)} `));

/**
 * True when the customer's words say that water got in.
 *
 * @example
 * saysWaterInside("service, water came out") // => true
 */
export function saysWaterInside(complaint: string): boolean {
  const words = ` ${plainWords(complaint)} `;
  return WATER_WORDS.some((spelling) => words.includes(spelling));
}

const guesses = new Map<string, CameIn | null>();

function guess(complaint: string): CameIn | null {
  let rest = ` ${plainWords(complaint)} `;
  const found = new Set<CameIn>();
  for (const { words, kind } of SPELLINGS) {
    if (!rest.includes(` ${words} `)) continue;
    found.add(kind);
    rest = rest.replaceAll(` ${words} `, "  ");
  }
  const kind = WEIGHT.find((one) => found.has(one)) ?? null;
  // "service, drag odd" names something wrong in words that we do not know.
  return kind === "planned" && !rest.split(" ").every(isFiller) ? null : kind;
}

/**
 * Why a reel came in, guessed from what the customer says; null when the words say nothing that we know.
 *
 * @example
 * cameInFrom("winter service") // => "planned"
 * cameInFrom("service, feels odd") // => null
 */
export function cameInFrom(complaint: string): CameIn | null {
  const before = guesses.get(complaint);
  if (before !== undefined) return before;
  const kind = guess(complaint);
  if (guesses.size < 10_000) guesses.set(complaint, kind);
  return kind;
}
