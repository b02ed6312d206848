import type { Labour, LabourRow, SetAside } from "../../answers/labour/labour.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import { count, minutes, number } from "../../ui/format.ts";

/** The rows that hold all models of a job. */
export const wholeJobs = (rows: readonly LabourRow[]): readonly LabourRow[] => rows.filter((row) => row.model === "*");

/** The models of one job. */
export const modelsOf = (rows: readonly LabourRow[], job: LabourRow): readonly LabourRow[] =>
  rows.filter((row) => row.model !== "*" && row.job === job.job && row.reel_kind === job.reel_kind);

/** A job in one sentence, for a quote. */
export function jobSentence(row: LabourRow, locale?: string): string {
  const name = jobName(row).replace(/^./, (letter) => letter.toUpperCase());
  if (row.median === null) return `${name}: ${count(row.n, "job", "jobs", locale)}, too few to say how long it takes.`;
  const quote = row.p80 === null ? "" : `, and 4 in 5 are done within ${minutes(row.p80, locale)}`;
  return `${name} usually takes ${minutes(row.median, locale)}${quote} (${count(row.n, "job", "jobs", locale)}).`;
}

/** Why a figure is missing, else "". */
export const labourRemark = (row: LabourRow): string => (row.median === null ? "too few to say" : row.p80 === null ? "too few to quote from" : "");

/** The room's first sentence: the commonest job, and the one with the longest day. */
export function labourSentence(rows: readonly LabourRow[], locale?: string): string {
  const known = wholeJobs(rows).filter((row) => row.median !== null);
  const [first] = known, slow = [...known].sort((a, b) => (b.p80 ?? 0) - (a.p80 ?? 0))[0];
  if (!first) return "Too few jobs with minutes written to say how long they take.";
  return slow && slow !== first && slow.p80 !== null ? `${jobSentence(first, locale)} ${jobSentence(slow, locale)}` : jobSentence(first, locale);
}

/** What was left out of the figures, one sentence each; empty when nothing was. */
export function leftOut(labour: Labour, locale?: string): readonly string[] {
  const hours = labour.set_aside.filter((one) => one.reason === "typed as hours").length;
  const waiting = labour.set_aside.filter((one) => one.reason === "with waiting").length;
  const said = (n: number, one: string, many: string) => (n === 0 ? [] : [`${number(n, 0, locale)} ${n === 1 ? one : many}.`]);
  return [
    ...said(hours, "job looks like hours typed as minutes", "jobs look like hours typed as minutes"),
    ...said(waiting, "job looks as if waiting was counted as work", "jobs look as if waiting was counted as work"),
    ...said(labour.blank, "finished job has no minutes written", "finished jobs have no minutes written"),
  ];
}

/** Why a ticket was set aside. */
export const REASONS: Readonly<Record<SetAside["reason"], string>> = {
  "typed as hours": "looks like hours typed as minutes",
  "with waiting": "looks as if waiting was counted",
};
