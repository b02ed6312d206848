import type { BenchRates } from "../../answers/labour/bench-rates.ts";
import type { HandGroup } from "../../answers/interchange/hand-groups.ts";
import type { Look, LookFigures } from "../../answers/morning/last-look.ts";
import type { RuleChange } from "../../answers/rule-changes/rule-changes.ts";
import type { RestockSettings } from "../../answers/stock/restock-line.ts";
import type { Engine, Report } from "../../db/engine.ts";
import type { BenchStore } from "../../records/bench-log/bench-store.ts";
import type { Ledger, Reject } from "../../records/ledger/ledger.ts";
import type { Part } from "./sheet-part.ts";

/** What of the session the parts ask beside the engine. */
export interface KeptRecords {
  bench(): Promise<BenchStore>;
  rejects(): Promise<readonly Reject[]>;
  consult<T>(ask: (engine: Engine, ledger: Ledger) => Promise<T>): Promise<T>;
}

/** What the parts that come in later are worked out from. */
export interface MorningAsk {
  readonly engine: Engine;
  readonly kept: KeptRecords;
  /** Goes up when the records changed. */
  readonly version: number;
  readonly as_of: string;
  readonly rates: BenchRates;
  readonly rule_changes: readonly RuleChange[];
  /** How seldom a part may run out, by class. */
  readonly targets: RestockSettings["targets"];
  readonly hand_groups: readonly HandGroup[];
  /** The look that changes are told against. */
  readonly before: Look | null;
}

/** A part of the sheet, with what is kept of it for the next look. */
export interface Told { readonly part: Part; readonly figures: Partial<LookFigures> }

/** Work that tells how far it is and can be called off. */
export type LaterWork = (signal: AbortSignal, report: Report) => Promise<Told>;

export type LaterName = "tickets" | "promise" | "watch" | "records" | "score";

/**
 * Parts in their order on the sheet: title, lines their place is kept for, and whose turn it is when. What is quick goes first, and then two at
 * a time, as each has a worker of its own: when one of a turn is done the next turn comes.
 */
export const LATER: readonly { readonly name: LaterName; readonly title: string; readonly lines: number; readonly turn: number }[] = [
  { name: "tickets", title: "At the bench", lines: 3, turn: 0 },
  { name: "promise", title: "Promise today", lines: 12, turn: 2 },
  { name: "watch", title: "Watch", lines: 9, turn: 2 },
  { name: "records", title: "Records", lines: 4, turn: 1 },
  { name: "score", title: "Advice so far", lines: 4, turn: 3 },
];
