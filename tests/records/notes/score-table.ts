import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { corpus, type LabelledNote } from "./corpus.ts";
import { readNote } from "./reader.ts";
import { precision, recall, scores, type Score, type Scores } from "./scores.ts";

export const TABLE = join(import.meta.dirname, "scores.md");

const labels = ({ right, missed }: Score) => right + missed;
const share = (value: number) => (Number.isNaN(value) ? "–" : value.toFixed(3));
const both = (score: Score) => `${share(precision(score))} | ${share(recall(score))}`;

function overall(name: string, { notes, position, with_action, qty, sure }: Scores): string {
  const pieces = share(qty.right / (qty.right + qty.extra)), certain = `${share(precision(sure))} (${sure.right + sure.extra})`;
  return `| ${[name, notes, labels(position), both(position), both(with_action), pieces, certain].join(" | ")} |`;
}

function byPosition({ by_position }: Scores): string[] {
  return [...by_position].sort(([a, x], [b, y]) => labels(y.position) - labels(x.position) || (a < b ? -1 : 1))
    .map(([place, { position, with_action }]) => `| ${place} | ${labels(position)} | ${both(position)} | ${both(with_action)} |`);
}

/** The figures of the labelled notes as a page: held-out notes by themselves, the others, all; then position by position over all. */
export function scoreTable(notes: readonly LabelledNote[] = corpus()): string {
  const of = (some: readonly LabelledNote[]) => scores(some, readNote), all = of(notes);
  return `${[
    "# How well bench notes are read",
    "",
    "Written by `node src/commands/run-ts.mjs tests/records/notes/score-table.ts`; a test compares it. What counts as right stands in README.md.",
    "Precision: of the findings read, the share that was right. Recall: of the labelled findings, the share that was read.",
    "Pieces: of the parts replaced or wanted, the share with the right number. Sure: of the findings given a confidence of 0.9 or more, the share right.",
    "",
    "| notes | n | findings | position: precision | recall | position × action: precision | recall | pieces | sure (n) |",
    "| --- | --- | --- | --- | --- | --- | --- | --- | --- |",
    overall("held out", of(notes.filter((note) => note.held_out))),
    overall("tuned on", of(notes.filter((note) => !note.held_out))),
    overall("all", all),
    "",
    "| position (all notes) | labels | precision | recall | × action: precision | recall |",
    "| --- | --- | --- | --- | --- | --- |",
    ...byPosition(all),
  ].join("\n")}\n`;
}

/** Writes the page. */
export function main(): Promise<number> {
  writeFileSync(TABLE, scoreTable());
  return Promise.resolve(0);
}
