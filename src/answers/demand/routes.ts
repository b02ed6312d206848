import { croston, tsb } from "../../stats/intermittent.ts";
import type { Counts, UseBlocks } from "./demand-blocks.ts";
import { between, BLOCK_DAYS, YEAR_BLOCKS } from "./four-weeks.ts";
import type { Mix, OriginView } from "./origin-view.ts";

/**
 * Ways to tell what will be used: `steady`, the use of whole years; `seldom` (Croston) and `seldom, corrected` (Syntetos &
 * Boylan), how often and how many at once; `fading` (Teunter, Syntetos & Babai), the newest use counting most; `from reels`,
 * the reels expected times what each takes.
 */
export const ROUTES = ["steady", "seldom", "seldom, corrected", "fading", "from reels"] as const;
export type Route = (typeof ROUTES)[number];

/** What a route says: `pieces` used in `days` usual days, and the days ahead `factor` times as busy as usual. */
export interface Expected {
  readonly pieces: number;
  readonly days: number;
  readonly factor: number;
}

/** Weight of the newest block. */
const ALPHA = 0.1;
/** Blocks that a smoothed mean with that weight is worth (Brown 1963, Smoothing, Forecasting and Prediction). */
const MEMORY = (2 - ALPHA) / ALPHA;

/** One group at one origin; `end` is the first block too old to count. */
export interface Asked {
  readonly view: OriginView;
  readonly use: UseBlocks;
  readonly mix: Mix;
  /** Usual days of each block for this mix. */
  readonly usual_days: Counts;
  readonly end: number;
  /** Days ahead. */
  readonly horizon: number;
}

function steady({ view, use, mix, usual_days, end, horizon }: Asked): Expected {
  const { origin, blocks } = view, whole = (end - origin) % YEAR_BLOCKS === 0;
  return { pieces: between(use.pieces, origin, end), days: between(whole ? blocks.days : usual_days, origin, end), factor: view.ahead(mix, horizon) };
}

/** Use by block as it would have been without season, oldest first; a block cut short by the first day is left out. */
function level({ view, use, usual_days, end }: Asked): number[] {
  const series: number[] = [];
  for (let block = end - 1; block >= view.origin; block -= 1) {
    if ((view.blocks.days[block] ?? 0) * 2 >= BLOCK_DAYS) series.push(((use.pieces[block] ?? 0) * BLOCK_DAYS) / (usual_days[block] ?? BLOCK_DAYS));
  }
  const days = between(view.blocks.days, view.origin, end);
  return series.length > 0 ? series : [days === 0 ? 0 : (between(use.pieces, view.origin, end) * BLOCK_DAYS) / days];
}

/** A smoothed mean of `a_block` pieces, over `length` blocks or its memory. */
function smoothed({ factor }: Expected, length: number, a_block: number): Expected {
  const blocks = Math.min(length, MEMORY);
  return { pieces: a_block * blocks, days: BLOCK_DAYS * blocks, factor };
}

/** Tickets × pieces a ticket, for each way of coming in. */
function fromReels({ view, use, end, horizon }: Asked, whole: Expected): Expected {
  const { origin, blocks } = view, year = Math.min(origin + YEAR_BLOCKS, blocks.days.length), days = between(blocks.days, origin, year);
  let usual = 0, ahead = 0, pieces = 0;
  blocks.tickets.forEach((tickets, i) => {
    const taken = between(use.by_opening[i] ?? [], origin, end), came = between(tickets, origin, end);
    if (taken === 0 || came === 0) return;
    const a_day = (taken / came) * (between(tickets, origin, year) / days);
    usual += a_day;
    ahead += a_day * (view.growth[i] ?? 1) * view.aheadOf(i, horizon);
    pieces += taken;
  });
  return usual === 0 ? { ...whole, pieces: 0 } : { pieces, days: pieces / usual, factor: ahead / usual };
}

/** What every route says of the days ahead. */
export function expectedByRoute(asked: Asked): Readonly<Record<Route, Expected>> {
  const series = level(asked), kept = croston(series, ALPHA), recent = tsb(series, ALPHA, ALPHA), whole = steady(asked);
  return {
    steady: whole, seldom: smoothed(whole, series.length, kept.croston), "seldom, corrected": smoothed(whole, series.length, kept.sba),
    fading: smoothed(whole, series.length, recent.forecast), "from reels": fromReels(asked, whole),
  };
}
