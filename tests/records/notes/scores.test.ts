import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { corpus } from "./corpus.ts";
import { readNote } from "./reader.ts";
import { precision, recall, scores, type Score } from "./scores.ts";
import { allScores, scoreTable, TABLE } from "./score-table.ts";

const notes = corpus(), fresh = { tuning: corpus("fresh-notes-tuning"), held_out: corpus("fresh-notes-held-out") };
const figures = allScores(), { held_out, tuning, first, tuned_on, all } = figures;
const labels = ({ right, missed }: Score) => right + missed;

function reaches(score: Score, least: { precision: number; recall: number }): void {
  expect(precision(score)).toBeGreaterThanOrEqual(least.precision);
  expect(recall(score)).toBeGreaterThanOrEqual(least.recall);
}

describe("labelled bench notes", () => {
  test("are two thousand first ones and five hundred fresh ones, half of those held out, every id once", () => {
    expect(notes.length).toBeGreaterThanOrEqual(1990);
    expect([fresh.tuning.length, fresh.held_out.length]).toEqual([250, 250]);
    expect(new Set([...notes, ...fresh.tuning, ...fresh.held_out].map(({ id }) => id)).size).toBe(notes.length + 500);
  });

  test("taken together reach the aim: 97 of 100 findings read are right, 90 of 100 labelled ones are read, by position and with the action", () => {
    reaches(all.position, { precision: 0.97, recall: 0.9 });
    reaches(all.with_action, { precision: 0.97, recall: 0.9 });
  });

  test("tuned on reach the aim, each set of them", () => {
    for (const set of [tuning, first]) {
      reaches(set.position, { precision: 0.98, recall: 0.9 });
      reaches(set.with_action, { precision: 0.97, recall: 0.9 });
    }
  });

  test("held out miss the aim and stay where they were measured: 95 and 80 of 100 by position, 87 and 74 with the action", () => {
    reaches(held_out.position, { precision: 0.95, recall: 0.8 });
    reaches(held_out.with_action, { precision: 0.87, recall: 0.74 });
  });

  const often = [...tuned_on.by_position].filter(([, { position }]) => labels(position) >= 20);
  test("name thirty places twenty times or more", () => { expect(often.length).toBeGreaterThanOrEqual(30); });
  test.each(often)("%s is named rightly 7 times in 8 and found 3 times in 4", (_, { position }) => { reaches(position, { precision: 0.875, recall: 0.75 }); });

  test("findings of a confidence of 0.9 or more are right 97 times in 100, held out or not", () => {
    for (const { sure } of [all, held_out, tuning]) {
      expect(sure.right + sure.extra).toBeGreaterThan(50);
      expect(precision(sure)).toBeGreaterThanOrEqual(0.97);
    }
  });

  test("have their pieces counted rightly 96 times in 100 and their faults named rightly 97 times; held out 91 and 96 times", () => {
    expect([precision(all.qty) >= 0.96, precision(all.mode) >= 0.97]).toEqual([true, true]);
    expect([precision(held_out.qty) >= 0.91, precision(held_out.mode) >= 0.96]).toEqual([true, true]);
  });

  test("that are complaints give no findings", () => {
    expect(notes.filter(({ cell }) => cell === "complaint").flatMap(readNote)).toEqual([]);
  });
});

test("the committed table is the one these notes and this parser give", () => {
  expect(readFileSync(TABLE, "utf8"), "write it anew: node src/commands/run-ts.mjs tests/records/notes/score-table.ts").toBe(scoreTable(figures));
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
