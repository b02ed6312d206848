import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { corpus } from "./corpus.ts";
import { readNote } from "./reader.ts";
import { precision, recall, scores, type Score } from "./scores.ts";
import { scoreTable, TABLE } from "./score-table.ts";

const notes = corpus(), held_out = notes.filter((note) => note.held_out);
const all = scores(notes, readNote), unseen = scores(held_out, readNote);
const labels = ({ right, missed }: Score) => right + missed;

function reaches(score: Score, least: { precision: number; recall: number }): void {
  expect(precision(score)).toBeGreaterThanOrEqual(least.precision);
  expect(recall(score)).toBeGreaterThanOrEqual(least.recall);
}

describe("labelled bench notes", () => {
  test("are two thousand, a fifth of them held out, every id once", () => {
    expect(notes.length).toBeGreaterThanOrEqual(1990);
    expect(held_out).toHaveLength(435);
    expect(new Set(notes.map(({ id }) => id)).size).toBe(notes.length);
  });

  test("taken together reach the aim: 97 of 100 findings read are right, 90 of 100 labelled ones are read, by position and with the action", () => {
    reaches(all.position, { precision: 0.97, recall: 0.9 });
    reaches(all.with_action, { precision: 0.97, recall: 0.9 });
  });

  test("held out stay where they were measured: precision a point under the aim by position, three under it with the action", () => {
    reaches(unseen.position, { precision: 0.96, recall: 0.9 });
    reaches(unseen.with_action, { precision: 0.94, recall: 0.89 });
  });

  const often = [...all.by_position].filter(([, { position }]) => labels(position) >= 20);
  test("name thirty places twenty times or more", () => { expect(often.length).toBeGreaterThanOrEqual(30); });
  test.each(often)("%s is named rightly 7 times in 8 and found 3 times in 4", (_, { position }) => { reaches(position, { precision: 0.875, recall: 0.75 }); });

  test("findings of a confidence of 0.9 or more are right 98 times in 100, held out or not", () => {
    for (const { sure } of [all, unseen]) {
      expect(sure.right + sure.extra).toBeGreaterThan(200);
      expect(precision(sure)).toBeGreaterThanOrEqual(0.98);
    }
  });

  test("have their pieces counted rightly 94 times in 100 and their faults named rightly 96 times", () => {
    for (const { qty, mode } of [all, unseen]) {
      expect(precision(qty)).toBeGreaterThanOrEqual(0.94);
      expect(precision(mode)).toBeGreaterThanOrEqual(0.96);
    }
  });

  test("that are complaints give no findings", () => {
    expect(notes.filter(({ cell }) => cell === "complaint").flatMap(readNote)).toEqual([]);
  });
});

test("the committed table is the one these notes and this parser give", () => {
  expect(readFileSync(TABLE, "utf8"), "write it anew: node src/commands/run-ts.mjs tests/records/notes/score-table.ts").toBe(scoreTable(notes));
});

describe("the measure itself", () => {
  const note = notes.find(({ id }) => id === "n002");
  if (!note) throw new RangeError("scores.test: needs note n002 in the corpus");
  const right = { place: "line_roller_bearing", action: "replaced", qty: 1, mode: "seized", confidence: 1 };
  test("counts a right, a wrong and a missed finding as what they are", () => {
    expect(scores([note], () => [right]).with_action).toEqual({ right: 1, extra: 0, missed: 0 });
    expect(scores([note], () => [{ ...right, action: "cleaned" }])).toMatchObject({ position: { right: 1, extra: 0, missed: 0 },
      with_action: { right: 0, extra: 1, missed: 1 } });
    expect(scores([note], () => [{ ...right, place: "ar_clutch" }]).position).toEqual({ right: 0, extra: 1, missed: 1 });
    expect(scores([note], () => []).position).toEqual({ right: 0, extra: 0, missed: 1 });
  });
  test("takes an unspecified bearing for the labelled one as a place missed, not as a wrong one", () => {
    expect(scores([note], () => [{ ...right, place: "?ball bearing" }]).position).toEqual({ right: 0, extra: 0, missed: 1 });
  });
});
