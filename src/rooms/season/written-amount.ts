/**
 * An amount as somebody writes it, with a point or a comma; null for nothing, NaN for what is no amount, so that it is refused and not
 * taken for nothing.
 *
 * @example
 * writtenAmount("7,5"); // => 7.5
 * writtenAmount(" "); // => null
 */
export function writtenAmount(text: string): number | null {
  const written = text.trim().replace(",", ".");
  if (written === "") return null;
  return /^\d+(\.\d+)?$/.test(written) ? Number(written) : NaN;
}
