import { plainWords } from "../vocabulary.ts";

/** Splits a text into as many pieces as there are reels; null when it has another number of pieces. */
export function shares(text: string, reels: number): string[] | null {
  for (const sign of [/\s*;\s*/, /\s+\/\s+/, /\s*\+\s*/, /\s*\n\s*/, /\s+and\s+/i, /\s*,\s*/]) {
    const pieces = text.split(sign).filter((piece) => piece !== "");
    if (pieces.length === reels) return pieces;
  }
  return null;
}

/** The numbers of several jobs in one cell (`1053/1054`); a short second one is the end of the first (`1053/54`). */
export function ticketNumbers(text: string): string[] {
  const pieces = text.split(/\s*[/&+,]\s*/).filter((piece) => piece !== "");
  if (pieces.length < 2 || !pieces.every((piece) => /\d/.test(piece) && piece.length >= 2 && piece.length <= 12)) return [text];
  const [first = ""] = pieces;
  return pieces.map((piece) => (/^\d+$/.test(piece) && piece.length < first.length ? first.slice(0, first.length - piece.length) + piece : piece));
}

const GROUPS = ["club", "charter", "boat", "hire", "school", "association", "fleet", "team"];

/**
 * The batch a customer's cell speaks of (`Club (3 of 6)`), without the customer's name; null when it speaks of none.
 *
 * @param day day the reels came in, so that next year's batch of the same club is another
 * @example
 * batchIn("Club (3 of 6)", "2025-04-04") // => "club 2025-04-04"
 */
export function batchIn(text: string, day: string): string | null {
  if (!/\b\d{1,2}\s*(?:of|\/)\s*\d{1,2}\b/i.test(text)) return null;
  const words = plainWords(text).split(" ");
  return `${GROUPS.find((group) => words.includes(group)) ?? "batch"} ${day}`;
}
