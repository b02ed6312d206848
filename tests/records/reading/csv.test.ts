import { describe, expect, test } from "vitest";
import { LIMITS } from "../../../src/records/formats/unreadable.ts";
import { cellsOf, rowsOf } from "./reading.ts";

// RFC 4180, "Common Format and MIME Type for CSV Files" (2005), section 2, rules 1 to 7.
describe("cells are as RFC 4180 section 2 says", () => {
  test("rule 1: each record stands on its own line, ended by CRLF", async () => {
    expect(await cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")).toEqual([["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]);
  });
  test("rule 2: the last record may have no line end", async () => {
    expect(await cellsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx")).toEqual([["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]);
  });
  test("rule 4: blanks belong to the cell, and a last comma opens an empty cell", async () => {
    expect(await cellsOf("aaa, bbb ,\r\n")).toEqual([["aaa", " bbb ", ""]]);
  });
  test("rule 5: a cell may stand in quotation marks or not", async () => {
    expect(await cellsOf('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]);
  });
  test("rule 6: a quoted cell may hold line ends, commas and blanks", async () => {
    expect(await cellsOf('"aaa","b\r\nb,b","ccc"\r\nzzz,yyy,xxx')).toEqual([["aaa", "b\r\nb,b", "ccc"], ["zzz", "yyy", "xxx"]]);
  });
  test("rule 7: a doubled quotation mark in a quoted cell is one", async () => {
    expect(await cellsOf('"aaa","b""bb","ccc"')).toEqual([["aaa", 'b"bb', "ccc"]]);
  });
});

describe("what shops' programs write besides", () => {
  test("lines may end in LF, or in CR alone as old programs write", async () => {
    expect(await cellsOf("a,b\nc,d\n")).toEqual([["a", "b"], ["c", "d"]]);
    expect(await cellsOf("a,b\rc,d\r")).toEqual([["a", "b"], ["c", "d"]]);
  });
  test("CRLF and LF may be mixed in one file", async () => {
    expect(await cellsOf('a,b\r\nc,d\n"e",f\r\n')).toEqual([["a", "b"], ["c", "d"], ["e", "f"]]);
  });
  test.each([[";"], ["\t"], ["|"], [","]])("the delimiter %j is found by the headings it makes", async (delimiter) => {
    const text = ["ticket_no", "received_on", "model"].join(delimiter) + "\nR-1" + delimiter + "2026-03-01" + delimiter + "a, b; c";
    expect((await cellsOf(text))[0]).toEqual(["ticket_no", "received_on", "model"]);
  });
  test("a decimal comma does not make the comma the delimiter", async () => {
    expect(await cellsOf("part_no;unit_cost;supplier\nA;1,50;B\n")).toEqual([["part_no", "unit_cost", "supplier"], ["A", "1,50", "B"]]);
  });
  test("a first line sep=; names the delimiter", async () => {
    expect((await cellsOf("sep=;\r\na;b\r\n"))[1]).toEqual(["a", "b"]);
  });
  test("a quotation mark in the middle of a cell is a letter like any other", async () => {
    expect(await cellsOf('7" reel,b\n')).toEqual([['7" reel', "b"]]);
  });
  test("blanks behind a closing quotation mark are read the same on the last line as on any other", async () => {
    expect(await cellsOf('"a" ,"b" \n"c","d" ')).toEqual([["a", "b"], ["c", "d"]]);
  });
  test("an empty line is one row with one empty cell", async () => {
    expect(await cellsOf("a,b\n\nc,d\n")).toEqual([["a", "b"], [""], ["c", "d"]]);
  });
});

describe("line numbers", () => {
  const text = 'h1,h2\r\n"one\r\ntwo\r\nthree",x\r\n\r\nlast,"y\r\nz"\r\nend,e';
  test("a row is numbered by the line it starts on, whatever its cells hold", async () => {
    expect((await rowsOf(text)).map(({ line, lines }) => [line, lines])).toEqual([[1, 1], [2, 3], [5, 1], [6, 2], [8, 1]]);
  });
  test("rows and lines are the same in pieces of any size", async () => {
    const whole = await rowsOf(text);
    for (const size of [1, 2, 3, 5, 7, 11]) expect(await rowsOf(text, size)).toEqual(whole);
  });
  test("lines are counted on over many pieces", async () => {
    const long = Array.from({ length: 60_000 }, (_, at) => `row ${at},"a\nb"`).join("\n");
    const rows = await rowsOf(long, 100_000);
    expect(rows).toHaveLength(60_000);
    expect(rows.at(-1)).toMatchObject({ line: 119_999, cells: ["row 59999", "a\nb"] });
  });
});

describe("quotation marks that do not fit", () => {
  test("one that is never closed stops the file and names its line, not the row's", async () => {
    await expect(rowsOf('a,b\nc,"d\ne,f\ng,h\n')).rejects.toThrow("The quotation mark opened in line 2 is never closed, so the rows after it cannot be told apart.");
    await expect(rowsOf('a,"b\n\n","c\nd,e\n')).rejects.toThrow("opened in line 3 is never closed");
  });
  test("one that ends inside a cell is told with the lines its row swallowed", async () => {
    const rows = await rowsOf('a,b\n"c"x,d\ne,"f"\n');
    expect(rows[1]).toMatchObject({ line: 2, stray_quote: true, lines: 2 });
  });
  test("one row may not fill the memory", async () => {
    const head = 'a,b\n"';
    async function* endless() {
      yield head;
      for (let at = 0; at < 40; at += 1) yield "x".repeat(1024 ** 2);
    }
    const { csvRows } = await import("../../../src/records/formats/csv.ts");
    const all = async () => { for await (const _ of csvRows(endless(), { delimiter: ",", newline: "\n" })) expect(_.length).toBe(1); };
    await expect(all()).rejects.toThrow("The row that starts in line 2 never ends");
    expect(LIMITS.row_chars).toBeLessThan(40 * 1024 ** 2);
  });
});
