/**
 * What the jobs of many possible futures ask of the shelf, flat: job `j` of all has the needs `need_from[j]` up to
 * `need_from[j + 1]`, scenario `s` the jobs `job_from[s]` up to `job_from[s + 1]`.
 *
 * Jobs take parts in the order they come in, and a job that waits keeps what is there for it. So a need is met exactly when
 * the shelf had `level` pieces of `group`: those of all jobs before it and its own. That makes whether a job waits a
 * question of levels alone, whatever else is bought.
 */
export interface Needs {
  readonly job_from: Int32Array;
  readonly need_from: Int32Array;
  readonly group: Int32Array;
  readonly level: Int32Array;
}

export const scenarioCount = ({ job_from }: Needs): number => job_from.length - 1;
export const jobCount = ({ need_from }: Needs): number => need_from.length - 1;

/** Collects needs job by job. */
export class NeedsList {
  readonly #job_from: number[] = [0];
  readonly #need_from: number[] = [0];
  readonly #group: number[] = [];
  readonly #level: number[] = [];

  need(group: number, level: number): void {
    this.#group.push(group);
    this.#level.push(level);
  }

  /** Ends a job; one without a need is no job. */
  endJob(): void {
    if (this.#group.length > (this.#need_from.at(-1) ?? 0)) this.#need_from.push(this.#group.length);
  }

  endScenario(): void {
    this.#job_from.push(this.#need_from.length - 1);
  }

  list(): Needs {
    return {
      job_from: Int32Array.from(this.#job_from), need_from: Int32Array.from(this.#need_from),
      group: Int32Array.from(this.#group), level: Int32Array.from(this.#level),
    };
  }
}
