import type { CandidateName } from "../../stats/intake-candidates.ts";
import type { ForecastScore } from "../../stats/rolling-origin.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";
import type { Closure } from "./bench-calendar.ts";
import type { DayCount, DayLine, QuietTime } from "./open-days.ts";
import type { Week } from "./weeks.ts";

/** What the forecast is made of. */
export interface SeasonRecords {
  /** Reels by day, oldest first, all there are. */
  readonly days: readonly DayCount[];
  /** Day the question is asked; its own reels count as past. */
  readonly as_of: string;
  readonly closures: readonly Closure[];
  /** Whole weeks to look ahead. */
  readonly weeks: number;
}

/** `no records`: no ticket up to the day. The others say how much there is to go by. */
export type SeasonStatus = "ok" | "one to two years" | "under a year" | "too few weeks" | "no records";

/** Reels of one week to come, or of the rest of the running one. */
export interface WeekAhead {
  readonly monday: string;
  /** Expected, and the range that holds it in 8 of 10 cases. */
  readonly tickets: number;
  readonly low: number;
  readonly high: number;
  /** The same as a distribution, were the shop open all week. */
  readonly whole: CountDistribution;
  /** Share of a usual week's reels on the days it is open. */
  readonly open: number;
}

/** One month of the year beside the average one. */
export interface MonthOfYear { readonly month: number; readonly tickets: number; /** 1 is an average month. */ readonly index: number }

/** The last thirteen weeks beside the same ones a year before, closed days allowed for. */
export interface LevelChange { readonly now: number; readonly before: number; readonly ratio: number; readonly beyond_chance: boolean }

export interface Season {
  readonly as_of: string;
  readonly status: SeasonStatus;
  readonly status_text: string;
  readonly method: CandidateName | null;
  readonly line: DayLine | null;
  /** Whole weeks of the past, oldest first. */
  readonly past: readonly Week[];
  /** Whole weeks to come; before them, when today is not a Sunday, the rest of the running one (`rest`). */
  readonly ahead: readonly WeekAhead[];
  readonly rest: WeekAhead | null;
  /** Relative standard deviation of the level that all weeks of one future share. */
  readonly level_sd: number;
  readonly scores: readonly ForecastScore[];
  /** January to December; empty under a year of records. */
  readonly months: readonly MonthOfYear[];
  readonly quiet: readonly QuietTime[];
  readonly level_change: LevelChange | null;
  /** Tickets dated after the day, left out. */
  readonly after_as_of: number;
  /** What the owner should know about these figures, one sentence each. */
  readonly notes: readonly string[];
}
