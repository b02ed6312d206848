import type { Season, WeekAhead } from "../season/season.ts";
import type { Capacity } from "./capacity.ts";
import type { KeptPromises } from "./kept-promises.ts";
import type { JobPromise } from "./promise.ts";
import type { SimulatedWeek } from "./simulate.ts";
import type { Moved, WhatIf } from "./what-if.ts";

/** One week to come: reels, hours, the line. */
export interface LoadWeek extends SimulatedWeek {
  readonly monday: string;
  /** Reels as forecast. */
  readonly forecast: WeekAhead;
  /** Hours there are: people, closed days and holidays taken out; null where nobody's hours are known. */
  readonly capacity_hours: number | null;
}

/** The shop today. */
export interface Backlog {
  readonly open: number;
  /** Hours of work in the open tickets, taking in and packing included. */
  readonly hours: number;
  /** Of them, jobs that wait for a part. */
  readonly waiting: number;
  /** Tickets open for so long that they look forgotten; not in the line. */
  readonly forgotten: number;
}

/** `no hours`: nobody's hours are written and the records show none; `no minutes`: no job has its minutes written. */
export type LoadStatus = "ok" | "no forecast" | "no minutes" | "no hours";

export interface BenchLoad {
  readonly season: Season;
  readonly status: LoadStatus;
  readonly status_text: string;
  readonly capacity: Capacity | null;
  readonly overhead_min: number;
  readonly overhead_from: "written" | "usual";
  /** The rest of the running week first, where there is one. Under `no hours` only reels and hours hold, not line and wait. */
  readonly weeks: readonly LoadWeek[];
  readonly backlog: Backlog;
  readonly promises: readonly JobPromise[];
  readonly kept: KeptPromises | null;
  readonly futures: number;
}

/** The weeks ahead with something changed, beside the same without. */
export interface Changed {
  readonly what: WhatIf;
  readonly weeks: readonly LoadWeek[];
  readonly moved: Moved | null;
  readonly text: readonly string[];
}
