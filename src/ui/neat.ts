/**
 * A sentence that never breaks between a number and its per cent sign.
 *
 * @example
 * neat("34 of 239 (14 %)"); // => "34 of 239 (14\u00a0%)"
 */
export const neat = (sentence: string): string => sentence.replaceAll(" %", "\u00a0%");
