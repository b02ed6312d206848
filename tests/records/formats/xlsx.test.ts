import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { opened, read, cellsOf } from "./opening.ts";
import { archive, cellName, sheetData, xlsx, xlsxRows } from "./making-workbooks.ts";

/** Styles 0 General, 1 date (built-in 14), 2 h:mm (20), 3 [h]:mm (custom), 4 percent (9), 5 "R-"0000, 6 date and time (22), 7 text in red. */
const STYLES = `<numFmts count="3"><numFmt numFmtId="164" formatCode="[h]:mm"/><numFmt numFmtId="165" formatCode="&quot;R-&quot;0000"/><numFmt numFmtId="166" formatCode="[Red]#,##0.00&quot; days&quot;"/></numFmts>
  <cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>
  <cellXfs>${["0", "14", "20", "164", "9", "165", "22", "166"].map((id) => `<xf numFmtId="${id}"/>`).join("")}</cellXfs><cellStyles><xf numFmtId="14"/></cellStyles>`;
const number = (style: number, value: string, column = 0) => `<c r="${cellName(column, 1)}" s="${style}"><v>${value}</v></c>`;
const shown = async (style: number, value: string, is_1904 = false) => {
  const { sheets } = await read(xlsxRows(`<row r="1">${number(style, value)}</row>`, { styles: STYLES, is_1904 }));
  return [sheets[0]?.cells[0]?.[0], (sheets[0]?.typed[1] ?? []).length === 1 ? "typed" : "as text"];
};

describe("a number in an Excel workbook is read as its format shows it", () => {
  test.each([
    // ECMA-376 part 1, 18.17.4.1: day 1 is 1900-01-01, and there is a day 60 that never was (29 February 1900).
    ["a day", 1, "45720", ["2025-03-04", "typed"]],
    ["a day of 1900 before the day that never was", 1, "59", ["1900-02-28", "typed"]],
    ["the day that never was", 1, "60", ["1900-02-29", "as text"]],
    ["the day after it", 1, "61", ["1900-03-01", "typed"]],
    ["the first day", 1, "1", ["1900-01-01", "typed"]],
    ["day zero, which is no day", 1, "0", ["0", "as text"]],
    ["a day with a time that is not shown", 1, "45720.8014", ["2025-03-04T19:14", "typed"]],
    ["a moment", 6, "45720.801388888889", ["2025-03-04T19:14", "typed"]],
    ["midnight", 6, "45720", ["2025-03-04", "typed"]],
    ["a time of day", 2, "0.069444444444444448", ["1:40", "typed"]],
    ["a time of day of a moment", 2, "45720.5", ["12:00", "typed"]],
    ["a time just before midnight, by rounding", 2, "0.99999999", ["0:00", "typed"]],
    ["hours over 24", 3, "1.1041666666666667", ["26:30", "typed"]],
    ["hours with seconds", 3, "0.01050925925925926", ["0:15:08", "typed"]],
    ["a share in percent", 4, "0.15", ["0.15", "typed"]],
    ["a padded number with letters in front", 5, "123", ["R-0123", "as text"]],
    ["the last digits of floating point", 0, "4.5999999999999996", ["4.6", "typed"]],
    ["a large number", 0, "1.5E+16", ["15000000000000000", "typed"]],
    ["a small number", 0, "1.5E-7", ["0.00000015", "typed"]],
    ["a number whose format has the letters of a date in quotation marks", 7, "3.5", ["3.5", "typed"]],
  ])("%s", async (_name, style, value, expected) => {
    expect(await shown(style, value)).toEqual(expected);
  });
  test("days of the 1904 date system begin on 1904-01-01", async () => {
    expect(await shown(1, "0", true)).toEqual(["1904-01-01", "typed"]);
    expect(await shown(1, "44258", true)).toEqual(["2025-03-04", "typed"]);
  });
});

describe("texts in an Excel workbook", () => {
  test("shared strings keep their blanks, put runs together and leave reading aids out", async () => {
    const strings = '<si><t xml:space="preserve"> R-1 </t></si><si><r><t>line </t></r><r><rPr><b/></rPr><t>roller</t></r><rPh><t>ライン</t></rPh></si><si><t>a_x000D_\nb &amp; &#163;5</t></si><si/>';
    const row = [0, 1, 2, 3].map((at) => `<c r="${cellName(at, 1)}" t="s"><v>${at}</v></c>`).join("");
    expect(await cellsOf(xlsxRows(`<row r="1">${row}<c r="E1"><v>1</v></c></row>`, { strings }))).toEqual([[" R-1 ", "line roller", "a\nb & £5", "", "1"]]);
  });
  test("inline strings, formulas' kept results, errors and yes/no", async () => {
    const cells = '<c r="A1" t="inlineStr"><is><r><t>Withy </t></r><r><t>5</t></r></is></c><c r="B1" t="str"><f>A1&amp;"x"</f><v>Withy 5x</v></c><c r="C1"><f>1+1</f><v>2</v></c><c r="D1" t="e"><v>#REF!</v></c><c r="E1" t="b"><v>1</v></c><c r="F1" t="b"><v>0</v></c><c r="G1" t="d"><v>2025-03-04T19:14:00</v></c>';
    const { sheets } = await read(xlsxRows(`<row r="1">${cells}</row>`));
    expect(sheets[0]).toMatchObject({ cells: [["Withy 5", "Withy 5x", "2", "#REF!", "yes", "no", "2025-03-04T19:14"]], typed: { 1: [2, 4, 5, 6] } });
  });
  test("CDATA, comments and prefixes of names are understood", async () => {
    const sheet = '<x:sheetData xmlns:x="m"><x:row r="2"><!-- <c> --><x:c r="B2" t="inlineStr"><x:is><x:t><![CDATA[a < b]]></x:t></x:is></x:c></x:row></x:sheetData>';
    expect((await read(xlsx([{ name: "Jobs", xml: sheet }]))).sheets[0]).toMatchObject({ cells: [["", "a < b"]], lines: [2] });
  });
  test("parts named as Windows names files are found", async () => {
    const rows = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>', relation = '<Relationship Id="rId1" Type="x/worksheet" Target="worksheets/a.xml"/>';
    const parts = { "xl\\workbook.xml": '<workbook><sheets><sheet name="Jobs" r:id="rId1"/></sheets></workbook>', "xl\\_rels\\workbook.xml.rels": `<Relationships>${relation}</Relationships>`, "xl\\worksheets\\a.xml": `<worksheet>${rows}</worksheet>` };
    expect(await cellsOf(archive({ "[Content_Types].xml": "<Types/>", ...parts }))).toEqual([["1"]]);
  });
  test("cells and rows without names stand one after the other", async () => {
    expect((await read(xlsxRows("<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>"))).sheets[0]).toMatchObject({ cells: [["1", "2"], ["3"]], lines: [1, 2] });
  });
});

describe("what a reader of an Excel workbook sees", () => {
  test("a merged label is filled into the rows below it, a title and a row with nothing else are not", async () => {
    const rows = [["Jobs of March", ""], ["ticket", "part"], ["R-1", "line roller"], ["", "drag"], ["", "bail"], ["R-2", "rotor"], ["", ""]];
    const merges = "<mergeCells><mergeCell ref=\"A1:B1\"/><mergeCell ref=\"A3:A5\"/><mergeCell ref=\"A6:A7\"/></mergeCells>";
    const { sheets } = await read(xlsx([{ name: "Jobs", xml: sheetData(rows) + merges }]));
    expect(sheets[0]?.cells).toEqual([["Jobs of March"], ["ticket", "part"], ["R-1", "line roller"], ["R-1", "drag"], ["R-1", "bail"], ["R-2", "rotor"]]);
    expect(sheets[0]?.remarks).toEqual(["What merged cells say was filled into the 2 rows below that they cover."]);
  });
  test("a merged number stays typed in the rows below", async () => {
    const rows = '<row r="1"><c r="A1"><v>55</v></c><c r="B1" t="inlineStr"><is><t>x</t></is></c></row><row r="2"><c r="B2" t="inlineStr"><is><t>y</t></is></c></row>';
    expect((await read(xlsxRows(rows, {}, '<mergeCells><mergeCell ref="A1:A2"/></mergeCells>'))).sheets[0]).toMatchObject({ cells: [["55", "x"], ["55", "y"]], typed: { 1: [0], 2: [0] } });
  });
  test("hidden sheets, rows and columns are read and told", async () => {
    const xml = '<cols><col min="2" max="3" hidden="1"/><col min="20" max="16384" hidden="1"/></cols><sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="2" hidden="1"><c r="A2"><v>2</v></c></row></sheetData>';
    const { sheets, remarks } = await read(xlsx([{ name: "Jobs", xml }, { name: "Old", xml, state: "veryHidden" }, { name: "Empty", xml: "<sheetData/>" }]));
    expect(sheets.map(({ name, cells }) => [name, cells.length])).toEqual([["Jobs", 2], ["Old", 2]]);
    expect(sheets[0]?.remarks).toEqual(["1 row is hidden in the workbook; it was read.", "2 columns are hidden in the workbook; they were read."]);
    expect(remarks).toEqual(["The sheet “Old” is hidden in the workbook; it was read too.", "The sheet “Empty” is empty."]);
  });
  test("cells that only have a look make no columns", async () => {
    expect(await cellsOf(xlsxRows('<row r="1"><c r="A1"><v>1</v></c><c r="XFD1" s="3"/></row><row r="1048576"><c r="A1048576" s="1"/></row>', { styles: STYLES }))).toEqual([["1"]]);
  });
  test("head gives the first rows and reports no bytes", async () => {
    const reported: number[] = [];
    const bytes = xlsx([{ name: "Jobs", xml: sheetData(Array.from({ length: 5000 }, (_, at) => [`R-${at}`, at])) }]);
    const file = await opened(bytes, "file", { onBytes: (done) => reported.push(done) });
    expect((await file.sheets[0]?.head(3))?.map(({ cells }) => cells[0])).toEqual(["R-0", "R-1", "R-2"]);
    expect(reported).toEqual([]);
    for await (const rows of file.sheets[0]?.rows() ?? []) expect(rows.length).toBeGreaterThan(0);
    expect(Math.max(...reported)).toBeGreaterThan(bytes.length / 2);
    expect(Math.max(...reported)).toBeLessThanOrEqual(bytes.length);
  });
  test("a cancel between two pieces ends the reading with its reason", async () => {
    const stop = new AbortController(), reason = new Error("stopped by the owner");
    const file = await opened(xlsx([{ name: "Jobs", xml: sheetData(Array.from({ length: 20_000 }, (_, at) => [`R-${at} ${Math.sin(at)}`])) }]), "file", { signal: stop.signal });
    const all = async () => { for await (const rows of file.sheets[0]?.rows() ?? []) if (rows.length > 0) stop.abort(reason); };
    await expect(all()).rejects.toBe(reason);
  });
});

describe("a damaged or hostile Excel workbook is refused in one sentence", () => {
  const DAMAGED = "The workbook is damaged or was cut off; open it, save it again and bring that.";
  const good = xlsx([{ name: "Jobs", xml: sheetData(Array.from({ length: 500 }, (_, at) => [`R-${at} ${Math.sin(at)}`])) }]);
  const row = (cells: string) => xlsxRows(`<row r="1">${cells}</row>`);
  test.each([
    ["cut off", good.slice(0, good.length - 400), DAMAGED],
    ["text that defines text", xlsx([{ name: "Jobs", xml: '<!DOCTYPE a [<!ENTITY b "bbbb">]><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>' }]), DAMAGED],
    ["a tag that never ends", row('<c r="A1"><v>1</v></c><c r="'), DAMAGED],
    ["a row beyond all spreadsheets", xlsxRows('<row r="99999999"><c r="A1"><v>1</v></c></row>'), DAMAGED],
    ["more columns than a table has", row('<c r="CXY1"><v>1</v></c>'), "Row 1 has more than 2,000 columns; no shop's table is that wide."],
    ["a cell longer than any record", row(`<c r="A1" t="inlineStr"><is><t>${"x".repeat(1_000_001)}</t></is></c>`), "The cell in row 1, column 1 holds more than a million letters; no record is that long."],
    ["a workbook of empty sheets", xlsx([{ name: "Jobs", xml: "<sheetData/>" }]), "The file holds nothing but empty sheets."],
    ["a workbook without its workbook", archive({ "[Content_Types].xml": "<Types/>", "xl/styles.xml": "<a/>" }), DAMAGED],
  ])("%s", async (_name, bytes, sentence) => {
    await expect(read(bytes)).rejects.toThrow(sentence);
  });
  test("a part that unpacks to more than it says stops where it said it would", async () => {
    const bytes = xlsx([{ name: "Jobs", xml: sheetData(Array.from({ length: 3000 }, () => ["aaaaaaaaaaaaaaaaaaaaaaaa"])) }]), view = new DataView(bytes.buffer);
    for (let at = 0; at + 46 < bytes.length; at += 1) {
      const is_sheet = view.getUint32(at, true) === 0x02014b50 && new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + 13)) === "xl/worksheets";
      if (is_sheet) view.setUint32(at + 24, 5000, true);
    }
    await expect(read(bytes)).rejects.toThrow(DAMAGED);
  });
  test("an archive that says it holds more than 2 GB is not unpacked", async () => {
    const bytes = good.slice(), view = new DataView(bytes.buffer);
    for (let at = 0; at + 46 < bytes.length; at += 1) if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 0xf0000000, true);
    await expect(read(bytes)).rejects.toThrow("Unpacked, this file is larger than 2 GB; split it.");
  });
});

test("any rows written as a workbook are read back as they were", async () => {
  const cell = fc.oneof(fc.string({ unit: "grapheme", maxLength: 12 }).map((text) => text.replace(/[\p{Cc}\uFFFE\uFFFF]/gu, "").replaceAll("_x", "x")), fc.constantFrom("", " R-1 ", "a & b < c", "é£€", "0123"), fc.integer(), fc.tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 })).map(([digits, places]) => digits / 10 ** places));
  await fc.assert(fc.asyncProperty(fc.array(fc.array(cell, { maxLength: 6 }), { minLength: 1, maxLength: 12 }), async (rows) => {
    const kept = rows.map((cells) => cells.map((one) => (Object.is(one, -0) ? 0 : one)));
    fc.pre(kept.some((cells) => cells.some((one) => one !== "")));
    const { sheets } = await read(xlsx([{ name: "Jobs", xml: sheetData(kept) }]));
    const found = new Map(sheets[0]?.lines.map((line, at) => [line, sheets[0]?.cells[at]]));
    kept.forEach((cells, at) => {
      const texts = cells.map((one) => (String(one)));
      while (texts.at(-1) === "") texts.pop();
      expect(found.get(at + 1) ?? []).toEqual(texts);
      expect(sheets[0]?.typed[at + 1] ?? []).toEqual(cells.flatMap((one, place) => (typeof one === "number" ? [place] : [])));
    });
  }), { numRuns: 150 });
});
