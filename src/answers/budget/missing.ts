import { rungFor } from "./ladder.ts";
import type { Ladder } from "./ladder.ts";
import { jobCount } from "./needs.ts";
import type { Needs } from "./needs.ts";

/** Jobs that lack the same groups up to the same rungs. */
export interface Lacking {
  readonly rungs: readonly number[];
  jobs: number;
}

/** Jobs that lack exactly these groups, two or more. */
export interface Together {
  readonly groups: readonly number[];
  readonly lacking: Map<string, Lacking>;
}

/**
 * What is missing for the jobs that wait, alike ones counted together: by group and rung where one part is all that a job
 * lacks, else by the set of parts it lacks. Buying a rung moves jobs on.
 */
export class Missing {
  /** Jobs that lack only this group, by the rung they need. */
  readonly alone: Map<number, number>[];
  readonly together = new Map<string, Together>();
  readonly #of_group: Set<Together>[];
  /** Called for every group whose sets or single jobs have changed. */
  readonly #changed: (group: number) => void;

  constructor(groups: number, changed: (group: number) => void) {
    this.alone = Array.from({ length: groups }, () => new Map<number, number>());
    this.#of_group = Array.from({ length: groups }, () => new Set<Together>());
    this.#changed = changed;
  }

  /** @param groups in ascending order, each with the rung it is needed up to */
  add(groups: readonly number[], rungs: readonly number[], jobs: number): void {
    groups.forEach(this.#changed);
    const [only] = groups;
    if (only === undefined) return;
    if (groups.length > 1) this.#addTogether(groups, rungs, jobs);
    else {
      const alone = this.alone[only] as Map<number, number>, rung = rungs[0] as number;
      alone.set(rung, (alone.get(rung) ?? 0) + jobs);
    }
  }

  #addTogether(groups: readonly number[], rungs: readonly number[], jobs: number): void {
    const key = groups.join(), known = this.together.get(key), set: Together = known ?? { groups, lacking: new Map() };
    if (!known) {
      this.together.set(key, set);
      for (const group of groups) this.#of_group[group]?.add(set);
    }
    const like = set.lacking.get(rungs.join());
    if (like) like.jobs += jobs;
    else set.lacking.set(rungs.join(), { rungs, jobs });
  }

  setsOf(group: number): ReadonlySet<Together> {
    return this.#of_group[group] as ReadonlySet<Together>;
  }

  /** The group is there up to this rung: jobs that lacked it no more lack the rest, or nothing. */
  bought(group: number, rung: number): void {
    this.#changed(group);
    const alone = this.alone[group] as Map<number, number>;
    for (const need of alone.keys()) if (need <= rung) alone.delete(need);
    for (const set of [...this.setsOf(group)]) this.#moveOn(set, set.groups.indexOf(group), rung);
  }

  #moveOn(set: Together, at: number, rung: number): void {
    const rest = set.groups.filter((_, i) => i !== at);
    for (const [key, { rungs, jobs }] of set.lacking) {
      if ((rungs[at] as number) > rung) continue;
      set.lacking.delete(key);
      this.add(rest, rungs.filter((_, i) => i !== at), jobs);
    }
    if (set.lacking.size > 0) return;
    this.together.delete(set.groups.join());
    for (const group of set.groups) this.#of_group[group]?.delete(set);
  }
}

/** Puts the jobs of all scenarios into `missing`; those that lack nothing are left out. */
export function fill(missing: Missing, needs: Needs, ladders: readonly Ladder[]): void {
  const { need_from, group, level } = needs, jobs = jobCount(needs);
  for (let job = 0; job < jobs; job += 1) {
    const lacks: [number, number][] = [];
    for (let at = need_from[job] as number; at < (need_from[job + 1] as number); at += 1) {
      const of = group[at] as number, rung = rungFor(ladders[of] as Ladder, level[at] as number);
      if (rung > 0) lacks.push([of, rung]);
    }
    if (lacks.length > 1) lacks.sort((a, b) => a[0] - b[0]);
    if (lacks.length > 0) missing.add(lacks.map(([of]) => of), lacks.map(([, rung]) => rung), 1);
  }
}
