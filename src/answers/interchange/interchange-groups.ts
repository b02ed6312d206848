import { bearingClosure, bearingSize } from "./bearing-size.ts";
import { oRingSize } from "./o-ring-size.ts";
import { replacementChains } from "./replacement-chains.ts";

/** What decides whether two parts are the same thing. */
export type PartIdentity = {
  readonly part_no: string;
  readonly name: string | null;
  readonly family: string | null;
  readonly size: string | null;
  readonly material: string | null;
  readonly replaces: string | null;
};

/** Group of one part number; `refused` is the reason why the line cannot be planned, else null. */
export interface InterchangeRow {
  readonly part_no: string;
  readonly interchange: string;
  readonly refused: string | null;
}

export const ASSORTED = "Several parts under one number: split first, give each its own number, then it can be planned.";
const MIXED = /\b(assorted|assortment|mixed|various|per model)\b|[-_ ]mix$/i;

/** What the part is by its size, or null when only its number says so. */
function sizeKey({ family, size, name, part_no, material }: PartIdentity): string | null {
  if (family === "ball bearing") {
    const written = bearingSize(size ?? "") ?? bearingSize(name ?? "");
    return written && `bearing ${written} ${bearingClosure(`${name ?? ""} ${part_no} ${material ?? ""}`)}`;
  }
  const ring = family === "seal" && size !== null && material !== null ? oRingSize(size) : null;
  return ring && `O-ring ${ring} ${(material ?? "").trim().toUpperCase()}`;
}

const refusal = (part: PartIdentity): string | null =>
  MIXED.test(part.name ?? "") || MIXED.test(part.part_no) ? ASSORTED : null;

/**
 * The group of every part number: parts of one `replaces` chain, ball bearings of one size and closure, O-rings of one
 * size and material are the same thing. What a chain's newest number is, the older ones are too. A number that only a
 * `replaces` names has a row as well, because old findings name it. Assorted lines stay alone and carry a reason.
 *
 * @returns one row a part number, in the order of the numbers
 */
export function interchangeGroups(parts: readonly PartIdentity[]): InterchangeRow[] {
  const known = new Map(parts.map((part) => [part.part_no, part]));
  return replacementChains(parts).flatMap((chain) => {
    const members = chain.map((part_no) => known.get(part_no)).filter((part) => part !== undefined);
    const key = members.map(sizeKey).find((found) => found !== null) ?? chain[0] ?? "";
    return chain.map((part_no) => {
      const part = known.get(part_no), refused = part ? refusal(part) : null;
      return { part_no, interchange: refused === null ? key : part_no, refused };
    });
  }).sort((a, b) => (a.part_no < b.part_no ? -1 : 1));
}
