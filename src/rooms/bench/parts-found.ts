import type { PartKnown } from "../../answers/bench/bench.ts";
import { number } from "../../ui/format.ts";

const plain = (text: string) => text.toLowerCase().replace(/[×*]/g, "x").replace(/\s*x\s*/g, "x").replace(/[^a-z0-9.]+/g, " ").trim();
const MOST = 6;

/**
 * Parts that answer what was written: by number, size or words of the name; with nothing written, those known to sit at the
 * position. Parts of the position come first.
 */
export function partsFound(parts: readonly PartKnown[], written: string, position: string): readonly PartKnown[] {
  const words = plain(written).split(" ").filter((word) => word !== "");
  const sits = (part: PartKnown) => part.positions.includes(position);
  const fits = parts.filter((part) => {
    if (words.length === 0) return sits(part);
    const text = plain(`${part.part_no} ${part.size ?? ""} ${part.name ?? ""}`);
    return words.every((word) => text.includes(word));
  });
  return [...fits.filter(sits), ...fits.filter((part) => !sits(part))].slice(0, MOST);
}

/** A part as the bench reads it. */
export function partWords({ part_no, name, size, on_hand }: PartKnown): string {
  const said = [name ?? size, on_hand === null ? "shelf not known" : `${number(on_hand)} on the shelf`].filter((word) => word !== null);
  return `${part_no}: ${said.join(", ")}`;
}
