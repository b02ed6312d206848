import { kindsOf } from "./lexicon.ts";
import type { Mark } from "./marks.ts";
import type { ReelKind } from "../vocabulary-tables.ts";

/** The kinds of reel that have all the parts with a sure place; null where no such part is named. */
function possibleKinds(said: readonly Mark[]): readonly ReelKind[] | null {
  let kinds: readonly ReelKind[] | null = null;
  for (const { kind, positions: [position], corrected, ambiguous } of said) {
    if (kind !== "part" || position === undefined || corrected || ambiguous) continue;
    const own = kindsOf.get(position) ?? [];
    kinds = kinds === null ? own : kinds.filter((one) => own.includes(one));
  }
  return kinds;
}

const placed = (said: readonly Mark[]) => said.filter(({ kind, positions }) => kind === "part" && positions.length > 0).length;
/** So many words that name a part on one kind of reel make a guess at the kind worth asking about. */
const ENOUGH = 3;
const TRIED: readonly ReelKind[] = ["spinning", "conventional", "fly"];

/** The readings of a note as they are on one kind of reel. */
type Look = (kind: ReelKind | null) => readonly Mark[];

/**
 * The readings of a note whose kind of reel nothing else says. Its parts prove the kind where all of them are of one kind alone, or of reels with a
 * turning spool. Else it is read as the kind on which most of its words name a part, and what only that kind makes a part of is a guess, to be asked.
 */
export function withoutKind(look: Look): { readonly said: readonly Mark[]; readonly kind: ReelKind | null } {
  const first = look(null), possible = possibleKinds(first) ?? TRIED, [only] = possible;
  if (possible.length === 1 && only) return { said: look(only), kind: only };
  if (possible.length > 0 && possible.every((kind) => kind === "conventional" || kind === "baitcaster")) return { said: look("conventional"), kind: "conventional" };
  const pair = first.some(({ phrase, plural }) => phrase === "spool bearing" && plural);
  let said = first, kind: ReelKind | null = null;
  for (const tried of pair ? ["conventional" as const, ...TRIED] : TRIED) {
    if (!possible.includes(tried)) continue;
    const here = look(tried);
    if (placed(here) >= ENOUGH && placed(here) > placed(said)) [said, kind] = [here, tried];
  }
  const sure = new Set(first.filter(({ positions }) => positions.length > 0).map(({ from, positions }) => `${from} ${positions.join()}`));
  return { said: said.map((mark) => (mark.kind === "part" && mark.positions.length > 0 && !sure.has(`${mark.from} ${mark.positions.join()}`) ? { ...mark, guessed: true } : mark)), kind };
}
