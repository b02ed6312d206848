import { between, BLOCK_DAYS, YEAR_BLOCKS } from "./four-weeks.ts";

/** Reels come in groups, so their counts swing about twice as much as single ones would. */
const TOGETHER = 2;
/** Records that begin after the new-year holiday and end before it are still a full year. */
const CLOSED_DAYS = 7;

/** How busy each of the thirteen blocks of a year is against the year's mean. */
export interface SeasonProfile {
  /** By block counted back from the origin, modulo 13; all 1 while no full year is known. */
  readonly index: readonly number[];
  /** Full years it rests on. */
  readonly years: number;
}

/** Full years of records before the block `origin`. */
export function fullYears(days: readonly number[], origin: number): number {
  return Math.floor((between(days, origin, days.length) + CLOSED_DAYS) / 365);
}

const FLAT: readonly number[] = new Array<number>(YEAR_BLOCKS).fill(1);

/** A year's shape goes round: each block leans on its neighbours. */
const smoothed = (list: readonly number[]): number[] =>
  list.map((value, at) => 0.5 * value + 0.25 * ((list[(at + 12) % YEAR_BLOCKS] ?? value) + (list[(at + 1) % YEAR_BLOCKS] ?? value)));

/**
 * The season as full years before `origin` showed it, drawn toward 1 by as much as its counts swing by chance.
 *
 * Method of moments (as the shrinkage of Morris 1983, JASA 78:47-55): what the thirteen indices differ beyond chance,
 * over what they differ in all.
 *
 * @param counts what came in by block, newest first
 * @param origin blocks before it (their number is lower) are not known yet
 */
export function seasonProfile(counts: readonly number[], days: readonly number[], origin: number): SeasonProfile {
  const years = fullYears(days, origin), all = between(counts, origin, origin + years * YEAR_BLOCKS);
  if (years < 1 || all === 0) return { index: FLAT, years };
  const usual = all / between(days, origin, origin + years * YEAR_BLOCKS);
  const raw = FLAT.map((_, at) => {
    let count = 0, length = 0;
    for (let block = origin + at; block < Math.min(origin + years * YEAR_BLOCKS, counts.length); block += YEAR_BLOCKS) {
      count += counts[block] ?? 0;
      length += days[block] ?? 0;
    }
    return length === 0 ? 1 : count / (length * usual);
  });
  const chance = (TOGETHER * YEAR_BLOCKS) / all, spread = raw.reduce((sum, one) => sum + (one - 1) ** 2, 0) / (YEAR_BLOCKS - 1);
  const kept = spread === 0 ? 0 : Math.max(0, 1 - chance / spread), even = smoothed(raw);
  return { index: FLAT.map((_, at) => 1 + kept * (kept * (raw[at] ?? 1) + (1 - kept) * (even[at] ?? 1) - 1)), years };
}

/**
 * Index of the days that begin `from` days after the origin and last `length` days, at least four weeks, so that single
 * busy days are no season.
 */
export function indexAhead({ index }: SeasonProfile, from: number, length: number): number {
  const start = from / BLOCK_DAYS, blocks = Math.max(BLOCK_DAYS, length) / BLOCK_DAYS, end = start + blocks;
  let sum = 0;
  for (let block = Math.floor(start); block < end; block += 1) {
    const share = Math.min(end, block + 1) - Math.max(start, block);
    // The block after the origin was last seen as the oldest of the newest year.
    sum += share * (index[(((-1 - block) % YEAR_BLOCKS) + YEAR_BLOCKS) % YEAR_BLOCKS] ?? 1);
  }
  return sum / blocks;
}
