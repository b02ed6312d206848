import { describe, expect, test } from "vitest";
import { mappingFrom } from "../../../src/records/reading/mapping.ts";
import { answersFrom, answersText } from "../../../src/records/understanding/answers-text.ts";
import { examine } from "../../../src/records/understanding/examine.ts";
import { preview } from "../../../src/records/understanding/preview.ts";
import { answered, withColumn } from "../../../src/records/understanding/questions.ts";
import { settingName, shapeOfSetting } from "../../../src/records/understanding/shape-key.ts";
import { asked, ends, fixes, fixture, readShape, sheetOf, understood } from "./shape.ts";

const JOBS = "Job;Came;Reel;Done;Time\n";
const days = (...written: string[]) => sheetOf(`${JOBS}${written.map((day, at) => `${at + 1};${day};Whinbeck 40;F/S;55\n`).join("")}`);
const read = async (file: ReturnType<typeof sheetOf>) => (await readShape(file)).rows["tickets"]?.map((row) => row["received_on"]) ?? [];

describe("the order of day and month", () => {
  test("is proved by one number over 12 and then holds for the whole file", async () => {
    expect(await read(days("03/04/2025", "25/04/2025"))).toEqual(["2025-04-03", "2025-04-25"]);
    expect(await read(days("03/04/2025", "04/25/2025"))).toEqual(["2025-03-04", "2025-04-25"]);
    expect((await understood(days("03/04/2025", "25/04/2025"))).questions).toEqual([]);
  });
  test("is asked when nothing proves it, and rows wait when nothing speaks for one", async () => {
    const file = days("03/04/2025", "03/04/2025"), { questions } = await understood(file);
    expect(questions.map(({ about, ask, best }) => [about, ask, best])).toEqual([["dates", "Is 03/04/2025 the 3 April or the 4 March?", null]]);
    expect(ends(await readShape(file))).toMatchObject({ in: 0, to_fix: 2 });
    const { answers } = await understood(file, { dates: "month first" });
    expect((await readShape(file, { answers })).rows["tickets"]?.map((row) => row["received_on"])).toEqual(["2025-03-04", "2025-03-04"]);
  });
  test("is likely the one in which the rows stand in the order of their days", async () => {
    expect((await understood(days("02/03/2025", "01/04/2025", "05/04/2025"))).questions.map(({ best }) => best)).toEqual(["day first"]);
  });
  test("contradicted by fewer than half the proofs, lists them with their lines", async () => {
    const { sheets } = await understood(days("03/14/2025", "03/15/2025", "16/03/2025"));
    expect(sheets[0]?.dates).toMatchObject({ order: "month first", proved: false, against: [{ line: 4, value: "16/03/2025" }] });
  });
});

describe("dates without a year", () => {
  test("run on from the first year that is known, over the turn of the year", async () => {
    expect(await read(days("30/11/2024", "28/12", "14/1", "15/2"))).toEqual(["2024-11-30", "2024-12-28", "2025-01-14", "2025-02-15"]);
  });
  test("take the year in the file's name, and ask for it all the same", async () => {
    const file = { ...days("28/11", "13/12"), name: "bench 2024.csv" }, { questions } = await understood(file);
    expect(questions.map(({ about, best }) => [about, best])).toEqual([["year", "2024"]]);
    expect(await read(file)).toEqual(["2024-11-28", "2024-12-13"]);
  });
});

describe("where a table starts", () => {
  test("titles above it are passed over, headings again and totals below are dropped, and each is counted", async () => {
    const text = "Repairs 2025;;;;\n;;;;\nJob;Came;Reel;Done;Time\n1;13/04/2025;Whinbeck 40;F/S;55\nJob;Came;Reel;Done;Time\n;;;TOTAL;55\n;;;;\n";
    const done = await readShape(sheetOf(text));
    expect(ends(done)).toEqual({ read: 6, in: 1, known: 0, to_fix: 0, dropped: 5 });
    expect(done.reads[0]?.remarks).toEqual(expect.arrayContaining(["1 row: passed over above the headings.", "1 row: dropped as a repeat of the headings.", "1 row: dropped as a row of totals."]));
  });
  test("a sheet without headings is known by its values", async () => {
    const rows = ["13/04/2025;Whinbeck 40;new bail spring;55", "14/04/2025;Slipdene 45;ar clutch replaced;40", "15/04/2025;Ekholt 30;body seal replaced;35"];
    const { sheets, questions } = await understood(sheetOf(`${rows.join("\n")}\n`));
    expect([sheets[0]?.heading_line, sheets[0]?.columns.slice(0, 3).map(({ label, means }) => [label, means])]).toEqual([null, [["column 1", "received_on"], ["column 2", "reel"], ["column 3", "work_text"]]]);
    expect(questions.filter(({ about }) => about === "column").map(({ column }) => column)).toContain("column 2");
    expect((await readShape(sheetOf(`${rows.join("\n")}\n`))).rows["tickets"]).toHaveLength(3);
  });
  test("columns of single parts make findings of their figures", async () => {
    const { rows } = await readShape(sheetOf("Ticket;Date In;Reel;Bail spring;AR clutch\n1;13/04/2025;Whinbeck 40;2;\n2;14/04/2025;Whinbeck 40;0;1\n"));
    expect(rows["findings"]?.map((row) => [row["ticket_no"], row["position"], row["qty"]])).toEqual([["1", "bail_spring", 2], ["2", "ar_clutch", 1]]);
  });
});

describe("answers", () => {
  test("stand as text unchanged, and leave nothing to ask the next time", async () => {
    const { answers, shape_key } = await understood(fixture("bench-notebook.txt"), { dates: "month first", year: "2025" });
    expect(answersFrom(answersText(answers))).toEqual(answers);
    const again = await examine(fixture("bench-notebook.txt"), asked({ remembered: answers }));
    expect([again.questions, again.from_memory, again.shape_key]).toEqual([[], true, shape_key]);
  });
  test("kept for a shape are used for another file of that shape, whatever its name and rows", async () => {
    const { answers, shape_key } = await understood(days("03/04/2025"), { dates: "month first" }), other = { ...days("05/06/2025", "07/08/2025"), name: "may.csv" };
    const { rows } = await readShape(other, { remembered: [{ shape: "another", answers: { version: 1, sheets: [] } }, { shape: shape_key, answers }] });
    expect(rows["tickets"]?.map((row) => row["received_on"])).toEqual(["2025-05-06", "2025-07-08"]);
    expect(shapeOfSetting(settingName(shape_key))).toBe(shape_key);
    expect(shapeOfSetting("currency")).toBeNull();
  });
  test("move a column: what had its meaning before is left out", async () => {
    const file = sheetOf("Job;Came;Reel;Done;Fitted\n1;13/04/2025;Whinbeck 40;ar clutch;bail spring\n"), { answers } = await understood(file);
    const moved = withColumn(answers, null, "Done", "complaint"), { rows } = await readShape(file, { answers: moved });
    expect([rows["tickets"]?.[0]?.["complaint"], rows["findings"]?.map((row) => row["position"])]).toEqual(["ar clutch", ["bail_spring"]]);
    const taken = withColumn(answers, null, "Job", "received_on").sheets[0]?.columns;
    expect(taken?.filter(({ means }) => means === "received_on").map(({ column }) => column)).toEqual(["Job"]);
  });
  test("that fit nothing are a mistake of the caller", async () => {
    const { answers } = await understood(days("03/04/2025")), [question] = (await examine(days("03/04/2025"), asked())).questions;
    expect(() => question && answered(answers, question, "sideways")).toThrow(RangeError);
    expect(() => withColumn(answers, null, "Done", "wingspan")).toThrow("withColumn: needs one of reel,");
  });
  test.each(["{", "[]", "{\"sheets\":[{\"kind\":\"poem\"}]}", "{\"sheets\":[{\"kind\":\"jobs\",\"columns\":[{\"column\":\"a\",\"means\":\"constructor\"}]}]}", "{\"version\":2,\"sheets\":[]}"])("that are no answers are refused: %s", (text) => {
    expect(() => answersFrom(text)).toThrow("The answers kept for this sheet");
  });
});

describe("mapping.json", () => {
  const file = sheetOf("No;Tag;Rolle;Getan;Std\n7;03/04/2025;Whinbeck 40;bail spring replaced;1,5\n");
  test("in its short form says what the columns are and how values are written", async () => {
    const mapping = mappingFrom(JSON.stringify({ columns: { No: "ticket_no", Tag: "received_on", Rolle: "reel", Getan: "work_text", Std: "labour_hours" }, dates: "day first", constants: { water: "salt" } }));
    const { rows } = await readShape(file, { mapping });
    expect(rows["tickets"]).toMatchObject([{ ticket_no: "7", received_on: "2025-04-03", model: "Whinbeck 40", labour_min: 90, water: "salt" }]);
    expect(rows["findings"]).toMatchObject([{ position: "bail_spring", action: "replaced" }]);
  });
  test("may be the answers themselves", async () => {
    const columns = [["No", "ticket_no"], ["Tag", "received_on"], ["Rolle", "reel"]].map(([column, means]) => ({ column, means }));
    const mapping = mappingFrom(JSON.stringify({ version: 1, sheets: [{ sheet: null, kind: "jobs", columns, dates: "month first" }] }));
    expect((await readShape(file, { mapping })).rows["tickets"]).toMatchObject([{ received_on: "2025-03-04" }]);
  });
  test("may say what a note means that is not sure; without that it takes no guess, and says so", async () => {
    const unsure = sheetOf("No;Tag;Rolle;Getan;Std\n8;03/04/2025;Whinbeck 40;line roller seems a bit weak, dunno;1,5\n");
    const short = { columns: { No: "ticket_no", Tag: "received_on", Rolle: "reel", Getan: "work_text", Std: "labour_hours" }, dates: "day first" };
    const notes = [{ wording: "line roller seems a bit weak", read_as: { place: "line_roller", action: null }, means: { place: "line_roller", action: "left" } }];
    const without = await readShape(unsure, { mapping: mappingFrom(JSON.stringify(short)) });
    expect([without.rows["tickets"]?.length, without.rows["findings"]]).toEqual([1, undefined]);
    expect(without.reads[0]?.remarks.join(" ")).toMatch(/1 row: what a note may say was not sure; it stays out of the findings until you say what it means \(line roller seems a bit weak → stays out\)/);
    const { rows, reads } = await readShape(unsure, { mapping: mappingFrom(JSON.stringify({ ...short, notes })) });
    expect(rows["findings"]).toMatchObject([{ position: "line_roller", action: "left", rule: "you said so", confidence: 1 }]);
    expect(reads[0]?.remarks.join(" ")).not.toMatch(/not sure/);
    expect(() => mappingFrom(JSON.stringify({ ...short, notes: [{ ...notes[0], means: "yes" }] }))).toThrow(/a line of “notes” must mean a part we know/);
  });
});

describe("a preview", () => {
  test("tells what will come in, what is to fix and what is dropped, with the first rows beside their lines, and writes nothing", async () => {
    const { answers } = await understood(fixture("web-form.csv")), seen = await preview(fixture("web-form.csv"), answers, asked());
    expect([seen.rows_read, seen.records["tickets"], seen.rows_to_fix]).toEqual([5, 5, [{ reason: "Reel make & model: what stands there does not say which reel it is; write its model", rows: 1, examples: [{ line: 6, value: "dont know, black one" }] }]]);
    expect(seen.first.map(({ line, not_in }) => [line, not_in === null])).toEqual([[2, true], [4, true], [5, true], [6, false], [7, true]]);
    expect(seen.first[4]?.understood).toEqual(expect.arrayContaining([expect.stringMatching(/^ticket \S+: Eldmere Withy 5, in 4 November 2025, 30 min$/), expect.stringMatching(/^replaced: click spring ×1 \(“click spring”, listed among the parts, right \d+ times in 100\)$/)]));
    expect(seen.unknown_words.map(({ words }) => words)).toContain("Far Lantern");
  });
});

test("a number already used with other content in the same sheet is brought to the settling, not dropped", async () => {
  const done = await readShape(sheetOf(`${JOBS}1;13/04/2025;Whinbeck 40;F/S;55\n1;13/04/2025;Whinbeck 40;F/S;70\n`));
  expect([ends(done), fixes(done.reads), done.rows["tickets"]?.length]).toEqual([{ read: 2, in: 2, known: 0, to_fix: 0, dropped: 0 }, [], 2]);
});
