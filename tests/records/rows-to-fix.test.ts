import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { rowsToFixCsv, rowsToFixFrom } from "../../src/records/rows-to-fix.ts";
import { counts, emptied, openBench, reasons, tallyOf } from "./bench.ts";
import type { Bench } from "./bench.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const BENCH = 'ticket_no,received_on,model,labour_min,note\nR-1,2026-03-01,Withy 5,30,fine\nR-2,31/02/2026,Withy 5,lots,"two\nlines"\nR-3,2026-03-03,Withy 5,many,=odd\nR-4,,Withy 5,10,\n';
const list = async () => rowsToFixCsv(await bench.ledger.rejects());
const waiting = async () => reasons({ rejects: [...await bench.ledger.rejects()] });

describe("the list of rows to fix", () => {
  test("has one line a row: where it is, what is wrong, and the row's own cells", async () => {
    await bench.bringIn({ "bench.csv": BENCH });
    const [head, first] = (await list()).split(/\r\n/);
    expect(head).toBe("file,line,column,value,reason,ticket_no,received_on,model,labour_min,note");
    expect(first).toMatch(/^bench\.csv,3,"received_on \| labour_min","31\/02\/2026 \| lots",".+ \| .+",R-2,31\/02\/2026,Withy 5,lots,"two\nlines"$/);
  });
  test("comes back from its own text as it was, every fault by itself", async () => {
    await bench.bringIn({ "bench.csv": BENCH, "other.csv": "ticket_no,position\nR-9,rotor\n" });
    const rejects = await bench.ledger.rejects();
    expect((await rowsToFixFrom(await list())).map(({ row: _, ...fault }) => fault)).toEqual(rejects.map(({ row: _, ...fault }) => fault));
    expect(rowsToFixCsv(await rowsToFixFrom(await list()))).toBe(await list());
  });
  test("keeps a cell that holds the sign between two faults in one piece", async () => {
    const rejects = [{ file: "a", line: 2, column: "x", value: "1 | 2", reason: "no | way | at all" }];
    expect(await rowsToFixFrom(rowsToFixCsv(rejects))).toEqual(rejects);
  });
  test("is refused when it is another table", async () => {
    await expect(rowsToFixFrom("file,line,column\na,1,b\n")).rejects.toThrow(RangeError);
  });
});

describe("a list that comes back", () => {
  const corrected = async () => (await list()).replace(",31/02/2026,Withy 5,lots,", ",2026-03-02,Withy 5,45,").replace(",2026-03-03,Withy 5,many,", ",2026-03-03,Withy 5,lots,");
  beforeEach(async () => void await bench.bringIn({ "bench.csv": BENCH }));

  test("brings in what was put right, under its own file and line, and the row leaves the list", async () => {
    const back = await bench.bringIn({ "rows-to-fix-2026-06-01.csv": await corrected() });
    expect(counts(back, "bench.csv")).toEqual([3, 1, 0, 2, 0]);
    expect(await bench.engine.rows("select source_file, source_line, labour_min, note from ledger.tickets where ticket_no = 'R-2'")).toEqual([
      { source_file: "bench.csv", source_line: 3, labour_min: 45, note: "two\nlines" }]);
    expect(await waiting()).toEqual(["bench.csv 5: “lots” is not a number; write figures alone, such as 12.5", "bench.csv 6: received_on is empty"]);
    expect(rowsToFixCsv(await bench.ledger.rejects())).toContain(",'=odd\r\n");
  });
  test("keeps rows on the list that were taken off it in the spreadsheet", async () => {
    const lines = (await corrected()).split("\r\n");
    await bench.bringIn({ "list.csv": [lines[0], lines[1], ""].join("\r\n") });
    expect(await waiting()).toEqual(["bench.csv 5: “many” is not a number; write figures alone, such as 12.5", "bench.csv 6: received_on is empty"]);
  });
  test("is known by its headings with semicolons and under any name", async () => {
    const semicolons = "file;line;column;value;reason;ticket_no;received_on;model;labour_min;note\nbench.csv;6;received_on;;received_on is empty;R-4;2026-03-04;Withy 5;10;\n";
    expect(counts(await bench.bringIn({ "x.txt": semicolons }), "bench.csv")).toEqual([1, 1, 0, 0, 0]);
    expect((await waiting()).length).toBe(3);
  });
  test("is undone whole: the row goes out and is on the list again", async () => {
    const before = { rows: await bench.records(), list: await list() };
    const { id } = await bench.bringIn({ "list.csv": await corrected() });
    await bench.takeOut(id);
    expect({ rows: await bench.records(), list: await list() }).toEqual(before);
  });
  test("once more adds nothing", async () => {
    const text = await corrected();
    await bench.bringIn({ "list.csv": text });
    const again = await bench.bringIn({ "list.csv": text });
    expect([counts(again, "bench.csv"), again.kept]).toEqual([[3, 0, 1, 2, 0], false]);
  });
  test("keeps the row off the list when the file it came from is brought in as it was", async () => {
    await bench.bringIn({ "list.csv": await corrected() });
    const again = await bench.bringIn({ "bench.csv": BENCH });
    expect([counts(again, "bench.csv"), tallyOf(again, "bench.csv").put_right]).toEqual([[4, 0, 2, 2, 0], undefined]);
    expect((await bench.records())["tickets"]).toHaveLength(2);
  });
});
