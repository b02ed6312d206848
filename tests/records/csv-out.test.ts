import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvCell, csvText, withApostrophe, withoutApostrophe } from "../../src/records/csv-out.ts";
import { rowsToFixCsv, rowsToFixFrom } from "../../src/records/rows-to-fix.ts";
import { cellsOf } from "./reading/reading.ts";

describe("a CSV text", () => {
  test("follows RFC 4180 section 2: CRLF, and quotation marks where a cell needs them", () => {
    expect(csvText(["a", "b"], [["x", 'say "hi"'], ["c,d", "e\nf"], [null, 1.5], [true, false]])).toBe(
      'a,b\r\nx,"say ""hi"""\r\n"c,d","e\nf"\r\n,1.5\r\nyes,no\r\n');
  });
  test("keeps numbers whole, with a point", () => expect([0.1 + 0.2, 1e21, -5, 0].map(csvCell)).toEqual(["0.30000000000000004", "1e+21", "-5", "0"]));
});

// What spreadsheets run: OWASP, "CSV Injection" (community page); the full-width signs are from memory.
describe("a cell that a spreadsheet would run as a formula", () => {
  test.each(["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\tx", "\rx", "=cmd|' /C calc'!A0", "＝1+1"])("%j gets an apostrophe in front", (text) => {
    expect(withApostrophe(text)).toBe(`'${text}`);
    expect(withoutApostrophe(withApostrophe(text))).toBe(text);
  });
  test.each(["-5", "-5.25", "a=b", "'tis", "", "3-4"])("%j is left as it is", (text) => expect(withApostrophe(text)).toBe(text));
  test("comes back unchanged through a file, whatever it is", async () => {
    await fc.assert(fc.asyncProperty(fc.array(fc.string({ unit: "grapheme" }), { minLength: 1, maxLength: 4 }), async (texts) => {
      const [, cells] = await cellsOf(csvText(texts.map((_, at) => `c${at}`), [texts]));
      expect(cells?.map(withoutApostrophe)).toEqual(texts);
    }), { numRuns: 300 });
  });
  test("never begins a cell of a file with a sign that starts one", () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom("=", "+", "-", "@", "\t", "'", "1", ".", "a", '"') }), (text) => {
      const cell = csvCell(text).replace(/^"/, "");
      expect(/^[=+@\t]/.test(cell) || (cell.startsWith("-") && !/^-\d+(\.\d+)?$/.test(cell))).toBe(false);
    }));
  });
});

test("the list of rows to fix comes back as it was", async () => {
  const rejects = [{ file: "a.csv", line: 2, column: "=x", value: 'a\r\nb "c"', reason: "“a” is odd, or not" }, { file: "b.csv", line: 10, column: "", value: "", reason: "x" }];
  expect(await rowsToFixFrom(rowsToFixCsv(rejects))).toEqual(rejects);
  expect(await rowsToFixFrom(rowsToFixCsv([]))).toEqual([]);
  await expect(rowsToFixFrom("file,line\r\n")).rejects.toThrow(RangeError);
  await expect(rowsToFixFrom("file,line,column,value,reason\r\na,two,,,\r\n")).rejects.toThrow("needs a number for the line, got two");
});
