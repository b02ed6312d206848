/** A rate cannot be read as written. */
export class NoRate extends Error {
  override readonly name = "NoRate";
}

/**
 * A rate as somebody types it; nothing typed is null, not nought.
 *
 * @throws {NoRate} with a sentence for the owner
 * @example
 * rateOf(" 54,50 "); // => 54.5
 * rateOf(""); // => null
 */
export function rateOf(written: string): number | null {
  const text = written.trim().replace(",", ".");
  if (text === "") return null;
  if (!/^\d{1,6}(\.\d{1,2})?$/.test(text)) throw new NoRate(`“${written.trim()}” is not an amount. Write it in digits, such as 54 or 54.50.`);
  return Number(text);
}
