import { expect, test } from "vitest";
import type { NumberAsked } from "../../../src/answers/behind/behind.ts";
import type { ThingCounted } from "../../../src/answers/behind/things.ts";
import { ALL_WEAR } from "../../../src/answers/wear/wear-records.ts";
import { askedWords, numberAsked } from "../../../src/rooms/records/number-asked.ts";
import { behindColumns, behindFile, behindSentence, countsWords, sourcesWords } from "../../../src/rooms/records/rows-behind-columns.ts";
import { BEHIND_FIELDS, rowsBehindLink } from "../../../src/ui/rows-behind-link.ts";
import { cellText } from "../../../src/ui/table-rows.ts";
import { placeOf, valuesOf } from "../../../src/ui/url-state.ts";

const ASKED: NumberAsked = { ...ALL_WEAR, of: "inspections", position: "line_roller_bearing", part: null, job: null, opening: "*", denominator: "coverage" };
const source = (source_file: string, source_line: number, import_no = 1) => ({ source_file, source_line, import_no });
const THING: ThingCounted = {
  ticket_no: "R-1", received_on: "2026-03-01", maker: "Eldmere", model: "=Withy", reel_kind: "fly", job: "drag", counted: true, hit: true, why: null, position: "line_roller_bearing",
  part_no: null, low: null, high: null, said: "worn grade 3", sources: [source("t.csv", 4), source("f.csv", 7), source("f.csv", 9, 2)],
};
const OUT: ThingCounted = { ...THING, ticket_no: "R-2", counted: false, hit: false, why: "its job does not open this part", said: null, sources: [source("t.csv", 5)] };

test("an address asks for the number it was made of, filters and all, and none where it names none", () => {
  const link = rowsBehindLink({ of: "inspections", position: "line_roller_bearing", water: "salt", from: "2025-01-01", opening: "planned", counted: "written" });
  expect(numberAsked(valuesOf(BEHIND_FIELDS, placeOf(link).query).values)).toEqual({ ...ASKED, water: "salt", from: "2025-01-01", opening: "planned", denominator: "strict" });
  expect(numberAsked(valuesOf(BEHIND_FIELDS, "position=rotor").values)).toBe(null);
});

test("what is listed behind a number is said with its filter in the owner's words", () => {
  expect(askedWords({ ...ASKED, maker: "Eldmere", model: "Withy 5", opening: "planned", water: "salt" })).toBe("Line roller bearing, Eldmere Withy 5, planned work, salt water");
  expect(askedWords({ ...ASKED, of: "pieces", position: null, part: "BRG-4x7x2.5" })).toBe("Use of BRG-4x7x2.5");
  expect(askedWords({ ...ASKED, of: "jobs", position: null, job: "drag, fly" })).toBe("Finished jobs, drag, fly");
});

test("the sentence has the number's own counts, and says of what else is listed that it does not count", () => {
  expect(behindSentence(ASKED, { things: [THING, OUT], n: 1, x: 1 }, "en-GB")).toBe("1 failed of 1 inspected. 1 more in the list is not counted; the reason stands beside.");
  expect(behindSentence({ of: "pieces" }, { things: [THING], n: 3, x: 1 }, "en-GB")).toBe("3 pieces, 1 of them wanted when there were none.");
  expect([countsWords("inspections", THING), countsWords("inspections", OUT)]).toEqual(["failed", "not counted: its job does not open this part"]);
});

test("each thing names every file and line and the imports they came in", () => {
  expect(sourcesWords(THING.sources)).toBe("t.csv 4; f.csv 7, 9");
  const columns = behindColumns("inspections", { clock: "salt_days", currency: "" });
  expect(columns.slice(-3).map((column) => cellText(column, THING))).toEqual(["failed", "t.csv 4; f.csv 7, 9", "1, 2"]);
});

test("the file has a line for every row, those of one thing under one number, and no cell that a spreadsheet would run", () => {
  expect(behindFile("inspections", { things: [THING, OUT], n: 1, x: 1 })).toBe([
    "number,ticket_no,received_on,maker,model,reel_kind,job,position,counts_as,said,source_file,source_line,import_no",
    "1,R-1,2026-03-01,Eldmere,'=Withy,fly,drag,line_roller_bearing,failed,worn grade 3,t.csv,4,1",
    "1,R-1,2026-03-01,Eldmere,'=Withy,fly,drag,line_roller_bearing,failed,worn grade 3,f.csv,7,1",
    "1,R-1,2026-03-01,Eldmere,'=Withy,fly,drag,line_roller_bearing,failed,worn grade 3,f.csv,9,2",
    "2,R-2,2026-03-01,Eldmere,'=Withy,fly,drag,line_roller_bearing,not counted: its job does not open this part,,t.csv,5,1", "",
  ].join("\r\n"));
});
