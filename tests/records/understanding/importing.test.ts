import { readFileSync } from "node:fs";
import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { backUp, restore } from "../../../src/records/backup.ts";
import { OWNER_SALT } from "../../../src/records/owner-tags.ts";
import { answersFrom, answersText } from "../../../src/records/understanding/answers-text.ts";
import { settingName } from "../../../src/records/understanding/shape-key.ts";
import { spellingsText } from "../../../src/records/notes/spellings-text.ts";
import { counts, emptied, openBench, tallyOf } from "../bench.ts";
import { sheetData, xlsx } from "../formats/making-workbooks.ts";
import type { Bench } from "../bench.ts";
import { understood } from "./shape.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const shape = (name: string) => ({ [name]: readFileSync(new URL(`shapes/${name}`, import.meta.url)) });
const MODELS = "maker,model,reel_kind\nUffenby,Dunvegg 20,conventional\nBrackhelm,Whinbeck 40,spinning\n";

describe("an import of sheets with headings of their own", () => {
  test("brings tickets and findings, each with the line it came from, and what words name by family alone is no inspected place", async () => {
    const done = await bench.bringIn(shape("workshop-sheet.csv"));
    expect(counts(done, "workshop-sheet.csv")).toEqual([5, 3, 1, 0, 1]);
    expect(await bench.engine.rows("select position, qty, size, source_line from ledger.findings where starts_with(position, '?') order by all")).toEqual([
      { position: "?ball bearing", qty: 1, size: "4x7x2.5", source_line: 2 }, { position: "?seal", qty: 1, size: null, source_line: 5 },
    ]);
    expect(await bench.engine.rows("select position from inspections where starts_with(position, '?')")).toEqual([]);
    expect(await bench.engine.rows("select position, qty from demand where starts_with(position, '?') order by all")).toHaveLength(2);
  });
  test.each(["workshop-sheet.csv", "till-export.csv", "old-database.txt", "web-form.csv", "stock-sheet.csv"])("of %s twice is once", async (name) => {
    const first = await bench.bringIn(shape(name)), before = await bench.records(), again = await bench.bringIn(shape(name));
    expect([first.kept, again.kept]).toEqual([true, false]);
    expect(await bench.records()).toEqual(before);
  });
  test("keeps no owner's name: left out unless asked, and then a tag of the shop's own that links the visits of one reel", async () => {
    const sheet = "Job,Date in,Customer,Reel,Work done\nJ-1,2025-03-04,Ann Otter,Withy 5,full service\nJ-2,2025-09-04,ANN  OTTER,Withy 5,full service\nJ-3,2025-09-05,Bo Stoat,Withy 5,full service\n";
    const { answers } = await understood({ name: "jobs.csv", blob: new Blob([sheet]) }, {});
    const ask = { ...answers, sheets: answers.sheets.map((one) => ({ ...one, columns: one.columns.map((column) => (column.column === "Customer" ? { ...column, means: "owner" } : column)) })) };
    expect(counts(await bench.bringIn({ "jobs.csv": sheet }), "jobs.csv")).toEqual([3, 3, 0, 0, 0]);
    expect(await bench.engine.rows("select distinct serial from ledger.tickets")).toEqual([{ serial: null }]);
    expect(await bench.ledger.setting(OWNER_SALT)).toBeNull();
    await emptied(bench);
    await bench.bringIn({ "jobs.csv": sheet }, { answers: new Map([["jobs.csv", ask]]) });
    const tags = (await bench.engine.rows<{ serial: string }>("select serial from ledger.tickets order by ticket_no")).map(({ serial }) => serial);
    expect(tags.every((tag) => /^owner-[2-9A-Z]{6}$/.test(tag))).toBe(true);
    expect([tags[0] === tags[1], tags[0] === tags[2]]).toEqual([true, false]);
    expect(await bench.engine.rows("select ticket_no, visit_no from visits order by ticket_no")).toEqual([{ ticket_no: "J-1", visit_no: 1 }, { ticket_no: "J-2", visit_no: 2 }, { ticket_no: "J-3", visit_no: 1 }]);
    expect(JSON.stringify([await bench.records(), await bench.ledger.settings(), await bench.ledger.rejects()])).not.toMatch(/otter|stoat/i);
  });
  test("uses the answers given now, then those kept for the shape, and the list of reels that came before", async () => {
    const { answers, shape_key } = await understood({ name: "n", blob: new Blob([readFileSync(new URL("shapes/bench-notebook.txt", import.meta.url))]) }, { dates: "month first", year: "2025" });
    await bench.bringIn({ "models.csv": MODELS });
    expect(counts(await bench.bringIn(shape("bench-notebook.txt")), "bench-notebook.txt")).toEqual([5, 0, 0, 4, 1]);
    await bench.ledger.keepSetting(settingName(shape_key), answersText(answers));
    expect(counts(await bench.bringIn(shape("bench-notebook.txt")), "bench-notebook.txt")).toEqual([5, 4, 0, 0, 1]);
    expect(await bench.engine.rows("select maker, model, count(*) as n from ledger.tickets where maker is not null group by all")).toEqual([{ maker: "Uffenby", model: "Dunvegg 20", n: 4 }]);
    const year = { ...answers, sheets: answers.sheets.map((one) => ({ ...one, year: 2024 })) };
    expect(counts(await bench.bringIn(shape("bench-notebook.txt"), { answers: new Map([["bench-notebook.txt", year]]) }), "bench-notebook.txt")).toEqual([5, 4, 0, 0, 1]);
  });
  test("tells maker and model apart by a list of reels that comes with it, whichever file is given first", async () => {
    const jobs = "Job,Came,Reel,Done\n1,13/04/2025,whinbeck40,full service\n", reel = async () => (await bench.engine.rows("select maker, model from ledger.tickets"));
    await bench.bringIn({ "a jobs.csv": jobs, "b reels.csv": MODELS });
    expect(await reel()).toEqual([{ maker: "Brackhelm", model: "Whinbeck 40" }]);
    await emptied(bench);
    await bench.bringIn({ "a reels.csv": MODELS, "b jobs.csv": jobs });
    expect(await reel()).toEqual([{ maker: "Brackhelm", model: "Whinbeck 40" }]);
  });
  test("reads such a list first in whatever format it comes, so that the same files once more bring nothing", async () => {
    const jobs = "Job,Came,Reel,Done\n1,13/04/2025,whinbeck40,full service\n", [headings = "", ...lines] = MODELS.trim().split("\n"), names = headings.split(",");
    const rows = lines.map((line) => line.split(",")), json = JSON.stringify(rows.map((cells) => Object.fromEntries(names.map((name, at) => [name, cells[at]]))));
    for (const reels of [json, xlsx([{ name: "Reels", xml: sheetData([names, ...rows]) }])]) {
      await emptied(bench);
      await bench.bringIn({ "a jobs": jobs, "b reels": reels });
      expect(await bench.engine.rows("select maker, model from ledger.tickets")).toEqual([{ maker: "Brackhelm", model: "Whinbeck 40" }]);
      expect((await bench.bringIn({ "a jobs": jobs, "b reels": reels })).kept).toBe(false);
    }
  });
  test("knows the list of reels that stands in the same workbook, before or behind the jobs", async () => {
    const jobs = { name: "Jobs", xml: sheetData([["Job", "Came", "Reel", "Done"], ["1", "13/04/2025", "whinbeck40", "full service"]]) };
    const reels = { name: "Reels", xml: sheetData(MODELS.trim().split("\n").map((line) => line.split(","))) };
    for (const sheets of [[jobs, reels], [reels, jobs]]) {
      await emptied(bench);
      await bench.bringIn({ "book.xlsx": xlsx(sheets) });
      expect(await bench.engine.rows("select maker, model from ledger.tickets")).toEqual([{ maker: "Brackhelm", model: "Whinbeck 40" }]);
      expect((await bench.bringIn({ "book.xlsx": xlsx(sheets) })).kept).toBe(false);
    }
  });
  test("asks what a reel fished in several waters counts as, and reads it as was answered", async () => {
    const jobs = "Job,Came,Reel,Water,Done\n1,13/04/2025,Withy 5,lake + estuary,drag\n2,14/04/2025,Withy 5,river and sea,drag\n3,15/04/2025,Withy 5,River,drag\n";
    const file = { name: "jobs.csv", blob: new Blob([jobs]) }, waters = async () => (await bench.engine.rows<{ water: string | null }>("select water from tickets order by ticket_no")).map(({ water }) => water);
    const { questions } = await understood(file), [asks] = questions;
    expect([questions.length, asks?.about, asks?.column, asks?.ask, asks?.best]).toEqual([1, "water", "Water", "Which water does “lake + estuary” count as?", "left empty"]);
    for (const [water, read] of [["saltiest", ["brackish", "salt", "fresh"]], ["left empty", [null, null, "fresh"]]] as const) {
      const { answers } = await understood(file, { water });
      expect(answersFrom(answersText(answers)).sheets[0]?.mixed_water).toBe(water);
      await emptied(bench);
      await bench.bringIn({ "jobs.csv": jobs }, { answers: new Map([["jobs.csv", answers]]) });
      expect(await waters()).toEqual(read);
    }
    await emptied(bench);
    const unasked = await bench.bringIn({ "jobs.csv": jobs });
    expect(await waters()).toEqual([null, null, "fresh"]);
    expect(tallyOf(unasked, "jobs.csv").remarks?.find((remark) => remark.startsWith("Nobody was asked: Which water"))).toMatch(/2 cells name several waters.* Taken: left empty\.$/);
  });
  test("counts seals changed as routine otherwise when they are read again with another answer, and by the kept answer ever after", async () => {
    const job = (number: number, done: string) => `J-${number},13/04/2025,Brackhelm Whinbeck 40,spinning,full service. ${done}\n`;
    const jobs = (from: number) => `Job,Came,Reel,Type,Done\n${Array.from({ length: 24 }, (_, at) => job(from + at, at % 2 === 0 ? "main bearing pitted repl" : "drag knob seal repl")).join("")}`;
    const file = { name: "jobs.csv", blob: new Blob([jobs(1)]) }, failed = async () => (await bench.engine.rows<{ n: number }>("select count(*) as n from inspections where position = 'drag_knob_seal' and failed"))[0]?.n;
    const { answers, shape_key } = await understood(file, { routine: "when worn" }), given = (own: typeof answers) => ({ answers: new Map([["jobs.csv", own]]) });
    const first = await bench.bringIn({ "jobs.csv": jobs(1) }, given(answers));
    expect(await failed()).toBe(12);
    const { answers: other } = await understood(file, { routine: "as routine" });
    await bench.bringIn({ "jobs.csv": jobs(1) }, { ...given(other), instead_of: first.id });
    expect(await failed()).toBe(0);
    await bench.ledger.keepSetting(settingName(shape_key), answersText(answers));
    await bench.bringIn({ "jobs.csv": jobs(101) });
    expect(await failed()).toBe(12);
  });
  test("knows a job and its findings again after a backup was restored", async () => {
    const jobs = "Job,Came,Reel,Done\n1,13/04/2025,Brackhelm Whinbeck 40,drag washers replaced. bail spring replaced\n";
    await bench.bringIn({ "jobs.csv": jobs });
    const options = { engine: bench.engine, ledger: bench.ledger, today: "2026-06-01" };
    await restore(await backUp(options), options);
    const again = await bench.bringIn({ "jobs.csv": jobs });
    expect([counts(again, "jobs.csv"), again.kept]).toEqual([[1, 0, 1, 0, 0], false]);
  });
  test("knows a job again when the list of reels came in since, or a longer export lets its maker be told", async () => {
    const jobs = "Job,Came,Reel,Done\n1,13/04/2025,Brackhelm Whinbeck 40,full service\n";
    expect(counts(await bench.bringIn({ "jobs.csv": jobs }), "jobs.csv")).toEqual([1, 1, 0, 0, 0]);
    await bench.bringIn({ "models.csv": MODELS });
    expect(counts(await bench.bringIn({ "jobs.csv": jobs }), "jobs.csv")).toEqual([1, 0, 1, 0, 0]);
    await emptied(bench);
    await bench.bringIn({ "jobs.csv": jobs });
    const longer = `${jobs}2,14/04/2025,Brackhelm Dovekin 25,full service\n3,15/04/2025,Brackhelm Ombry 8,drag\n`;
    expect(counts(await bench.bringIn({ "jobs.csv": longer }), "jobs.csv")).toEqual([3, 2, 1, 0, 0]);
    expect(await bench.engine.rows("select ticket_no from conflicts")).toEqual([]);
  });
  test("reads notes with the shop's own spelling book", async () => {
    await bench.ledger.keepSetting("spelling book", spellingsText([{ spelling: "whizzer", reel_kind: null, position: "ar_clutch" }]));
    await bench.bringIn({ "sheet.csv": "Job,Came,Reel,Done\n1,13/04/2025,Whinbeck 40,whizzer replaced\n" });
    expect(await bench.engine.rows("select position, read_from, rule from ledger.findings")).toEqual([{ position: "ar_clutch", read_from: "Done", rule: expect.stringContaining("own spelling") as string }]);
  });
  test("brings what new spellings let it read of rows it has, and nothing of what it had", async () => {
    const sheet = { "sheet.csv": "Job,Came,Reel,Done\n1,13/04/2025,Whinbeck 40,bail spring replaced. whizzer replaced\n2,14/04/2025,Whinbeck 40,bail spring replaced\n" };
    await bench.bringIn(sheet);
    await bench.ledger.keepSetting("spelling book", spellingsText([{ spelling: "whizzer", reel_kind: null, position: "ar_clutch" }]));
    expect(counts(await bench.bringIn(sheet), "sheet.csv")).toEqual([2, 1, 1, 0, 0]);
    expect(await bench.engine.rows("select ticket_no, position from findings order by all")).toEqual([
      { ticket_no: "1", position: "ar_clutch" }, { ticket_no: "1", position: "bail_spring" }, { ticket_no: "2", position: "bail_spring" },
    ]);
  });
});
