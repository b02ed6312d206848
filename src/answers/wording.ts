import { writtenNumber } from "../way-of-writing.ts";

/** A number as an owner would say it: whole from ten on, one decimal from one on, else two; no trailing zeros. */
export const number = (value: number): string => writtenNumber(value, 0, Math.abs(value) >= 10 ? 0 : Math.abs(value) >= 1 ? 1 : 2);

/** A number with exactly so many decimals. */
export const decimal = (value: number, digits: number): string => writtenNumber(value, digits, digits);

const LONGEST_SAID = 60;

/** A value out of a JSON text as it may stand in a sentence, whatever it is; an object that calls itself a text is none. */
export function saidInText(value: unknown): string {
  const text = (typeof value === "string" ? value : JSON.stringify(value) ?? "nothing").replace(/\p{Cc}/gu, " ");
  return text.length > LONGEST_SAID ? `${text.slice(0, LONGEST_SAID)}…` : text;
}

/** A price with its hundredths. */
export const price = (value: number): string => decimal(value, 2);

/** Money in whole hundredths, so that sums show no trace of binary fractions. */
export const money = (value: number): number => Math.round(value * 100) / 100;

/** `1 number`, `3 numbers`; words on a consonant and -y take -ies. */
export function pieces(count: number, word: string): string {
  return `${number(count)} ${count === 1 ? word : /[^aeiou]y$/.test(word) ? `${word.slice(0, -1)}ies` : `${word}s`}`;
}
