import { describe, expect, test } from "vitest";
import { cellsOf, read } from "./opening.ts";
import { ods, odsRow, odsTable, odsText } from "./making-workbooks.ts";

const value = (type: string, attributes: string, shown = "shown") => `<table:table-cell office:value-type="${type}" ${attributes}><text:p>${shown}</text:p></table:table-cell>`;
const one = async (cell: string) => {
  const { sheets } = await read(ods(odsTable(odsRow(cell))));
  return [sheets[0]?.cells[0]?.[0], (sheets[0]?.typed[1] ?? []).length === 1 ? "typed" : "as text"];
};

describe("a cell of an OpenDocument sheet is read by the type the file gives it", () => {
  test.each([
    ["a day", value("date", 'office:date-value="2025-03-04"', "04/03/25"), ["2025-03-04", "typed"]],
    ["a moment", value("date", 'office:date-value="2025-03-04T19:14:33"'), ["2025-03-04T19:14", "typed"]],
    ["midnight", value("date", 'office:date-value="2025-03-04T00:00:00"'), ["2025-03-04", "typed"]],
    ["a length of time", value("time", 'office:time-value="PT01H40M00S"', "01:40:00"), ["1:40", "typed"]],
    ["hours over 24", value("time", 'office:time-value="PT26H30M30S"'), ["26:30:30", "typed"]],
    ["a number", value("float", 'office:value="1234.5"', "1.234,50"), ["1234.5", "typed"]],
    ["money", value("currency", 'office:currency="GBP" office:value="12.5"', "£12.50"), ["12.5", "typed"]],
    ["a share", value("percentage", 'office:value="0.15"', "15 %"), ["0.15", "typed"]],
    ["a padded number", value("float", 'office:value="123"', "R-0123"), ["R-0123", "as text"]],
    ["yes", value("boolean", 'office:boolean-value="true"', "TRUE"), ["yes", "typed"]],
    ["an error", value("string", 'calcext:value-type="error"', "#REF!"), ["#REF!", "as text"]],
    ["a formula's kept result", value("float", 'table:formula="of:=[.A1]+1" office:value="2"', "2"), ["2", "typed"]],
    ["text that only stands in the attribute", '<table:table-cell office:value-type="string" office:string-value="kept"/>', ["kept", "as text"]],
  ])("%s", async (_name, cell, expected) => {
    expect(await one(cell)).toEqual(expected);
  });
  test("paragraphs are lines, blanks that are meant stay, comments are left out", async () => {
    const cell = '<table:table-cell office:value-type="string"><office:annotation><text:p>a remark</text:p></office:annotation><text:p>a<text:s text:c="3"/>b<text:tab/>c</text:p><text:p>d<text:line-break/>e <text:span>&amp; f</text:span></text:p></table:table-cell>';
    expect(await one(cell)).toEqual(["a   b\tc\nd\ne & f", "as text"]);
  });
});

describe("repeated and covered cells of an OpenDocument sheet", () => {
  const empty = (columns: number) => `<table:table-cell table:number-columns-repeated="${columns}"/>`;
  test("empty cells and rows to the end of the sheet make no columns and no rows", async () => {
    const rows = odsRow(odsText("R-1") + empty(16_383)) + odsRow(empty(16_384), ' table:number-rows-repeated="1048573"') + odsRow(empty(16_384), ' table:number-rows-repeated="2"');
    expect(await cellsOf(ods(odsTable(`<table:table-column table:number-columns-repeated="16384"/>${rows}`)))).toEqual([["R-1"]]);
  });
  test("cells and rows that hold something are repeated, and rows keep their numbers", async () => {
    const rows = odsRow(odsText("x", ' table:number-columns-repeated="2"') + odsText("y")) + odsRow(empty(3), ' table:number-rows-repeated="3"') + odsRow(odsText("z"), ' table:number-rows-repeated="2"');
    expect((await read(ods(odsTable(rows)))).sheets[0]).toMatchObject({ cells: [["x", "x", "y"], ["z"], ["z"]], lines: [1, 5, 6] });
  });
  test("a row that repeats to the end of the sheet is read once and told", async () => {
    const { sheets } = await read(ods(odsTable(odsRow(odsText("x")) + odsRow(odsText("0"), ' table:number-rows-repeated="1048575"'))));
    expect(sheets[0]).toMatchObject({ cells: [["x"], ["0"]], remarks: ["1,048,574 rows that only repeat the row above them to the end of the sheet were left out."] });
  });
  test("a label merged over rows is filled into the rows it covers", async () => {
    const covered = "<table:covered-table-cell/>", span = ' table:number-columns-spanned="1" table:number-rows-spanned="3"';
    const rows = odsRow(odsText("R-1", span) + odsText("bail")) + odsRow(covered + odsText("drag")) + odsRow(covered + "<table:table-cell/>") + odsRow(odsText("R-2") + odsText("rotor"));
    expect((await read(ods(odsTable(rows)))).sheets[0]).toMatchObject({ cells: [["R-1", "bail"], ["R-1", "drag"], ["R-2", "rotor"]], lines: [1, 2, 4] });
  });
  test("a title over several columns is not filled", async () => {
    const rows = odsRow(odsText("Jobs", ' table:number-columns-spanned="3" table:number-rows-spanned="1"') + '<table:covered-table-cell table:number-columns-repeated="2"/>');
    expect(await cellsOf(ods(odsTable(rows)))).toEqual([["Jobs"]]);
  });
});

describe("sheets of an OpenDocument workbook", () => {
  test("rows in headings and groups are rows, hidden ones are told, tables in cells are not", async () => {
    const inner = `<table:table-cell><text:p>a</text:p>${odsTable(odsRow(odsText("inner")), "Inner")}</table:table-cell>`;
    const rows = `<table:table-header-rows>${odsRow(odsText("ticket"))}</table:table-header-rows><table:table-row-group>${odsRow(odsText("R-1"), ' table:visibility="collapse"')}</table:table-row-group>${odsRow(inner)}`;
    expect((await read(ods(odsTable(rows)))).sheets).toEqual([{ name: "Jobs", cells: [["ticket"], ["R-1"], ["a"]], lines: [1, 2, 3], typed: {}, remarks: ["1 row is hidden in the workbook; it was read."] }]);
  });
  test("several sheets are read apart, empty ones left out, hidden ones told", async () => {
    const styles = '<style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>';
    const tables = odsTable(odsRow(odsText("a")), "One") + odsTable(odsRow("<table:table-cell/>"), "Two") + odsTable(odsRow(odsText("b &amp; c")), "Three &amp; four", ' table:style-name="ta2"');
    const { sheets, remarks } = await read(ods(tables, styles));
    expect(sheets.map(({ name, cells }) => [name, cells])).toEqual([["One", [["a"]]], ["Three & four", [["b & c"]]]]);
    expect(remarks).toEqual(["The sheet “Three & four” is hidden in the workbook; it was read too.", "The sheet “Two” is empty."]);
  });
  test("a locked workbook is told", async () => {
    const manifest = '<manifest:manifest xmlns:manifest="m"><manifest:file-entry><manifest:encryption-data/></manifest:file-entry></manifest:manifest>';
    await expect(read(ods(odsTable(odsRow(odsText("a"))), "", { "META-INF/manifest.xml": manifest }))).rejects.toThrow("This workbook is locked with a password; save it without one and bring that.");
  });
  test.each([
    ["a cell repeated over more columns than a table has", odsRow(odsText("x", ' table:number-columns-repeated="16384"')), "Row 1 has more than 2,000 columns; no shop's table is that wide."],
    ["a count that is none", odsRow(odsText("x", ' table:number-columns-repeated="many"')), "The workbook is damaged or was cut off; open it, save it again and bring that."],
    ["blanks without end", odsRow(`<table:table-cell office:value-type="string"><text:p>${'<text:s text:c="900000000"/>'.repeat(20)}</text:p></table:table-cell>`), "The workbook is damaged or was cut off; open it, save it again and bring that."],
  ])("%s is refused", async (_name, rows, sentence) => {
    await expect(read(ods(odsTable(rows)))).rejects.toThrow(sentence);
  });
});
