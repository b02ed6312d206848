import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { shareInterval } from "../../../src/stats/share-interval.ts";
import { corpus } from "./corpus.ts";
import { readNote } from "./reader.ts";
import { precision, recall, scores, type Score, type Scores } from "./scores.ts";

export const TABLE = join(import.meta.dirname, "scores.md");

/** Scores of the labelled notes: those no rule was ever tuned on, the fresh half that was, the first ones, and all together. */
export function allScores() {
  const first = corpus(), tuning = corpus("fresh-notes-tuning"), held_out = corpus("fresh-notes-held-out");
  return {
    held_out: scores(held_out, readNote), tuning: scores(tuning, readNote), first: scores(first, readNote), tuned_on: scores([...first, ...tuning], readNote),
    all: scores([...first, ...tuning, ...held_out], readNote),
  };
}

const labels = ({ right, missed }: Score) => right + missed;
const share = (value: number) => (Number.isNaN(value) ? "–" : value.toFixed(3));
const both = (score: Score) => `${share(precision(score))} | ${share(recall(score))}`;

function range(right: number, of: number): string {
  const [low, high] = shareInterval(right, of);
  return `${share(right / of)} (${right} of ${of}; ${share(low)}–${share(high)})`;
}
const ranges = ({ right, extra, missed }: Score) => `${range(right, right + extra)} | ${range(right, right + missed)}`;

function overall(name: string, { notes, position, with_action }: Scores): string {
  return `| ${[name, notes, labels(position), ranges(position), ranges(with_action)].join(" | ")} |`;
}

function others(name: string, { qty, mode, sure }: Scores): string {
  const rightly = (score: Score) => `${share(score.right / (score.right + score.extra))} (${score.right + score.extra})`;
  return `| ${[name, rightly(qty), rightly(mode), rightly(sure)].join(" | ")} |`;
}

function byPosition({ by_position }: Scores): string[] {
  return [...by_position].sort(([a, x], [b, y]) => labels(y.position) - labels(x.position) || (a < b ? -1 : 1))
    .map(([place, { position, with_action }]) => `| ${place} | ${labels(position)} | ${both(position)} | ${both(with_action)} |`);
}

/** The figures as a page: the sets of notes by themselves and together; then position by position over the notes tuned on. */
export function scoreTable({ held_out, tuning, first, tuned_on, all } = allScores()): string {
  const named = [["held out", held_out], ["fresh, tuned on", tuning], ["first, tuned on", first], ["all", all]] as const;
  return `${[
    "# How well bench notes are read",
    "",
    "Written by `node src/commands/run-ts.mjs tests/records/notes/score-table.ts`; a test compares it. What counts as right stands in README.md.",
    "Precision: of the findings read, the share that was right. Recall: of the labelled findings, the share that was read. In brackets the counts, and",
    "the range in which the true share plausibly lies (95 %, Wilson 1927).",
    "",
    "| notes | n | findings | position: precision | recall | position × action: precision | recall |",
    "| --- | --- | --- | --- | --- | --- | --- |",
    ...named.map(([name, set]) => overall(name, set)),
    "",
    "Pieces: of the parts replaced or wanted, the share with the right number. Fault: of the faults labelled and named, the share named rightly.",
    "Sure: of the findings given a confidence of 0.9 or more, the share right. In brackets how many there are.",
    "",
    "| notes | pieces | fault | sure |",
    "| --- | --- | --- | --- |",
    ...named.map(([name, set]) => others(name, set)),
    "",
    "| position (notes tuned on) | labels | precision | recall | × action: precision | recall |",
    "| --- | --- | --- | --- | --- | --- |",
    ...byPosition(tuned_on),
  ].join("\n")}\n`;
}

/** Writes the page. */
export function main(): Promise<number> {
  writeFileSync(TABLE, scoreTable());
  return Promise.resolve(0);
}
