import type { FailurePeriod, FindingBehind } from "../failures/failure-rate.ts";
import type { Figure, Verdict, VerdictWord } from "../failures/verdict.ts";
import type { Comebacks } from "../comebacks/comeback.ts";
import type { ModelAdvice } from "./model-advice.ts";
import type { RuleChange } from "../rule-changes/rule-changes.ts";

/** Points of a funnel picture: share against openings, with the limits chance alone would keep. */
export interface Funnel {
  readonly position: string;
  readonly position_name: string;
  readonly opening: "planned" | "*";
  /** Share of all models together. */
  readonly common: number;
  readonly points: readonly FunnelPoint[];
  /** Limits around `common` for rising numbers of openings: nearly all (95 %) and all but one in 500 (99.8 %) models would lie inside. */
  readonly limits: readonly FunnelLimit[];
}
export interface FunnelPoint {
  readonly maker: string | null;
  readonly model: string;
  readonly inspected: number;
  readonly failed: number;
  readonly share: number;
  readonly word: VerdictWord;
}
export interface FunnelLimit {
  readonly inspected: number;
  readonly low95: number;
  readonly high95: number;
  readonly low998: number;
  readonly high998: number;
}

/** What an owner has to know of one model: whether to warn customers, and why. */
export interface ModelPage extends ModelAdvice {
  readonly maker: string | null;
  readonly model: string;
  readonly reels: number;
  readonly tickets: number;
  /** Share of its tickets that came in with something wrong, and of all models. */
  readonly complaint_share: Figure;
  readonly others_complaint_share: number | null;
  /** How often its parts fail beside others', all parts together, like with like. */
  readonly general_level: number | null;
  /** Every part, the dearest of the worst words first. */
  readonly verdicts: readonly Verdict[];
  readonly comebacks: Comebacks;
  readonly cautions: readonly string[];
}

/** One part over all models. */
export interface PositionPage {
  readonly position: string;
  readonly position_name: string;
  readonly summary: string;
  readonly verdicts: readonly Verdict[];
  readonly funnel: Funnel;
  readonly over_time: readonly FailurePeriod[];
  readonly comebacks: Comebacks;
  readonly rule_changes: readonly RuleChange[];
  readonly cautions: readonly string[];
}

/** Two models, part by part; a part that only one of them has is left out. */
export interface SideBySide {
  readonly first: string;
  readonly second: string;
  readonly summary: string;
  readonly rows: readonly SideBySideRow[];
}
export interface SideBySideRow {
  readonly position: string;
  readonly position_name: string;
  readonly first: Verdict;
  readonly second: Verdict;
  /** First over second within the same conditions, planned openings where they suffice. */
  readonly ratio: Figure;
  readonly p_value: number | null;
  readonly sentence: string;
}

/** One printed page for a model and part, to show the maker's agency. */
export interface EvidenceSheet {
  readonly title: string;
  readonly verdict: Verdict;
  readonly funnel: Funnel;
  readonly over_time: readonly FailurePeriod[];
  /** The tickets behind the count, newest first; no customer's name is among them. */
  readonly findings: readonly FindingBehind[];
  readonly fine_unwritten: number;
  readonly comparison: string;
  /** The method in three plain sentences. */
  readonly method: readonly [string, string, string];
  readonly cautions: readonly string[];
  readonly from: string | null;
  readonly to: string | null;
}
