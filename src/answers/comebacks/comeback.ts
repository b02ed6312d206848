import type { Figure } from "../failures/verdict.ts";

/** Failures a reel has had on average by an age, with Nelson's robust limits. */
export interface CumulativePoint {
  /** Days since the part was first looked at here. */
  readonly age: number;
  /** Reels still watched at that age. */
  readonly at_risk: number;
  readonly mean_cumulative: number;
  readonly low: number;
  readonly high: number;
}

/** Whether failures come faster or slower with the reel's age. */
export interface FailureTrend {
  readonly events: number;
  readonly word: "faster with age" | "slower with age" | "no trend" | "too few";
  /** Laplace's figure: above 0 faster, below 0 slower; and its chance. */
  readonly laplace: number | null;
  readonly laplace_p: number | null;
  /** Shape of the power law (MIL-HDBK-189): above 1 faster. */
  readonly shape: number | null;
  readonly shape_p: number | null;
  /** Laplace's figure made fit for failures that come in clumps. */
  readonly lewis_robinson: number | null;
}

/** Coming back of one part on one model (`*`: all models, or all parts): same part, same reel. */
export interface ComebackRow {
  readonly position: string;
  readonly position_name: string;
  readonly maker: string | null;
  readonly model: string;
  /** Reels told apart by serial and watched; 0 where curves were not asked for. */
  readonly reels: number;
  /** Failures put right on reels with a serial, at least 90 days before the records end. */
  readonly failures: number;
  /** Of those: the same part of the same reel had failed again within 90 days. */
  readonly back: number;
  readonly share: Figure;
  readonly curve: readonly CumulativePoint[];
  readonly trend: FailureTrend;
  /** Bench minutes and parts of the jobs that put the comebacks right. */
  readonly minutes: number;
  readonly parts: number;
}

export interface Comebacks {
  /** Each part over all models (`*`) followed by its models; dearest comebacks first. */
  readonly rows: readonly ComebackRow[];
  /** Share of tickets with a serial: without one a reel cannot be known again. */
  readonly linked_share: number | null;
  readonly within_days: number;
}
