import { requireWhole } from "./requirement.ts";

/** A source of uniform numbers in [0, 1). It is always passed in: whoever owns the seed owns the result. */
export type Random = () => number;

const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

/**
 * 32-bit words of xoshiro128** 1.1 (Blackman & Vigna 2021, ACM Transactions on Mathematical Software 47(4):36).
 *
 * @param state four unsigned 32-bit words, not all zero
 * @returns a function that gives the next word, a whole number in 0…2³² − 1
 * @throws {RangeError} if the state is not four whole numbers or is all zero
 * @example
 * xoshiroWords([1, 2, 3, 4])(); // => 11520
 */
export function xoshiroWords(state: readonly number[]): () => number {
  state.forEach((word) => { requireWhole("xoshiroWords", "state", word); });
  if (state.length !== 4 || state.every((word) => word === 0)) {
    throw new RangeError(`xoshiroWords: state must be four words, not all 0, got ${state.join(", ")}`);
  }
  let [a, b, c, d] = state as [number, number, number, number];
  return () => {
    const word = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a; d ^= b; b ^= c; a ^= d; c ^= shifted;
    d = rotated(d, 11);
    return word;
  };
}

/** Weyl steps through the 32-bit finaliser of MurmurHash3 (Appleby, public domain): unlike seeds far apart. */
function seedWords(seed: number): number[] {
  let counter = (seed ^ Math.imul(Math.floor(seed / 2 ** 32), 0x85ebca6b)) >>> 0;
  return [0, 1, 2, 3].map(() => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let word = Math.imul(counter ^ (counter >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return (word ^ (word >>> 16)) >>> 0;
  });
}

/**
 * Uniform numbers in [0, 1) with 53 random bits, the same for the same seed on every machine.
 *
 * @param seed a whole number of at least 0
 * @returns a source to pass to the draws of `draws.ts`
 * @throws {RangeError} if `seed` is not a whole number of at least 0
 * @example
 * seededRandom(7)() === seededRandom(7)(); // => true
 */
export function seededRandom(seed: number): Random {
  requireWhole("seededRandom", "seed", seed);
  const word = xoshiroWords(seedWords(seed));
  return () => ((word() >>> 5) * 2 ** 26 + (word() >>> 6)) / 2 ** 53;
}
