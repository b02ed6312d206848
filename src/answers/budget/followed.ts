import { quantile } from "../../stats/quantile.ts";
import { money } from "../wording.ts";
import { rungFor } from "./ladder.ts";
import type { Ladder } from "./ladder.ts";
import { jobCount, scenarioCount } from "./needs.ts";
import type { Needs } from "./needs.ts";
import type { Purchase } from "./purchase.ts";

/** How jobs fare after a spend. Shares are 0…1 over all jobs of all scenarios, jobs are of one scenario. */
export interface Fared {
  readonly spend: number;
  /** Share of the jobs that need a planned part for which every part is there. */
  readonly jobs_without_wait: number;
  /** Share of the lines (a part on a job) that are there. */
  readonly lines_filled: number;
  /** Jobs that wait: the mean, and what one future in ten lies under and over. */
  readonly waiting: number;
  readonly waiting_low: number;
  readonly waiting_high: number;
}

/** Needs that are not met yet, by group and rung. */
type Open = Map<number, number[]>[];

class Following {
  readonly #needs: Needs;
  readonly #open: Open;
  readonly #lacking: Int32Array;
  readonly #scenario_of: Int32Array;
  readonly #waiting: Int32Array;
  #lines_open = 0;

  constructor(needs: Needs, ladders: readonly Ladder[]) {
    this.#needs = needs;
    this.#open = ladders.map(() => new Map<number, number[]>());
    this.#lacking = new Int32Array(jobCount(needs));
    this.#scenario_of = new Int32Array(jobCount(needs));
    this.#waiting = new Int32Array(scenarioCount(needs));
    for (let scenario = 0; scenario < scenarioCount(needs); scenario += 1) {
      for (let job = needs.job_from[scenario] as number; job < (needs.job_from[scenario + 1] as number); job += 1) this.#openJob(job, scenario, ladders);
    }
  }

  #openJob(job: number, scenario: number, ladders: readonly Ladder[]): void {
    const { need_from, group, level } = this.#needs;
    this.#scenario_of[job] = scenario;
    for (let at = need_from[job] as number; at < (need_from[job + 1] as number); at += 1) {
      const of = group[at] as number, rung = rungFor(ladders[of] as Ladder, level[at] as number), open = this.#open[of];
      if (rung === 0 || !open) continue;
      const same = open.get(rung);
      if (same) same.push(job);
      else open.set(rung, [job]);
      this.#lacking[job] = (this.#lacking[job] as number) + 1;
      this.#lines_open += 1;
    }
    if ((this.#lacking[job] as number) > 0) this.#waiting[scenario] = (this.#waiting[scenario] as number) + 1;
  }

  take({ groups, to }: Purchase): void {
    groups.forEach((group, i) => {
      const open = this.#open[group];
      for (const [rung, jobs] of open ?? []) {
        if (rung > (to[i] as number)) continue;
        jobs.forEach((job) => this.#met(job));
        open?.delete(rung);
      }
    });
  }

  #met(job: number): void {
    const left = (this.#lacking[job] as number) - 1, scenario = this.#scenario_of[job] as number;
    this.#lines_open -= 1;
    this.#lacking[job] = left;
    if (left === 0) this.#waiting[scenario] = (this.#waiting[scenario] as number) - 1;
  }

  fared(spend: number): Fared {
    const waiting = [...this.#waiting], all = waiting.reduce((sum, one) => sum + one, 0), jobs = jobCount(this.#needs);
    return {
      spend: money(spend), jobs_without_wait: 1 - all / jobs, lines_filled: 1 - this.#lines_open / this.#needs.group.length,
      waiting: all / waiting.length, waiting_low: quantile(waiting, 0.1), waiting_high: quantile(waiting, 0.9),
    };
  }
}

/**
 * How jobs fare on scenarios that had no part in choosing the order, before anything is bought and after every step: on those
 * it was chosen by, an order looks better than it is.
 *
 * @returns one more than there are steps; none where the scenarios hold no job
 */
export function followed(needs: Needs, ladders: readonly Ladder[], order: readonly Purchase[]): Fared[] {
  if (jobCount(needs) === 0) return [];
  const following = new Following(needs, ladders), fared = [following.fared(0)];
  let spend = 0;
  for (const purchase of order) {
    following.take(purchase);
    spend += purchase.cost;
    fared.push(following.fared(spend));
  }
  return fared;
}
