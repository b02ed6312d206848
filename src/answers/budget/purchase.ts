import { costOf } from "./ladder.ts";
import type { Ladder } from "./ladder.ts";
import type { Missing, Together } from "./missing.ts";

/** Groups raised to a rung at once: what it costs, and jobs (over all scenarios) that no longer wait for it. */
export interface Purchase {
  readonly groups: readonly number[];
  readonly to: readonly number[];
  readonly cost: number;
  readonly jobs: number;
}

/** Larger sets are looked at as they are, without the jobs that lack only some of them. */
const LARGEST_LOOKED_INTO = 6;
/** Of a set's many levels the cheapest are looked at. */
const LEVELS_LOOKED_AT = 12;

const worth = ({ jobs, cost }: Purchase): number => jobs / cost;

/** The better of two by jobs per money, then the cheaper. */
export function better(one: Purchase | null, other: Purchase | null): Purchase | null {
  if (one === null || other === null) return one ?? other;
  const by = worth(one) - worth(other);
  return by > 0 || (by === 0 && one.cost <= other.cost) ? one : other;
}

/** The best raise of one group alone: as many rungs at once as give most jobs per money. */
export function bestAlone(group: number, from: number, { alone }: Missing, ladder: Ladder): Purchase | null {
  let jobs = 0, best: Purchase | null = null;
  for (const [rung, more] of [...(alone[group] as Map<number, number>)].sort((a, b) => a[0] - b[0])) {
    jobs += more;
    best = better(best, { groups: [group], to: [rung], cost: costOf(ladder, from, rung), jobs });
  }
  return best;
}

/** Which of `groups` are in each part of two or more of them, the whole included. */
function subsets(groups: readonly number[]): readonly (readonly number[])[] {
  const whole = groups.map((_, i) => i);
  if (groups.length > LARGEST_LOOKED_INTO) return [whole];
  return Array.from({ length: 2 ** groups.length }, (_, mask) => whole.filter((i) => mask & (1 << i))).filter((part) => part.length > 1);
}

/** Jobs that no longer wait when `groups` stand at `to`: those that lacked one of them, some of them, or all. */
function helped(groups: readonly number[], to: readonly number[], parts: readonly (readonly [readonly number[], Together])[], { alone }: Missing): number {
  let jobs = 0;
  groups.forEach((group, i) => {
    for (const [rung, some] of alone[group] as Map<number, number>) if (rung <= (to[i] as number)) jobs += some;
  });
  for (const [places, { lacking }] of parts) {
    for (const like of lacking.values()) if (like.rungs.every((rung, i) => rung <= (to[places[i] as number] as number))) jobs += like.jobs;
  }
  return jobs;
}

/** The best raise of a set of parts that help only together. */
export function bestTogether({ groups, lacking }: Together, bought: Int32Array, missing: Missing, ladders: readonly Ladder[]): Purchase | null {
  const cost = (to: readonly number[]) => groups.reduce((sum, group, i) => sum + costOf(ladders[group] as Ladder, bought[group] as number, to[i] as number), 0);
  const parts = subsets(groups).flatMap((places) => {
    const part = missing.together.get(places.map((i) => groups[i]).join());
    return part ? [[places, part] as const] : [];
  });
  const cheapest = [...lacking.values()].map(({ rungs }) => ({ to: rungs, cost: cost(rungs) })).sort((a, b) => a.cost - b.cost).slice(0, LEVELS_LOOKED_AT);
  return cheapest.reduce<Purchase | null>((best, { to, cost: spent }) => better(best, { groups, to, cost: spent, jobs: helped(groups, to, parts, missing) }), null);
}
