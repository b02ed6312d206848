import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Unreadable } from "../../../src/records/formats/unreadable.ts";
import { allRows, opened, read, cellsOf } from "./opening.ts";
import { archive, ods, odsRow, odsTable, odsText, sheetData, xlsx } from "./making-workbooks.ts";

const bytes = (...parts: (number | string)[]) => new Uint8Array(parts.flatMap((one) => (typeof one === "number" ? [one] : [...one].map((letter) => letter.charCodeAt(0)))));
const wide = (text: string) => [...text].join("\0");
const OLE = String.fromCharCode(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1);
const old_workbook = new Uint8Array(readFileSync(join(import.meta.dirname, "old-workbook.xls")));

/** The record after the first one of the workbook becomes the one of a locked workbook. */
function locked(book: Uint8Array): Uint8Array<ArrayBuffer> {
  const at = Buffer.from(book).indexOf(Buffer.from([0x09, 0x08, 0x10, 0x00, 0x00, 0x06]));
  const copy = new Uint8Array(book);
  copy.set([0x2f, 0x00], at + 20);
  return copy;
}

describe("a file is named for what it is, whatever it is called", () => {
  test.each([
    ["an empty file", "", "The file is empty."],
    ["HTML saved as .xls", "\uFEFF  <table><tr><td>ticket_no</td></tr></table>", "This is a web page (HTML), whatever its name says; export the records as CSV."],
    ["HTML in UTF-16", bytes(0xff, 0xfe, wide("<html><body>"), 0), "This is a web page (HTML), whatever its name says; export the records as CSV."],
    ["XML saved as .xls", '<?xml version="1.0"?><Workbook/>', "This is an XML file, not a table; export the records as CSV."],
    ["a PDF", "%PDF-1.7", "This is a PDF, not a table; export the records as CSV."],
    ["a picture", bytes(0x89, "PNG", 0x0d, 0x0a), "This is a picture, not a table."],
    ["a photograph", bytes(0xff, 0xd8, 0xff, 0xe0), "This is a picture, not a table."],
    ["a bitmap", bytes("BM", 0x36, 0, 0, 0), "This is a picture, not a table."],
    ["a database", "SQLite format 3\0", "This is a database file; export its tables as CSV."],
    ["an office database", bytes(0, 1, 0, 0, "Standard Jet DB", 0), "This is a database file; export its tables as CSV."],
    ["a rich text", "{\\rtf1 a}", "This is a word-processor document (RTF), not a table."],
    ["bytes that are no text", bytes("ticket", 0, 0, 1, 2), "This is not a text file, so no table can be read from it."],
    ["a zip archive of CSVs", archive({ "tickets.csv": "a,b\n" }), "This is a zip archive; unpack it and bring the files in it."],
    ["an empty zip archive", archive({}), "This is a zip archive with nothing in it."],
    ["a text document", archive({ "[Content_Types].xml": "<a/>", "word/document.xml": "<a/>" }), "This is a word-processor document, not a table."],
    ["an OpenDocument text", archive({ mimetype: "application/vnd.oasis.opendocument.text", "content.xml": "<a/>" }), "This is a word-processor document, not a table."],
    ["a presentation", archive({ "[Content_Types].xml": "<a/>", "ppt/presentation.xml": "<a/>" }), "This is a presentation, not a table."],
    ["a binary workbook", archive({ "[Content_Types].xml": "<a/>", "xl/workbook.bin": "a" }), "This is a binary Excel workbook (.xlsb); save it as .xlsx and bring that."],
    ["a Numbers document", archive({ "Index/Document.iwa": "a" }), "This is a Numbers document; export it as Excel or CSV and bring that."],
    ["a drawing that is built like a workbook", archive({ "[Content_Types].xml": "<a/>", "visio/document.xml": "<a/>" }), "This is a zip archive; unpack it and bring the files in it."],
    ["a locked new workbook", bytes(OLE, ...new Array<number>(600).fill(0), wide("EncryptedPackage")), "This workbook is locked with a password; save it without one and bring that."],
    ["a locked old workbook", locked(old_workbook), "This workbook is locked with a password; save it without one and bring that."],
    ["an old text document", bytes(OLE, ...new Array<number>(600).fill(0), wide("WordDocument")), "This is a word-processor document, not a table."],
    ["an old file of another kind", bytes(OLE, ...new Array<number>(600).fill(0)), "This is an old Office file, but no workbook; save the table as .xlsx and bring that."],
    ["a damaged old workbook", old_workbook.slice(0, 2000), /^This (is an old Office file|old Excel workbook)/],
    ["a locked Parquet file", "PAREabcd", "This Parquet file is locked with a key; save it without one and bring that."],
    ["a packed workbook", new Uint8Array(gzipSync(xlsx([{ name: "a", xml: sheetData([["a"]]) }]))), "This is a packed file with another one in it; unpack it and bring that."],
    ["damaged packing", bytes(0x1f, 0x8b, 8, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10), "The packed file is damaged or was cut off; pack or download it again."],
    ["packing that was cut off", new Uint8Array(gzipSync(`a,b\n${"R-1,a\n".repeat(9999)}`)).slice(0, 60), "The packed file is damaged or was cut off; pack or download it again."],
  ])("%s", async (_name, content, sentence) => {
    await expect(read(content)).rejects.toThrow(Unreadable);
    await expect(read(content)).rejects.toThrow(sentence);
  });
  test("a file larger than the limit is refused before it is read", async () => {
    const blob = Object.defineProperty(new Blob(["ticket_no\n"]), "size", { value: 600 * 1024 ** 2 });
    const { openSheets } = await import("../../../src/records/formats/open-sheets.ts");
    await expect(openSheets({ name: "a.csv", blob }, { signal: new AbortController().signal, onBytes: () => undefined })).rejects.toThrow("The file is larger than 512 MB");
  });
  test("a cancelled file is not opened", async () => {
    await expect(read("a,b\n", { signal: AbortSignal.abort(new Error("stopped by the owner")) })).rejects.toThrow("stopped by the owner");
  });
  test("a text that begins like a picture or like JSON is a text", async () => {
    expect(await cellsOf("BM,model\nR-1,a\n")).toEqual([["BM", "model"], ["R-1", "a"]]);
    expect(await cellsOf("[id],model\nR-1,a\n")).toEqual([["[id]", "model"], ["R-1", "a"]]);
  });
  test("no bytes at all bring anything but rows or one sentence", async () => {
    const start = fc.constantFrom("", "PK\x03\x04", OLE, "PAR1", "ARROW1\0\0", "\xff\xff\xff\xff", "[{", "\x1f\x8b\x08", "<?xml");
    await fc.assert(fc.asyncProperty(start, fc.uint8Array({ minLength: 1, maxLength: 300 }), async (letters, tail) => {
      const outcome = await read(new Uint8Array([...bytes(letters), ...tail])).then(() => "rows", (error: unknown) => (error instanceof Unreadable ? "a sentence" : error));
      expect(["rows", "a sentence"]).toContain(outcome);
    }), { numRuns: 300 });
  });
  test("a workbook with any damage brings rows or one sentence", async () => {
    const whole = [xlsx([{ name: "Jobs", xml: sheetData([["ticket_no", "min"], ["R-1", 5]]) }]), ods(odsTable(odsRow(odsText("a")))), old_workbook];
    await fc.assert(fc.asyncProperty(fc.constantFrom(...whole), fc.double({ min: 0, max: 1, noNaN: true }), fc.uint8Array({ minLength: 1, maxLength: 12 }), async (book, place, damage) => {
      const copy = new Uint8Array(book);
      copy.set(damage, Math.floor(place * (copy.length - damage.length)));
      const outcome = await read(copy).then(() => "rows", (error: unknown) => (error instanceof Unreadable ? "a sentence" : error));
      expect(["rows", "a sentence"]).toContain(outcome);
    }), { numRuns: 300 });
  });
});

describe("a text file is one sheet", () => {
  test("its separator, line ends and encoding are told, and nothing is typed", async () => {
    const file = await opened("ticket_no;min\r\nR-1;1,5\r\n");
    expect(file).toMatchObject({ kind: "text", remarks: [], sheets: [{ name: null, has_headings: false, hidden: false, text: { delimiter: ";", newline: "\n", encoding: "utf-8" } }] });
    expect(await allRows(file.sheets[0] ?? expect.fail("no sheet"))).toEqual([
      { line: 1, lines: 1, cells: ["ticket_no", "min"], stray_quote: false, typed: null },
      { line: 2, lines: 1, cells: ["R-1", "1,5"], stray_quote: false, typed: null },
    ]);
  });
  test("what the owner says of separator and encoding counts", async () => {
    expect(await cellsOf("a;b|c\n", { text: { delimiter: "|" } })).toEqual([["a;b", "c"]]);
    expect(await cellsOf(bytes("a,", 0xa3), { text: { encoding: "windows-1252" } })).toEqual([["a", "£"]]);
  });
  test("a first line that names the separator is not a row, and lines are counted with it", async () => {
    expect((await read("sep=;\na,1;b\nc;d\n")).sheets[0]).toMatchObject({ cells: [["a,1", "b"], ["c", "d"]], lines: [2, 3] });
  });
  test("known headings decide between separators", async () => {
    const text = "ticket_no;cost, net, gross, tax\nR-1;1,2,3,4\n";
    expect((await cellsOf(text, { isKnownHeading: (heading) => heading === "ticket_no" }))[0]).toEqual(["ticket_no", "cost, net, gross, tax"]);
  });
  test("UTF-16 without its mark is told by where the zero bytes stand", async () => {
    const little = bytes(wide("model,£5\nWithy 5,é\n"), 0), big = bytes(0, wide("model,£5\nWithy 5,é\n"));
    expect(await cellsOf(little)).toEqual([["model", "£5"], ["Withy 5", "é"]]);
    expect(await cellsOf(big)).toEqual([["model", "£5"], ["Withy 5", "é"]]);
  });
  test("a packed text is unpacked, and bytes are reported as they lie on the disk", async () => {
    const packed = new Uint8Array(gzipSync(`a,b\n${Array.from({ length: 30_000 }, (_, at) => `R-${at},${Math.sin(at)}`).join("\n")}`)), reported: number[] = [];
    const [sheet] = (await opened(packed, "file", { onBytes: (done) => reported.push(done) })).sheets;
    expect(reported).toEqual([]);
    expect(await allRows(sheet ?? expect.fail("no sheet"))).toHaveLength(30_001);
    expect(reported.at(-1)).toBe(packed.length);
  });
  test("head reads no more than it must, and rows can be read again", async () => {
    const [sheet] = (await opened(`a,b\n${"R-1,x\n".repeat(200_000)}`)).sheets;
    expect((await sheet?.head(2))?.map(({ cells }) => cells)).toEqual([["a", "b"], ["R-1", "x"]]);
    expect(await allRows(sheet ?? expect.fail("no sheet"))).toHaveLength(200_001);
    expect(await allRows(sheet ?? expect.fail("no sheet"))).toHaveLength(200_001);
  });
  test.each([
    ["too many columns", `a${",b".repeat(2000)}\n`, "Row 1 has more than 2,000 columns; no shop's table is that wide."],
    ["a cell without end", `a,${"x".repeat(1_000_001)}\n`, "The cell in row 1, column 2 holds more than a million letters; no record is that long."],
  ])("%s is refused", async (_name, text, sentence) => {
    await expect(read(text)).rejects.toThrow(sentence);
  });
});

test("an old Excel workbook is read: days, times, hours, yes/no, errors and merged cells", async () => {
  const { kind, sheets, remarks } = await read(old_workbook);
  expect(kind).toBe("workbook");
  expect(remarks).toEqual(["The sheet “Empty” is empty."]);
  expect(sheets).toEqual([{
    name: "Jobs", lines: [1, 2, 3, 4], remarks: ["What merged cells say was filled into the row below that they cover."],
    cells: [
      ["ticket_no", "received_on", "took", "min", "done", "note"],
      ["R-1", "2025-03-04", "1:40", "55.5", "yes", "bail é £5"],
      ["R-1", "2025-03-04T19:14", "26:30", "12", "no", "rotor"],
      ["R-2", "", "", "7", "", "#REF!"],
    ],
    typed: { 2: [1, 2, 3, 4], 3: [1, 2, 3, 4], 4: [3] },
  }]);
});
