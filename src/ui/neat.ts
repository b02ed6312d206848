/**
 * A sentence that never breaks between a number and its per cent sign, with thousands as the reader's language writes them.
 *
 * @example
 * neat("34 of 1\u202f239 (3 %)", "en-GB"); // => "34 of 1,239 (3\u00a0%)"
 */
export function neat(sentence: string, locale?: string): string {
  const group = new Intl.NumberFormat(locale).formatToParts(1000).find(({ type }) => type === "group")?.value ?? "";
  return sentence.replaceAll(" %", "\u00a0%").replace(/(\d)\u202f(?=\d{3}\b)/g, `$1${group}`);
}
