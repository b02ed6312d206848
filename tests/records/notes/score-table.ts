import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { shareInterval } from "../../../src/stats/share-interval.ts";
import { corpus, type LabelledNote, type NotesFile } from "./corpus.ts";
import { countAsked, readAnswered, readTaken } from "./reader.ts";
import { precision, recall, scores, type Score, type Scores } from "./scores.ts";

export const TABLE = join(import.meta.dirname, "scores.md");

/** Scores of a set of notes: of what is taken without asking, of that with what the owner answers, and how many readings are asked. */
export interface SetScores { readonly name: string; readonly taken: Scores; readonly answered: Scores; readonly asked: number }

const scored = (name: string, notes: readonly LabelledNote[]): SetScores => ({
  name, taken: scores(notes, readTaken), answered: scores(notes, readAnswered), asked: notes.reduce((sum, note) => sum + countAsked(note), 0),
});

/** The sets that rules were tuned on, in the order in which they were written. */
export const TUNED_ON: readonly (readonly [name: string, file: NotesFile])[] = [
  ["first", "corpus"], ["fresh", "fresh-notes-tuning"], ["fresh, once held out", "fresh-notes-held-out"], ["fresh 2", "fresh-notes-2-tuning"],
  ["fresh 2, once held out", "fresh-notes-2-held-out"],
];

/** Scores of each set tuned on and of all of them together. */
export function allScores(): { sets: readonly SetScores[]; together: SetScores } {
  return { sets: TUNED_ON.map(([name, file]) => scored(name, corpus(file))), together: scored("together", TUNED_ON.flatMap(([, file]) => corpus(file))) };
}

const labels = ({ right, missed }: Score) => right + missed;
const share = (value: number) => (Number.isNaN(value) ? "–" : value.toFixed(3));
const both = (score: Score) => `${share(precision(score))} | ${share(recall(score))}`;

function range(right: number, of: number): string {
  const [low, high] = shareInterval(right, of);
  return `${share(right / of)} (${right} of ${of}; ${share(low)}–${share(high)})`;
}
const ranges = ({ right, extra, missed }: Score) => `${range(right, right + extra)} | ${range(right, right + missed)}`;

/** One set's line of the table of what is taken, or of what is taken when the owner answers. */
export const overall = (name: string, { notes, position, with_action }: Scores): string =>
  `| ${[name, notes, labels(position), ranges(position), ranges(with_action)].join(" | ")} |`;

function others({ name, asked, taken: { notes, qty, mode } }: SetScores): string {
  const rightly = (score: Score) => `${share(score.right / (score.right + score.extra))} (${score.right + score.extra})`;
  return `| ${[name, `${asked} in ${notes} notes`, rightly(qty), rightly(mode)].join(" | ")} |`;
}

function byPosition({ taken, answered }: SetScores): string[] {
  return [...answered.by_position].sort(([a, x], [b, y]) => labels(y.position) - labels(x.position) || (a < b ? -1 : 1)).map(([place, whole]) => {
    const here = taken.by_position.get(place);
    return `| ${place} | ${labels(whole.position)} | ${here ? `${both(here.position)} | ${both(here.with_action)}` : "– | – | – | –"} | ${share(recall(whole.position))} |`;
  });
}

const HEAD = ["| notes | n | findings | position: precision | recall | position × action: precision | recall |", "| --- | --- | --- | --- | --- | --- | --- |"];

/** The figures as a page: the sets tuned on by themselves and together; then position by position. */
export function scoreTable({ sets, together } = allScores()): string {
  const all = [...sets, together];
  return `${[
    "# How well bench notes are read",
    "",
    "Written by `node src/commands/run-ts.mjs tests/records/notes/score-table.ts`; a test compares it. What counts as right stands in README.md, with",
    "the held-out notes, which this page never shows. Precision: of the findings read, the share that was right. Recall: of the labelled findings, the",
    "share that was read. In brackets the counts, and the range in which the true share plausibly lies (95 %, Wilson 1927).",
    "",
    "## Taken without asking",
    "",
    ...HEAD, ...all.map(({ name, taken }) => overall(name, taken)),
    "",
    "## With what is asked, when the owner answers rightly",
    "",
    ...HEAD, ...all.map(({ name, answered }) => overall(name, answered)),
    "",
    "## Asked, and details of what is taken",
    "",
    "Pieces: of the parts replaced or wanted, the share with the right number. Fault: of the faults labelled and named, the share named rightly.",
    "",
    "| notes | readings asked | pieces | fault |",
    "| --- | --- | --- | --- |",
    ...all.map(others),
    "",
    "## By position",
    "",
    "| position | labels | taken: precision | recall | × action: precision | recall | recall with what is asked |",
    "| --- | --- | --- | --- | --- | --- | --- |",
    ...byPosition(together),
  ].join("\n")}\n`;
}

/** Writes the page. */
export function main(): Promise<number> {
  writeFileSync(TABLE, scoreTable());
  return Promise.resolve(0);
}
