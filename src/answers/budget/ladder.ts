/** How a group can be bought: the shelf it starts from, then rung by rung; the first rung is the smallest order, the others one pack. */
export interface Ladder {
  /** Pieces there and under way, less what open jobs wait for; may be below nothing. */
  readonly position: number;
  readonly first: number;
  readonly pack: number;
  readonly unit_cost: number;
}

/** Rungs to buy so that `level` pieces are there; 0 when they are. */
export function rungFor({ position, first, pack }: Ladder, level: number): number {
  const short = level - position;
  if (short <= 0) return 0;
  return short <= first ? 1 : 1 + Math.ceil((short - first) / pack);
}

/** Pieces bought with so many rungs. */
export const piecesOf = ({ first, pack }: Ladder, rungs: number): number => (rungs === 0 ? 0 : first + (rungs - 1) * pack);

/** What raising from one rung to another costs. */
export const costOf = (ladder: Ladder, from: number, to: number): number => (piecesOf(ladder, to) - piecesOf(ladder, from)) * ladder.unit_cost;
