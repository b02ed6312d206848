import type { ReplayGroup } from "./world.ts";

/** A job on the bench, with the pieces it still lacks. */
export interface OnBench {
  readonly day: number;
  readonly counts: boolean;
  lacks: number;
  ready_on: number | null;
}

interface Waiting { readonly job: OnBench; pieces: number }

/**
 * Shelf, orders under way and jobs that wait, piece by piece. A job takes what is there and keeps it; what it lacks comes
 * to it in the order jobs came in.
 */
export class Shelf {
  readonly on_hand: number[];
  readonly on_order: number[];
  readonly ordered: number[];
  readonly arrived: number[];
  readonly handed_out: number[];
  /** Of everything on the shelf now. */
  value = 0;
  readonly #waiting: Waiting[][];
  readonly #groups: readonly ReplayGroup[];

  constructor(groups: readonly ReplayGroup[]) {
    this.#groups = groups;
    this.on_hand = groups.map(({ opening }) => opening);
    this.value = groups.reduce((sum, { opening, unit_cost }) => sum + opening * unit_cost, 0);
    [this.on_order, this.ordered, this.arrived, this.handed_out] = [groups.map(() => 0), groups.map(() => 0), groups.map(() => 0), groups.map(() => 0)];
    this.#waiting = groups.map(() => []);
  }

  #move(list: number[], group: number, pieces: number): void {
    list[group] = (list[group] as number) + pieces;
  }

  #shelve(group: number, pieces: number): void {
    this.#move(this.on_hand, group, pieces);
    this.value += pieces * (this.#groups[group] as ReplayGroup).unit_cost;
  }

  take(job: OnBench, group: number, pieces: number): void {
    const there = Math.min(this.on_hand[group] as number, pieces);
    this.#shelve(group, -there);
    this.#move(this.handed_out, group, there);
    if (there === pieces) return;
    job.lacks += pieces - there;
    this.#waiting[group]?.push({ job, pieces: pieces - there });
  }

  order(group: number, pieces: number): void {
    this.#move(this.on_order, group, pieces);
    this.#move(this.ordered, group, pieces);
  }

  /** Goods come in; jobs that wait are served first. */
  arrive(group: number, pieces: number, day: number): void {
    const waiting = this.#waiting[group] as Waiting[];
    let left = pieces;
    this.#move(this.on_order, group, -pieces);
    this.#move(this.arrived, group, pieces);
    for (let first = waiting[0]; first && left > 0; first = waiting[0]) {
      const given = Math.min(left, first.pieces);
      left -= given;
      first.pieces -= given;
      first.job.lacks -= given;
      this.#move(this.handed_out, group, given);
      if (first.job.lacks === 0) first.job.ready_on = day;
      if (first.pieces === 0) waiting.shift();
    }
    this.#shelve(group, left);
  }

  /** Pieces that jobs wait for. */
  waitedFor(group: number): number {
    return (this.#waiting[group] as Waiting[]).reduce((sum, { pieces }) => sum + pieces, 0);
  }

  /** Shelf and goods under way, less what jobs wait for. */
  position(group: number): number {
    return (this.on_hand[group] as number) + (this.on_order[group] as number) - this.waitedFor(group);
  }
}
