import type { CountDistribution } from "../../stats/negative-binomial.ts";
import type { DemandBlocks, UseBlocks } from "./demand-blocks.ts";
import { between, BLOCK_DAYS, YEAR_BLOCKS } from "./four-weeks.ts";
import { OriginView } from "./origin-view.ts";
import { expectedByRoute, ROUTES } from "./routes.ts";
import type { Asked, Expected, Route } from "./routes.ts";
import { smallestCount } from "./smallest-count.ts";
import { useChange } from "./use-change.ts";
import type { UseChange } from "./use-change.ts";

/** One group as it is scored. */
export interface ScoredGroup {
  readonly use: UseBlocks;
  /** Chance with which the shelf should last, and the days it should. */
  readonly target: number;
  readonly horizon: number;
  /** Pieces that go at once. */
  readonly clump: number;
  /** First block too old to count because the owner dated a new habit; null without one. */
  readonly ruled: number | null;
}

/** Pinball loss a four-weekly look back, in pieces, by route; and what was expected against what came, of each look. */
export interface RouteScores {
  readonly origins: number;
  readonly losses: Readonly<Record<Route, number>>;
  readonly looks: readonly { readonly came: number; readonly expected: Readonly<Record<Route, CountDistribution>> }[];
}

/** What a level counts as missed at worst when four weeks come out otherwise (METHODS.md 6): our own start, until the past tells. */
export const FIRST_UNEVENNESS = 0.05;
/** A shape of a half (Jeffreys) before anything is known, so that unused lines are not sure of nothing. */
const WEAK_SHAPE = 0.5;

/** What may be used in so many days, when no line is known better than by its own record. */
export function expectedCount({ pieces, days, factor }: Expected, horizon: number, clump: number, weak_days: number): CountDistribution {
  const shape = pieces + WEAK_SHAPE, mean = (shape / (days + weak_days)) * factor * horizon;
  return { mean, size: 1 / (1 / shape + FIRST_UNEVENNESS + (clump - 1) / mean) };
}

/** A group as it stood at an origin: its mix, its step if there is one, and the blocks that count. */
export interface GroupView extends Pick<Asked, "mix" | "usual_days" | "end"> {
  readonly change: UseChange | null;
}

/** Blocks that count: the whole years of the view, or since use changed or a habit was dated. */
export function groupView(view: OriginView, use: UseBlocks, clump: number, ruled: number | null): GroupView {
  const mix = view.mix(use), usual_days = view.usualDays(mix), change = useChange(use, usual_days, view.origin, clump);
  // A habit younger than eight weeks says too little alone.
  const habit = ruled !== null && ruled - view.origin >= 2 ? ruled : Infinity;
  return { mix, usual_days, change, end: Math.min(view.end, change?.before ?? Infinity, habit) };
}

/**
 * Every route tried on the group's own past: at the start of each of the last thirteen blocks, with only what was known
 * then, against what came in as many blocks as the shelf has to last.
 *
 * Rolling origin (Tashman 2000, International Journal of Forecasting 16:437-450), pinball loss at the target (Koenker &
 * Bassett 1978, Econometrica 46:33-50): a piece too few costs target, a piece too many 1 − target.
 *
 * @param views one a block, newest first
 */
export function routeScores(views: readonly OriginView[], { use, target, horizon, clump, ruled }: ScoredGroup, weak_days: number): RouteScores {
  const ahead = Math.max(1, Math.round(horizon / BLOCK_DAYS)), losses = Object.fromEntries(ROUTES.map((route) => [route, 0])) as Record<Route, number>;
  const looks: RouteScores["looks"][number][] = [];
  for (const view of views.slice(ahead, YEAR_BLOCKS + 1)) {
    const came = between(use.pieces, view.origin - ahead, view.origin);
    const said = expectedByRoute({ view, use, ...groupView(view, use, clump, ruled), horizon: ahead * BLOCK_DAYS });
    const expected = {} as Record<Route, CountDistribution>;
    for (const route of ROUTES) {
      const count = expectedCount(said[route], ahead * BLOCK_DAYS, clump, weak_days), level = smallestCount(target, count);
      losses[route] += came > level ? target * (came - level) : (1 - target) * (level - came);
      expected[route] = count;
    }
    looks.push({ came, expected });
  }
  return { origins: looks.length, losses, looks };
}

/** The records as they stood at the start of each of the newest blocks, as far back as a whole year lies before it. */
export function pastViews(blocks: DemandBlocks): OriginView[] {
  const views: OriginView[] = [];
  for (let origin = 0; origin <= YEAR_BLOCKS && blocks.days.length - origin >= YEAR_BLOCKS; origin += 1) views.push(new OriginView(blocks, origin));
  return views;
}
