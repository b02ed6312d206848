import { expect, test } from "vitest";
import { behindWords, FOUND_COLUMNS } from "../../../src/rooms/records/rows-behind-columns.ts";
import { cellText } from "../../../src/ui/table-rows.ts";

const NONE = { position: "", part: "", job: "", kind: "", maker: "", model: "" };
const ROW = {
  ticket_no: "R-1", received_on: "2026-03-01", maker: "Eldmere", model: "Withy 5", job: "drag", position: "line_roller_bearing", action: "replaced", grade: 3, part_no: null, qty: 2,
  labour_min: null, import_no: 1, source_file: "f.csv", source_line: 7,
};
const done = (change: Partial<typeof ROW> | { action: null; qty: null; grade: null }) => {
  const column = FOUND_COLUMNS.find(({ key }) => key === "done");
  return column && cellText(column, { ...ROW, ...change });
};

test("what is listed behind a number is said in the owner's words", () => {
  expect(behindWords({ ...NONE, position: "line_roller_bearing", maker: "Eldmere", model: "Withy 5" })).toBe("Findings at line roller bearing on Eldmere Withy 5");
  expect(behindWords({ ...NONE, part: "BRG-4x7x2.5" })).toBe("Use of BRG-4x7x2.5");
  expect(behindWords({ ...NONE, job: "drag", kind: "fly" })).toBe("Tickets of the job drag (fly)");
});

test("what was done is said with its pieces and grade, and a place only looked at was seen", () => {
  expect([done({}), done({ action: null, qty: null, grade: null })]).toEqual(["replaced ×2, grade 3", "seen"]);
});
