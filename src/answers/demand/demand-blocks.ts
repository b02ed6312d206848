import { blockDays } from "./four-weeks.ts";

/** How a reel came in: `planned`, `complaint`, or null where nobody wrote it. */
export type Opening = string | null;

/**
 * Pieces in one block of one group, null for what has no part number that can be told; `squares` are those that left at
 * once, squared and added up.
 */
export type UseBlockRow = {
  readonly interchange: string | null;
  readonly opening: Opening;
  readonly block: number;
  readonly pieces: number;
  readonly wanted: number;
  readonly waiting: number;
  readonly squares: number;
};
export type TicketBlockRow = { readonly opening: Opening; readonly block: number; readonly tickets: number };

/** Counts, newest block first. */
export type Counts = readonly number[];

/** Pieces of one group by block; `by_opening` is in the order of the openings of `DemandBlocks`. */
export interface UseBlocks {
  readonly pieces: Counts;
  readonly wanted: Counts;
  readonly squares: Counts;
  readonly by_opening: readonly Counts[];
}

/** What was used and what came in, in blocks of four weeks, newest first. */
export interface DemandBlocks {
  /** Days of records in each block. */
  readonly days: Counts;
  /** Days between the newest ticket and the day asked for. */
  readonly gap_days: number;
  /** Ways in which reels came in, and the reels of each. */
  readonly openings: readonly Opening[];
  readonly tickets: readonly Counts[];
  readonly use: ReadonlyMap<string, UseBlocks>;
  /** Pieces without a part number that can be told: no group counts them. */
  readonly unmapped: Counts;
}

const zeros = (length: number): number[] => new Array<number>(length).fill(0);

interface Counting { pieces: number[]; wanted: number[]; squares: number[]; by_opening: number[][] }

const counting = (length: number, openings: number): Counting =>
  ({ pieces: zeros(length), wanted: zeros(length), squares: zeros(length), by_opening: Array.from({ length: openings }, () => zeros(length)) });

/** The use of a group that was never used. */
export const unused = ({ days, openings }: Pick<DemandBlocks, "days" | "openings">): UseBlocks => counting(days.length, openings.length);

function add(list: number[] | undefined, at: number, amount: number): void {
  if (list !== undefined && at < list.length) list[at] = (list[at] ?? 0) + amount;
}

/**
 * Rows of `use-by-block.sql` and `tickets-by-block.sql` as lists by block.
 *
 * @param days days of records, from the first ticket to the newest, both counted
 * @param gap_days days since the newest
 */
export function demandBlocks(use: readonly UseBlockRow[], tickets: readonly TicketBlockRow[], days: number, gap_days: number): DemandBlocks {
  const lengths = blockDays(days), openings = [...new Set(tickets.map((row) => row.opening))], at = new Map(openings.map((opening, i) => [opening, i]));
  const used = new Map<string, Counting>(), unmapped = zeros(lengths.length), came = openings.map(() => zeros(lengths.length));
  for (const { opening, block, tickets: count } of tickets) add(came[at.get(opening) ?? -1], block, count);
  for (const row of use) {
    if (row.interchange === null) {
      add(unmapped, row.block, row.pieces);
      continue;
    }
    let group = used.get(row.interchange);
    if (group === undefined) used.set(row.interchange, group = counting(lengths.length, openings.length));
    add(group.by_opening[at.get(row.opening) ?? -1], row.block, row.pieces);
    add(group.pieces, row.block, row.pieces);
    add(group.wanted, row.block, row.wanted);
    add(group.squares, row.block, row.squares);
  }
  return { days: lengths, gap_days, openings, tickets: came, use: used, unmapped };
}
