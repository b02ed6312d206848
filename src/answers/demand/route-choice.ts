import { demandVariance } from "../../stats/negative-binomial.ts";
import { FIRST_UNEVENNESS } from "./route-scores.ts";
import type { RouteScores } from "./route-scores.ts";
import { ROUTES } from "./routes.ts";
import type { Expected, Route } from "./routes.ts";

/** A group's own past counts beside this many looks back on all groups together: our own choice. */
const SHARED_LOOKS = 13;
/** Under so many looks back nothing is compared. */
const FEWEST_LOOKS = 4;
/** Routes nearer than this to each other are averaged: neither is known to be the better. */
const NEAR = 0.02;
/** Where nothing can be compared yet. */
const DEFAULT: Route = "steady";

/** Routes a group is planned by: one, or two averaged; with what was compared. */
export interface RouteChoice {
  readonly routes: readonly Route[];
  /** Looks back it rests on; 0 where there are too few and the default stands. */
  readonly looks: number;
  /** Mean loss in pieces a look, by route; null where nothing was compared. */
  readonly losses: Readonly<Record<Route, number>> | null;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Loss of each route against the mean of all routes, over all groups, each group counting alike. */
function sharedLosses(scores: readonly RouteScores[]): Record<Route, number> {
  const telling = scores.filter(({ losses }) => ROUTES.some((route) => losses[route] > 0));
  return Object.fromEntries(ROUTES.map((route) => [route, telling.length === 0 ? 1
    : mean(telling.map(({ losses }) => losses[route] / mean(ROUTES.map((one) => losses[one]))))])) as Record<Route, number>;
}

function chosenBy(leaning: (route: Route) => number): Route[] {
  const [first = DEFAULT, second = DEFAULT] = [...ROUTES].sort((a, b) => leaning(a) - leaning(b));
  return leaning(second) <= leaning(first) * (1 + NEAR) ? [first, second] : [first];
}

/**
 * The route of each group: least pinball loss on the group's own past, leaning on what all groups together say, because
 * a year of one thin line tells little.
 *
 * @returns the choices, and `others`, the one for groups used too seldom to be scored: what most groups do best by
 */
export function routeChoices(scores: readonly RouteScores[]): { choices: RouteChoice[]; others: RouteChoice } {
  const telling = scores.filter(({ origins }) => origins >= FEWEST_LOOKS), shared = sharedLosses(telling);
  const others: RouteChoice = { routes: telling.length === 0 ? [DEFAULT] : chosenBy((route) => shared[route]), looks: 0, losses: null };
  const choices = scores.map(({ origins, losses }): RouteChoice => {
    if (origins < FEWEST_LOOKS) return others;
    const usual = mean(ROUTES.map((route) => losses[route])) / origins;
    return {
      routes: chosenBy((route) => (losses[route] + SHARED_LOOKS * usual * shared[route]) / (origins + SHARED_LOOKS)), looks: origins,
      losses: Object.fromEntries(ROUTES.map((route) => [route, losses[route] / origins])) as Record<Route, number>,
    };
  });
  return { choices, others };
}

/** What one or two routes say together: the mean of what they expect, known as well as they are on average. */
export function together(said: readonly Expected[]): Expected {
  const [first, ...others] = said;
  if (first === undefined) throw new RangeError("together: needs at least one route, got none");
  if (others.length === 0) return first;
  const pieces = mean(said.map((one) => one.pieces)), factor = mean(said.map((one) => one.factor));
  const a_day = mean(said.map((one) => (one.pieces / one.days) * one.factor)) / factor;
  return { pieces, days: pieces === 0 ? mean(said.map((one) => one.days)) : pieces / a_day, factor };
}

/** Never believed to be evener than this, and never more uneven than that: our own limits. */
const UNEVEN_LIMITS = [0.02, 0.3] as const;
/** Groups with fewer pieces expected a look tell chance, not unevenness. */
const TELLING_MEAN = 1;

/**
 * What demand swings beyond chance, clumps and doubt about the rate, as a squared share of its mean: by how much the past
 * missed more than expected (method of moments over all looks back).
 */
export function unevenness(scores: readonly RouteScores[], choices: readonly RouteChoice[]): number {
  let beyond = 0, squares = 0;
  scores.forEach(({ looks }, i) => {
    const route = choices[i]?.routes[0] ?? DEFAULT;
    for (const { came, expected } of looks) {
      const count = expected[route];
      if (count.mean < TELLING_MEAN) continue;
      // Large lines would otherwise speak alone: each look counts by its mean, not by its square.
      beyond += ((came - count.mean) ** 2 - demandVariance(count) + FIRST_UNEVENNESS * count.mean ** 2) / count.mean;
      squares += count.mean;
    }
  });
  return squares === 0 ? FIRST_UNEVENNESS : Math.min(UNEVEN_LIMITS[1], Math.max(UNEVEN_LIMITS[0], beyond / squares));
}
