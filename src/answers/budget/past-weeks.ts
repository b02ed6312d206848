import type { Random } from "../../stats/random.ts";
import type { PastJob } from "./past-jobs.ts";

export const WEEK = 7;
/** Whole weeks, so that a day keeps its weekday. */
const YEAR = 52 * WEEK;
/** Weeks before and after the same week of an earlier year that are as good as it. */
const AROUND = 2;

/** A week of the past: the day it began, its jobs, and how many jobs there would be now for one of then. */
export interface PastWeek {
  readonly from: number;
  readonly jobs: readonly PastJob[];
  readonly grown: number;
}

/** Where weeks ahead are taken from. */
export interface Weeks {
  /** Whole years to choose from; 0 where there is no season to see. */
  readonly years: number;
  /** A week like the one that begins on day `start`, from `year` years before where that is there. */
  like(start: number, year: number, random: Random): PastWeek;
}

const picked = <Value>(values: readonly Value[], random: Random): Value | undefined => values[Math.floor(random() * values.length)];

/**
 * Weeks of the past to draw from, whole, so that parts needed together and reels that came together stay together.
 *
 * A week like one ahead is one of the five around the same week of an earlier year. Where no such week is on record any
 * week will do: under a year of records there is no season to see. A year with fewer or more jobs than the last is brought
 * to the last one's level.
 */
export class PastWeeks implements Weeks {
  readonly #jobs: readonly PastJob[];
  readonly #first: number;
  readonly #last: number;
  readonly #weeks = new Map<number, PastWeek>();

  /** @param jobs in the order of their days, @param first first day of the records, @param last their last whole day */
  constructor(jobs: readonly PastJob[], first: number, last: number) {
    if (!(last - first >= WEEK - 1)) throw new RangeError(`PastWeeks: needs at least a week of records, got days ${first} to ${last}`);
    this.#jobs = jobs;
    this.#first = first;
    this.#last = last;
  }

  get years(): number {
    return Math.floor((this.#last - this.#first + 1 + WEEK) / YEAR);
  }

  like(start: number, year: number, random: Random): PastWeek {
    const starts = this.#around(start - year * YEAR), other = starts.length > 0 ? starts : this.#allYears(start);
    const from = picked(other, random) ?? this.#first + Math.floor(random() * (this.#last - this.#first - WEEK + 2));
    return this.#week(from);
  }

  #around(same: number): number[] {
    return Array.from({ length: 2 * AROUND + 1 }, (_, i) => same + (i - AROUND) * WEEK).filter((from) => from >= this.#first && from + WEEK - 1 <= this.#last);
  }

  #allYears(start: number): number[] {
    return Array.from({ length: this.years }, (_, i) => this.#around(start - (i + 1) * YEAR)).flat();
  }

  #week(from: number): PastWeek {
    const known = this.#weeks.get(from);
    if (known) return known;
    const week = { from, jobs: this.#jobs.filter(({ day }) => day >= from && day < from + WEEK), grown: this.#grown(Math.floor((this.#last - from) / YEAR)) };
    this.#weeks.set(from, week);
    return week;
  }

  /** Jobs a day in the last year against those in the year `back` years before; 1 where there is no year to compare. */
  #grown(back: number): number {
    const now = this.#perDay(0), then = this.#perDay(back);
    return back === 0 || this.years < 2 || now === 0 || then === 0 ? 1 : now / then;
  }

  #perDay(back: number): number {
    const to = this.#last - back * YEAR, from = Math.max(this.#first, to - YEAR + 1);
    return this.#jobs.filter(({ day }) => day >= from && day <= to).length / (to - from + 1);
  }
}
