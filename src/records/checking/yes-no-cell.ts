import { Wrong, quoted } from "./wrong.ts";

const YES = new Set(["y", "yes", "1", "x", "j", "ja", "true", "t", "✓", "✔"]);
const NO = new Set(["n", "no", "0", "-", "–", "nein", "false", "f"]);

/**
 * Reads a yes or no; a blank cell is unknown and never comes here.
 *
 * @example
 * yesNoCell("Y") // => true
 * yesNoCell("-") // => false
 */
export function yesNoCell(text: string): boolean | Wrong {
  const word = text.toLowerCase();
  if (YES.has(word)) return true;
  if (NO.has(word)) return false;
  return new Wrong(`${quoted(text)} is neither yes nor no; write one of the two`);
}
