export interface StockCount {
  readonly on_hand: number;
  readonly on_order: number | null;
}

const NUMBER = "(\\d+(?:\\.\\d+)?)";
const PACKS = new RegExp(`^${NUMBER}\\s*(?:pk|pks|packs?|pkts?|bags?|box(?:es)?)\\b\\.?(?:\\s*\\+\\s*${NUMBER})?$`, "i"), PIECES = new RegExp(`^(?:~|ca\\.?)?\\s*${NUMBER}\\s*(?:pcs?|pieces|ea|off)?\\.?$`, "i");
const ON_ORDER = new RegExp(`\\(?\\s*\\+\\s*${NUMBER}\\s*(?:o\\/o|on order|ordered|coming)\\.?\\s*\\)?`, "i");

/**
 * Pieces on the shelf, with packs counted out: `3 pk + 8` of packs of ten is 38; `1 (+4 o/o)` is one, and four under way.
 *
 * @param pack pieces in a pack; null when it is not known
 * @returns null when the text is no count (`a bag`), or names packs of unknown size
 * @example
 * stockCount("3 pk + 8", 10) // => { on_hand: 38, on_order: null }
 */
export function stockCount(text: string, pack: number | null): StockCount | null {
  const coming = ON_ORDER.exec(text), on_order = coming ? Number(coming[1]) : null, shelf = text.replace(ON_ORDER, "").trim();
  const pieces = PIECES.exec(shelf);
  if (pieces) return { on_hand: Number(pieces[1]), on_order };
  const packs = PACKS.exec(shelf);
  return packs && pack !== null ? { on_hand: Number(packs[1]) * pack + Number(packs[2] ?? 0), on_order } : null;
}

const THREE = /(\d+(?:[.,]\d+)?)\s*[x×*]\s*(\d+(?:[.,]\d+)?)(?:\s*[x×*]\s*(\d+(?:[.,]\d+)?))?/i, DASH = /(?:^|\s)-(\d{3})\b/;

/**
 * The size a part's name and size cell speak of, as `parts.size` has it: bore before outside, an O-ring's dash number before
 * its rounded measures; null when they speak of none.
 *
 * @example
 * partSize("LR brg", "7x4x2.5") // => "4x7x2.5"
 * partSize("-014 oring", "12.4x1.8") // => "AS568-014"
 */
export function partSize(name: string, size: string): string | null {
  const dash = /\bo-?\s?ring/i.test(name) ? DASH.exec(name)?.[1] : undefined;
  if (dash !== undefined) return `AS568-${dash}`;
  const found = THREE.exec(size) ?? THREE.exec(name);
  if (!found) return null;
  const [one = "", other = "", width] = found.slice(1).map((part: string | undefined) => part?.replace(",", "."));
  if (width === undefined) return `${one}x${other}`;
  return Number(one) > Number(other) ? `${other}x${one}x${width}` : `${one}x${other}x${width}`;
}
