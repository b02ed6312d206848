/** A complaint with the ways customers say it. */
export interface ComplaintWords { readonly code: string; readonly complaint: string; readonly reel_kinds: readonly string[]; readonly spellings: readonly string[] }

/** Routine work: no complaint at all. */
export const ROUTINE = "C27";

const plain = (text: string) => ` ${text.toLowerCase().replace(/['’]/g, "").replace(/[^a-z0-9]+/g, " ").trim()} `;

/**
 * The complaint named first in a text; of two that begin at one place, the longer. Words that name none give null.
 *
 * @example
 * complaintOf("Slips now and then, bail sticks", [
 *   { code: "C02", complaint: "Slips", reel_kinds: [], spellings: ["slips now and then"] }, { code: "C12", complaint: "Bail", reel_kinds: [], spellings: ["bail sticks"] },
 * ]); // => "C02"
 */
export function complaintOf(text: string, complaints: readonly ComplaintWords[]): string | null {
  const said = plain(text);
  let best: { readonly at: number; readonly length: number; readonly code: string } | null = null;
  for (const { code, complaint, spellings } of complaints) {
    for (const spelling of [complaint, ...spellings]) {
      const words = plain(spelling), at = said.indexOf(words);
      if (at >= 0 && (best === null || at < best.at || (at === best.at && words.length > best.length))) best = { at, length: words.length, code };
    }
  }
  return best?.code ?? null;
}
