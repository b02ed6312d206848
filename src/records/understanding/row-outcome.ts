import type { Fault } from "../checking/row.ts";
import type { TableName } from "../columns.ts";
import type { SheetRow } from "../formats/sheet.ts";

/** A record made of a row: texts in our own spelling, by our columns; checked like any other row after this. */
export interface MadeRecord {
  readonly table: TableName;
  readonly cells: Readonly<Record<string, string>>;
  /** What a finding was read from, with where it stood: the same words give the same record whatever is made of them. */
  readonly words?: string;
  /**
   * What was written for columns of a ticket that lean on more than its row (the shop's list of reels, its own spellings): the
   * same row is the same ticket when that is better known. Null for a column that was worked out.
   */
  readonly written?: Readonly<Record<string, string | null>>;
}

/** What became of one row. */
export type RowOutcome =
  | { readonly end: "in"; readonly records: readonly MadeRecord[] }
  /** Repeats an earlier row of the same sheet. */
  | { readonly end: "known" }
  | { readonly end: "to fix"; readonly faults: readonly Fault[] }
  | { readonly end: "dropped"; readonly reason: string };

export interface RowEnd {
  readonly row: SheetRow;
  readonly outcome: RowOutcome;
}

/** Makes records of the rows of one kind of sheet. */
export interface RowMaker {
  /** What has to be worked out before rows can be taken, where that takes time. */
  prepare?(rows: readonly SheetRow[]): Promise<void>;
  /** Rows that are settled with this one; a till's lines wait for the rest of their bill. */
  take(row: SheetRow): readonly RowEnd[];
  finish(): readonly RowEnd[];
  /** Put right on the way: sentence → rows, with examples. */
  readonly remarks: FixCounts;
}

interface Counted { count: number; readonly examples: string[] }
const EXAMPLES = 3;

/** Counts what was put right, with some examples as written → as read. */
export class FixCounts {
  private readonly fixes = new Map<string, Counted>();

  add(sentence: string, written: string, read: string): void {
    const fix = this.fixes.get(sentence) ?? { count: 0, examples: [] };
    fix.count += 1;
    const example = `${written.slice(0, 60)} → ${read.slice(0, 60)}`;
    if (fix.examples.length < EXAMPLES && !fix.examples.includes(example)) fix.examples.push(example);
    this.fixes.set(sentence, fix);
  }

  all(): { sentence: string; count: number; examples: string[] }[] {
    return [...this.fixes].map(([sentence, fix]) => ({ sentence, ...fix })).sort((a, b) => b.count - a.count);
  }

  /** `12 rows: the time was read as hours (2.68 → 161).` */
  sentences(): string[] {
    return this.all().map(({ sentence, count, examples }) => `${count} ${count === 1 ? "row" : "rows"}: ${sentence} (${examples[0] ?? ""}).`);
  }
}
