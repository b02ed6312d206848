import type { Denominator, Opening, RecordsFilter } from "../filter.ts";

export interface FailureFilter extends RecordsFilter {
  readonly opening: Opening;
  readonly denominator: Denominator;
  /** Group of positions (`AR`, `LR`, …). */
  readonly group: string | null;
  readonly position: string | null;
}

/** One position on one model (`*` in maker and model: all models). Shares are 0…1. */
export interface FailureRate {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly family: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly opening: Opening;
  readonly denominator: Denominator;
  readonly inspected: number;
  readonly failed: number;
  /** Null under ten inspected: then the count is all there is to show. */
  readonly rate: number | null;
  readonly rate_low: number | null;
  readonly rate_high: number | null;
  /** Drawn toward the other models of the position by as much as thin data deserve. */
  readonly pooled_rate: number | null;
  readonly pooled_low: number | null;
  readonly pooled_high: number | null;
  /** Of this model against all others at the position; q is corrected for the many looks within the family of parts. */
  readonly p_value: number | null;
  readonly q_value: number | null;
  /** Parts replaced because of their state, and as routine (demand, not failure). */
  readonly replaced: number;
  readonly replaced_routine: number;
  /** Findings on a position this job does not open: written, not counted in `inspected`. */
  readonly outside: number;
  readonly outside_failed: number;
  /** Why a figure is missing, else empty. */
  readonly note: string;
}

/** Failures against replacements, over time; `period` is its first day. */
export interface FailurePeriod {
  readonly period: string;
  readonly opening: Opening;
  readonly inspected: number;
  readonly failed: number;
  readonly rate: number | null;
  readonly rate_low: number | null;
  readonly rate_high: number | null;
  readonly replaced: number;
  readonly replaced_routine: number;
  readonly replaced_share: number | null;
}

/** One finding with the ticket it stands on. */
export type FindingBehind = {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly serial: string | null;
  readonly opening: string | null;
  readonly job: string | null;
  readonly water: string | null;
  readonly salt_days: number | null;
  /** The finding counts in the share; false when its job does not open the position. */
  readonly counted: boolean;
  readonly failed: boolean;
  readonly mode: string | null;
  readonly grade: number | null;
  readonly action: string | null;
  readonly routine: boolean;
  readonly part_no: string | null;
  readonly qty: number | null;
  readonly note: string | null;
  readonly source_file: string | null;
  readonly source_line: number | null;
};
