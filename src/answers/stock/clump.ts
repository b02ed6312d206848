/** Pieces that go at once (on one ticket, or with the reels that came together), squared and added up. */
export interface Clumps {
  readonly pieces: number;
  readonly squares: number;
}

/** A line's own record counts beside this many pieces of all lines: our own choice, so that one large batch is no habit. */
const SHARED_PIECES = 10;

/**
 * How many pieces go at once, as demand feels it: squares over pieces, so that 1 is one by one and 2 is in pairs.
 *
 * Demand in clumps varies more than demand one by one by exactly this factor (compound Poisson). Lines with little use
 * borrow from all lines.
 *
 * @returns one number a line, never below 1
 */
export function clumpSizes(lines: readonly Clumps[]): number[] {
  const pieces = lines.reduce((sum, line) => sum + line.pieces, 0), squares = lines.reduce((sum, line) => sum + line.squares, 0);
  const shared = pieces === 0 ? 1 : squares / pieces;
  return lines.map((line) => Math.max(1, (line.squares + SHARED_PIECES * shared) / (line.pieces + SHARED_PIECES)));
}
