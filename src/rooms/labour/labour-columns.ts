import type { LabourRow, SetAside } from "../../answers/labour/labour.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import { modelName } from "../../answers/model-name.ts";
import { DASH, date, minutes, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { labourRemark, REASONS } from "./labour-words.ts";

const right = { align: "right" } as const;
const time = (key: "median" | "mean" | "p80" | "pooled_median" | "pooled_p80", label: string, unit?: string): Column<LabourRow> =>
  ({ key, label, ...(unit && { unit }), ...right, value: (row) => row[key], text: (row) => minutes(row[key]) });
const likely: Column<LabourRow> = {
  key: "mean_low", label: "Average likely", value: (row) => row.mean_low,
  text: (row) => (row.mean_low === null || row.mean_high === null ? DASH : `${minutes(row.mean_low)} to ${minutes(row.mean_high)}`),
};
const jobs: Column<LabourRow> = { key: "n", label: "Jobs", ...right, value: (row) => row.n, text: (row) => number(row.n) };
const usual = time("median", "Usual"), average = time("mean", "Average"), four_in_five = time("p80", "4 in 5 within");

/** One line for each job and kind of reel. */
export const JOB_COLUMNS: readonly Column<LabourRow>[] = [
  { key: "name", label: "Job", value: jobName }, jobs, usual, four_in_five, average, likely,
  { key: "remark", label: "Remark", value: (row) => labourRemark(row) || null, text: (row) => labourRemark(row) || " " },
  { key: "warranty", label: "Warranty", ...right, value: (row) => row.warranty, text: (row) => (row.warranty === 0 ? DASH : number(row.warranty)) },
  { key: "in_batches", label: "In batches", ...right, value: (row) => row.in_batches, text: (row) => (row.in_batches === 0 ? DASH : number(row.in_batches)) },
];

/** The models of one job. */
export const MODEL_COLUMNS: readonly Column<LabourRow>[] = [
  { key: "model", label: "Model", value: modelName }, jobs, usual, four_in_five, average, likely,
  time("pooled_median", "Usual", "evened out"), time("pooled_p80", "4 in 5 within", "evened out"),
];

/** Tickets whose minutes were not counted. */
export const ASIDE_COLUMNS: readonly Column<SetAside>[] = [
  { key: "received_on", label: "Came in", value: (row) => row.received_on, text: (row) => date(row.received_on) },
  { key: "ticket_no", label: "Ticket", value: (row) => row.ticket_no },
  { key: "job", label: "Job", value: jobName },
  { key: "model", label: "Reel", value: modelName },
  { key: "labour_min", label: "Minutes as written", ...right, value: (row) => row.labour_min, text: (row) => number(row.labour_min, Number.isInteger(row.labour_min) ? 0 : 1) },
  { key: "reason", label: "Why set aside", value: (row) => REASONS[row.reason] },
  { key: "source", label: "File and line", value: (row) => (row.source_file === null ? null : `${row.source_file}, line ${row.source_line ?? DASH}`) },
];
