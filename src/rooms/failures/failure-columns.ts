import type { FailurePeriod, FailureRate, FindingBehind } from "../../answers/failures/failure-rate.ts";
import { modelName } from "../../answers/model-name.ts";
import { DASH, date, money, number, percent } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import type { Column } from "../../ui/table-rows.ts";
import { rowVerdict } from "./failure-words.ts";
import type { VerdictBook } from "./verdict-book.ts";
import { timesWords } from "./verdict-words.ts";

/** What the failure table says beside its counts. */
export interface FailureTableParts {
  /** What a row is called in this view, under `heading`. */
  readonly heading: string;
  readonly name: (row: FailureRate) => string;
  /** True where models are compared; only there is a share drawn toward the others, and set like with like. */
  readonly compared: boolean;
  readonly book: VerdictBook;
  readonly currency: string;
}

/** Columns of the failure table. */
export function failureColumns({ heading, name, compared, book, currency }: FailureTableParts): readonly Column<FailureRate>[] {
  const right = { align: "right" } as const, side = (row: FailureRate) => book.of(row.position, modelName(row))?.sides.find(({ opening }) => opening === row.opening);
  const verdict = (row: FailureRate) => rowVerdict(row, book);
  return [
    { key: "name", label: heading, value: name },
    { key: "verdict", label: "Verdict", value: (row) => verdict(row) || null, text: (row) => verdict(row) || " " },
    { key: "inspected", label: "Inspected", ...right, value: (row) => row.inspected, text: (row) => number(row.inspected) },
    { key: "failed", label: "Failed", ...right, value: (row) => row.failed, text: (row) => number(row.failed) },
    ...(compared ? [] : [{ key: "rate", label: "Share", ...right, value: (row: FailureRate) => row.rate, text: (row: FailureRate) => percent(row.rate) }]),
    { key: "likely", label: "Likely", value: (row) => row.rate_low, text: (row) => (row.rate === null ? DASH : likely(row.rate_low, row.rate_high)) },
    ...(compared ? [{
      key: "pooled_rate", label: "Evened out", ...right, value: (row: FailureRate) => row.pooled_rate, text: (row: FailureRate) => percent(row.pooled_rate),
    }, {
      key: "adjusted", label: "Like with like", unit: "times", value: (row: FailureRate) => side(row)?.adjusted.value ?? null,
      text: (row: FailureRate) => timesWords(side(row)?.adjusted ?? { value: null, low: null, high: null }),
    }] : []),
    ...(compared ? [] : [{
      key: "replaced_routine", label: "As routine", ...right, value: (row: FailureRate) => row.replaced_routine, text: (row: FailureRate) => number(row.replaced_routine),
    }]),
    { key: "cost", label: "Cost", ...right, value: (row) => book.cost(row), text: (row) => money(book.cost(row), currency) },
  ];
}

export const PERIOD_COLUMNS: readonly Column<FailurePeriod>[] = [
  { key: "period", label: "From", value: (row) => row.period, text: (row) => date(row.period) },
  { key: "inspected", label: "Inspected", align: "right", value: (row) => row.inspected, text: (row) => number(row.inspected) },
  { key: "failed", label: "Failed", align: "right", value: (row) => row.failed, text: (row) => number(row.failed) },
  { key: "likely", label: "Likely", value: (row) => row.rate_low, text: (row) => (row.rate === null ? DASH : likely(row.rate_low, row.rate_high)) },
  { key: "replaced", label: "Replaced, worn", align: "right", value: (row) => row.replaced, text: (row) => number(row.replaced) },
  { key: "replaced_routine", label: "Changed as routine", align: "right", value: (row) => row.replaced_routine, text: (row) => number(row.replaced_routine) },
];

const GRADES = ["as new", "light", "moderate", "heavy", "failed"];
const OPENINGS: Readonly<Record<string, string>> = { planned: "planned service", complaint: "something wrong" };

/** What was done, in words, with the part that went in. */
export function doneWords(row: FindingBehind): string | null {
  if (row.action === null) return row.part_no;
  const done = row.routine ? `${row.action} as routine` : row.action;
  return row.part_no === null ? done : `${done}, ${row.part_no}`;
}

/** Grade with its word, `3 heavy`. */
export const gradeWords = (row: FindingBehind): string => (row.grade === null ? DASH : `${row.grade} ${GRADES[row.grade] ?? ""}`.trim());

/** File and line a finding stands on. */
export const sourceWords = (row: FindingBehind): string | null =>
  row.source_file === null ? null : row.source_line === null ? row.source_file : `${row.source_file}, line ${row.source_line}`;

const FINDING_COLUMNS: readonly Column<FindingBehind>[] = [
  { key: "received_on", label: "Came in", value: (row) => row.received_on, text: (row) => date(row.received_on) },
  { key: "ticket_no", label: "Ticket", value: (row) => row.ticket_no },
  { key: "model", label: "Reel", value: (row) => modelName(row) },
  { key: "failed", label: "Counts as", value: (row) => (!row.counted ? "not counted" : row.failed ? "failed" : "not failed") },
  { key: "grade", label: "Grade", value: (row) => row.grade, text: gradeWords },
  { key: "mode", label: "What was wrong", value: (row) => row.mode },
  { key: "action", label: "What was done", value: doneWords },
  { key: "source", label: "File and line", spare: true, value: sourceWords },
  { key: "opening", label: "Why it came in", spare: true, value: (row) => row.opening, text: (row) => OPENINGS[row.opening ?? ""] ?? DASH },
  { key: "salt_days", label: "Salt days", spare: true, align: "right", value: (row) => row.salt_days, text: (row) => number(row.salt_days) },
  { key: "note", label: "Note", wide: true, value: (row) => row.note },
];

/** What is listed: all findings or failures only, and what the filters make the same in every row. */
export interface FindingsListed {
  readonly all: boolean;
  readonly one_model: boolean;
  readonly one_opening: boolean;
}

/** Columns of the findings without those that say nothing: the same in every row by the filters, or never written. */
export function findingColumns(rows: readonly FindingBehind[], { all, one_model, one_opening }: FindingsListed): readonly Column<FindingBehind>[] {
  const idle = new Set([all ? "" : "failed", one_model ? "model" : "", one_opening ? "opening" : "", rows.some(({ note }) => note) ? "" : "note"]);
  return FINDING_COLUMNS.filter(({ key }) => !idle.has(key));
}
