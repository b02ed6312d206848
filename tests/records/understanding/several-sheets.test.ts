import { describe, expect, test } from "vitest";
import { report } from "../../../src/report/report.ts";
import { answered } from "../../../src/records/understanding/questions.ts";
import { fixture, readShape, understood } from "./shape.ts";

const JOBS = [{ Job: "1", Came: "13/04/2025", Reel: "Whinbeck 40", Done: "ar clutch replaced" }, { Job: "2", Came: "14/04/2025", Reel: "Slipdene 45", Done: "F/S" }];
const STOCK = [{ Part: "AR clutch", Supplier: "ZET", Price: "11.50", "In stock": "3" }], FIGURES = [{ foo: 1, bar: 2 }];
const file = { name: "shop.json", blob: new Blob([JSON.stringify({ jobs: JOBS, shelf: STOCK, figures: FIGURES })]) };

describe("a file with several sheets", () => {
  test("asks of each what it is, and leaves out what nothing is known of", async () => {
    const { sheets, questions } = await understood(file);
    expect(sheets.map(({ sheet, kind }) => [sheet, kind])).toEqual([["jobs", "jobs"], ["shelf", "stock"], ["figures", "left out"]]);
    expect(questions.filter(({ about }) => about === "sheet").map(({ sheet, best }) => [sheet, best])).toEqual([["jobs", "jobs"], ["shelf", "stock"]]);
  });
  test("is read sheet by sheet, each with its own count and the name of the file and the sheet", async () => {
    const { answers } = await understood(file), { rows, reads } = await readShape(file, { answers });
    expect(reads.map((read) => [read.file, read.rows_read, read.unreadable])).toEqual([["shop.json › jobs", 2, null], ["shop.json › shelf", 1, null]]);
    expect([rows["tickets"]?.length, rows["findings"]?.length, rows["parts"]?.map((row) => [row["part_no"], row["on_hand"]])]).toEqual([2, 1, [["AR clutch", 3]]]);
  });
  test("loses a sheet that the owner leaves out, and no other", async () => {
    const { answers, questions } = await understood(file), shelf = questions.find(({ about, sheet }) => about === "sheet" && sheet === "shelf");
    if (!shelf) throw new RangeError("needs a question about the shelf");
    expect((await readShape(file, { answers: answered(answers, shelf, "left out") })).reads.map((read) => read.file)).toEqual(["shop.json › jobs"]);
  });
});

test("the headless report lists what nobody was asked, and puts the rows that hang on it to the rejected", async () => {
  const done = await report([fixture("bench-notebook.txt"), fixture("workshop-sheet.csv")], { as_of: null, today: "2025-12-31" });
  if ("nothing" in done) throw new RangeError(done.nothing);
  const summary = JSON.parse(done.files.get("summary.json") ?? "") as { files: { file: string; rows_new: number; rows_to_fix: number; remarks: string[] }[] };
  expect(summary.files.map(({ file: name, rows_new, rows_to_fix }) => [name, rows_new, rows_to_fix])).toEqual([["bench-notebook.txt", 0, 4], ["workshop-sheet.csv", 3, 0]]);
  expect(summary.files[0]?.remarks).toEqual(expect.arrayContaining([expect.stringMatching(/^Nobody was asked: Which year .* so rows that need it are to fix\.$/)]));
  expect(summary.files[1]?.remarks).toEqual(expect.arrayContaining([expect.stringMatching(/^Nobody was asked: Is 03\/04\/25 .* Taken: day first\.$/)]));
  expect(done.files.get("rejected.csv")?.split("\n").filter((line) => line.startsWith("bench-notebook.txt"))).toHaveLength(4);
}, 120_000);
