/** A model's name in its pieces; two names with other sizes are never one model. */
export interface ModelName {
  /** Letters before the first digit, bare of case, spaces, hyphens and accents. */
  readonly base: string;
  /** All numbers, in order, such as `40` or `7 8`; "" when none is written. */
  readonly size: string;
  /** Letters behind the first number, bare. */
  readonly tail: string;
}

/** Words behind the size that name the hand, the drag or a part along with the reel, not another model. */
const BESIDE = /\b(?:lh|rh|left|right|left hand|right hand|star|lever|wt|weight|spare spool|with spare spool|spool)\b/g;

/** A word without case, accents, spaces and marks. */
export const bare = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");

/**
 * The pieces of a model's name.
 *
 * @param beside false leaves words such as "left" or "spare spool" out of the tail
 * @example
 * modelName("Slip-Dene45 LH") // => { base: "slipdene", size: "45", tail: "lh" }
 */
export function modelName(written: string, beside = true): ModelName {
  const text = written.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase(), at = text.search(/\d/);
  const head = at === -1 ? text : text.slice(0, at), rest = at === -1 ? "" : text.slice(at);
  const words = (part: string) => (beside ? part : part.replace(/\d(?=[a-z])/g, "$& ").replace(BESIDE, " "));
  return { base: bare(words(head)), size: (rest.match(/\d+(?:\.\d+)?/g) ?? []).join(" "), tail: bare(words(rest).replace(/\d+(?:\.\d+)?/g, " ")) };
}
