import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { corpus } from "./corpus.ts";
import { heldOut } from "./held-out.ts";
import { readNote, readTaken } from "./reader.ts";
import { precision, recall, scores, type Score } from "./scores.ts";
import { allScores, scoreTable, TABLE, TUNED_ON } from "./score-table.ts";

const figures = allScores(), { sets, together } = figures;
const labels = ({ right, missed }: Score) => right + missed;

function reaches(score: Score, least: { precision: number; recall: number }): void {
  expect(precision(score)).toBeGreaterThanOrEqual(least.precision);
  expect(recall(score)).toBeGreaterThanOrEqual(least.recall);
}

describe("labelled bench notes", () => {
  test("are two thousand first ones and fresh ones by the 250, every id once", () => {
    const all = TUNED_ON.map(([, file]) => corpus(file));
    expect(all[0]?.length).toBeGreaterThanOrEqual(1990);
    expect(all.slice(1).map((notes) => notes.length)).toEqual([250, 250, 250, 250]);
    const every = [...all.flat(), ...corpus("fresh-notes-3")];
    expect(new Set(every.map(({ id }) => id)).size).toBe(every.length);
  });

  test.each(sets)("tuned on ($name): of what is taken without asking 97 of 100 are right, by position and with the action", ({ taken }) => {
    expect(precision(taken.position)).toBeGreaterThanOrEqual(0.97);
    expect(precision(taken.with_action)).toBeGreaterThanOrEqual(0.97);
  });

  test.each(sets)("tuned on ($name): with what the owner answers 90 of 100 labelled findings are taken", ({ answered }) => {
    reaches(answered.position, { precision: 0.97, recall: 0.9 });
    reaches(answered.with_action, { precision: 0.97, recall: 0.9 });
  });

  test("of the sets before the last 77 in 100 labelled findings need no question, of all together 76", () => {
    const before = sets.slice(0, -1).map(({ taken }) => taken), sum = (of: (score: (typeof before)[number]) => Score): Score =>
      before.map(of).reduce((all, { right, extra, missed }) => ({ right: all.right + right, extra: all.extra + extra, missed: all.missed + missed }));
    for (const score of [sum(({ position }) => position), sum(({ with_action }) => with_action)]) reaches(score, { precision: 0.98, recall: 0.77 });
    for (const score of [together.taken.position, together.taken.with_action]) reaches(score, { precision: 0.98, recall: 0.76 });
  });

  const often = [...together.taken.by_position].filter(([, { position }]) => labels(position) >= 20);
  test("name thirty places twenty times or more", () => { expect(often.length).toBeGreaterThanOrEqual(30); });
  test.each(often)("%s is named rightly 7 times in 8, and found 3 times in 4 with what is asked", (place, { position }) => {
    expect(precision(position)).toBeGreaterThanOrEqual(0.875);
    expect(recall(together.answered.by_position.get(place)?.position ?? position)).toBeGreaterThanOrEqual(0.75);
  });

  test("have the pieces of what is taken counted rightly 96 times in 100 and its faults named rightly 96 times", () => {
    expect([precision(together.taken.qty) >= 0.96, precision(together.taken.mode) >= 0.96]).toEqual([true, true]);
  });

  test("that are complaints give no findings and ask nothing", () => {
    expect(TUNED_ON.flatMap(([, file]) => corpus(file)).filter(({ cell }) => cell === "complaint").flatMap((note) => [...readNote(note), ...readTaken(note)])).toEqual([]);
  });
});

describe("notes nobody who writes a rule has looked at", () => {
  const { taken, answered, asked } = heldOut();
  test("stay where they were measured: 98 of 100 taken without asking are the right part, 93 with the action; 58 of 100 are taken", () => {
    reaches(taken.position, { precision: 0.98, recall: 0.58 });
    reaches(taken.with_action, { precision: 0.93, recall: 0.55 });
  });
  test("reach 97 and 90 of 100 by position, when the owner answers some 190 questions rightly, and with the action 95 and 89", () => {
    reaches(answered.position, { precision: 0.97, recall: 0.9 });
    reaches(answered.with_action, { precision: 0.95, recall: 0.89 });
    expect(asked).toBeLessThanOrEqual(190);
  });
});

test("the committed table is the one these notes and this parser give", () => {
  expect(readFileSync(TABLE, "utf8"), "write it anew: node src/commands/run-ts.mjs tests/records/notes/score-table.ts").toBe(scoreTable(figures));
});

describe("the measure itself", () => {
  const note = corpus().find(({ id }) => id === "n002");
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
