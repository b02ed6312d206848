import { unused } from "./demand-blocks.ts";
import type { DemandBlocks, UseBlocks } from "./demand-blocks.ts";
import { between, YEAR_BLOCKS } from "./four-weeks.ts";
import { OriginView } from "./origin-view.ts";
import { routeChoices, together, unevenness } from "./route-choice.ts";
import type { RouteChoice } from "./route-choice.ts";
import { groupView, pastViews, routeScores } from "./route-scores.ts";
import type { ScoredGroup } from "./route-scores.ts";
import { expectedByRoute } from "./routes.ts";
import type { Expected, Route } from "./routes.ts";
import type { UseChange } from "./use-change.ts";

/** What is asked of one group: the chance and the days its shelf has to last, and the first block before a dated habit. */
export type GroupAsked = Pick<ScoredGroup, "target" | "horizon" | "ruled"> & {
  /** Several parts under one number: told, but not learnt from. */
  readonly mixed: boolean;
  readonly clump: number;
};

/** What is known of a group's use, and what is expected of it. */
export interface GroupOutlook {
  /** Pieces used and wanted in the days that count. */
  readonly used: number;
  readonly wanted: number;
  readonly used_days: number;
  /** A step seen in the use; its older side does not count. `days_ago` is where it lies. */
  readonly change: (UseChange & { readonly days_ago: number }) | null;
  /** Days since the habit the owner dated, where it cuts the days that count. */
  readonly ruled_days: number | null;
  readonly choice: RouteChoice;
  readonly expected: Expected;
  readonly by_route: Readonly<Record<Route, Expected>>;
}

export interface Outlook {
  readonly groups: ReadonlyMap<string, GroupOutlook>;
  /** Squared share of the mean by which demand swings beyond chance. */
  readonly unevenness: number;
}

/** Pieces in two years under which a line's own past does not tell one route from another: our own choice. */
const FEWEST_PIECES = 24;

/** Days that stand for a line nobody knows: half a piece at the use of a middling line. */
function weakDays(blocks: DemandBlocks, lines: number): number {
  const from = blocks.days.length > YEAR_BLOCKS ? YEAR_BLOCKS : 0, days = between(blocks.days, from, blocks.days.length);
  const pieces = [...blocks.use.values()].reduce((sum, use) => sum + between(use.pieces, from, blocks.days.length), 0);
  return pieces === 0 ? days : (0.5 * lines * days) / pieces;
}

function outlook(view: OriginView, use: UseBlocks, asked: GroupAsked, choice: RouteChoice): GroupOutlook {
  const { days } = view.blocks, seen = groupView(view, use, asked.clump, asked.ruled), { change, end } = seen;
  const by_route = expectedByRoute({ view, use, ...seen, horizon: asked.horizon });
  return {
    used: between(use.pieces, 0, end), wanted: between(use.wanted, 0, end), used_days: between(days, 0, end),
    change: change === null || change.before > end ? null : { ...change, days_ago: between(days, 0, change.before) },
    ruled_days: asked.ruled !== null && asked.ruled === end ? between(days, 0, end) : null,
    choice, expected: together(choice.routes.map((route) => by_route[route])), by_route,
  };
}

/**
 * What each group's use will be, by the route that told its past best.
 *
 * @param asked one entry a group to plan, used or not
 */
export function demandOutlook(blocks: DemandBlocks, asked: ReadonlyMap<string, GroupAsked>): Outlook {
  const views = pastViews(blocks), now = views[0] ?? new OriginView(blocks, 0), weak = weakDays(blocks, Math.max(1, asked.size));
  const none = unused(blocks), names = [...asked.keys()], useOf = (name: string) => blocks.use.get(name) ?? none;
  const told = [...asked].filter(([name, { mixed }]) => !mixed && between(useOf(name).pieces, 0, 2 * YEAR_BLOCKS) >= FEWEST_PIECES);
  const scores = told.map(([name, one]) => routeScores(views, { ...one, use: useOf(name) }, weak)), { choices, others } = routeChoices(scores);
  const chosen = new Map(told.map(([name], i) => [name, choices[i]]));
  return {
    groups: new Map(names.map((name) => [name, outlook(now, useOf(name), asked.get(name) as GroupAsked, chosen.get(name) ?? others)])),
    unevenness: unevenness(scores, choices),
  };
}
