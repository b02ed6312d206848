import type { Counts, DemandBlocks, UseBlocks } from "./demand-blocks.ts";
import { between, YEAR_BLOCKS } from "./four-weeks.ts";
import { fullYears, indexAhead, seasonProfile } from "./season-profile.ts";
import type { SeasonProfile } from "./season-profile.ts";

/** A group's mix of openings counts beside this many pieces of the shop's mix: our own choice. */
const SHARED_PIECES = 5;
/** Growth of intake is drawn toward none as if this many more reels had come in each year: our own choice. */
const CALM_TICKETS = 20;
const FEWEST_BLOCKS = 4;
/** Growth beyond a half up or a third down in a year is not carried on. */
const GROWTH_LIMITS = [2 / 3, 1.5] as const;

/** Share of a group's pieces that each way of coming in takes, in the order of the openings, adding up to 1. */
export type Mix = readonly number[];

/** The records as they stood before the block `origin` began: lower blocks are not known yet. */
export class OriginView {
  /** Two whole years, else one, else all there is: the blocks from `origin` up to, not with, `end`. */
  readonly end: number;
  readonly years: number;
  /** Of each opening: its season, its growth, and its share of the reels that came in. */
  readonly profiles: readonly SeasonProfile[];
  readonly growth: Counts;
  readonly #shop: Mix;

  constructor(readonly blocks: DemandBlocks, readonly origin: number) {
    this.years = fullYears(blocks.days, origin);
    this.end = this.years >= 1 ? origin + Math.min(2, this.years) * YEAR_BLOCKS : blocks.days.length;
    this.profiles = blocks.tickets.map((tickets) => seasonProfile(tickets, blocks.days, origin));
    this.growth = blocks.tickets.map((tickets) => this.#growthOf(tickets));
    const came = blocks.tickets.map((tickets) => between(tickets, origin, this.end)), all = came.reduce((sum, count) => sum + count, 0);
    this.#shop = came.map((count) => (all === 0 ? 1 / came.length : count / all));
  }

  /** Reels of one way of coming in, the last year against the one before, under the root: half of it is believed to go on. */
  #growthOf(tickets: Counts): number {
    const { origin } = this, length = Math.min(YEAR_BLOCKS, this.blocks.days.length - 1 - origin - YEAR_BLOCKS);
    if (length < FEWEST_BLOCKS) return 1;
    const now = between(tickets, origin, origin + length), before = between(tickets, origin + YEAR_BLOCKS, origin + YEAR_BLOCKS + length);
    const ratio = (now + CALM_TICKETS) / (before + CALM_TICKETS);
    return Math.sqrt(Math.min(GROWTH_LIMITS[1], Math.max(GROWTH_LIMITS[0], ratio)));
  }

  mix({ pieces, by_opening }: UseBlocks): Mix {
    const { origin, end } = this, own = between(pieces, origin, end);
    return this.#shop.map((shop, i) => (between(by_opening[i] ?? [], origin, end) + SHARED_PIECES * shop) / (own + SHARED_PIECES));
  }

  /** How busy `days` days after the origin are for reels that come in one way, against the usual. */
  aheadOf(opening: number, days: number): number {
    const profile = this.profiles[opening];
    return profile === undefined ? 1 : indexAhead(profile, this.origin === 0 ? this.blocks.gap_days : 0, days);
  }

  /** The same for a group of this mix; 1 while no reel has come in. */
  ahead(mix: Mix, days: number): number {
    return mix.length === 0 ? 1 : mix.reduce((index, share, i) => index + share * this.aheadOf(i, days), 0);
  }

  /** Usual days of every block, newest first: a busy block counts for more days than it had, blocks not known yet for none. */
  usualDays(mix: Mix): number[] {
    const { origin } = this, year: number[] = [];
    for (let at = 0; at < YEAR_BLOCKS; at += 1) {
      let index = mix.length === 0 ? 1 : 0;
      for (let i = 0; i < mix.length; i += 1) index += (mix[i] ?? 0) * (this.profiles[i]?.index[at] ?? 1);
      year.push(index);
    }
    return this.blocks.days.map((days, block) => (block < origin ? 0 : days * (year[(block - origin) % YEAR_BLOCKS] ?? 1)));
  }
}
