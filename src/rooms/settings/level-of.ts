/** A level cannot be read as written. */
export class NoLevel extends Error {
  override readonly name = "NoLevel";
}

/**
 * A level in per cent as somebody types it, as a share.
 *
 * @throws {NoLevel} with a sentence for the owner
 * @example
 * levelOf(" 97,5 % "); // => 0.975
 */
export function levelOf(written: string): number {
  const text = written.trim().replace(/\s*%$/, "").replace(",", "."), value = Number(text);
  if (!/^\d{1,2}(\.\d)?$/.test(text) || value < 50) throw new NoLevel(`“${written.trim()}” is no level. Write 50 to 99.9, such as 95.`);
  return Math.round(value * 10) / 1000;
}
