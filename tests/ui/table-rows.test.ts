import { describe, expect, test } from "vitest";
import { csv, csvCell } from "../../src/ui/csv.ts";
import { cellText, nextOrder, ordered, type Column } from "../../src/ui/table-rows.ts";

interface Line { part: string; pieces: number | null }
const part: Column<Line> = { key: "part", label: "Part", value: (row) => row.part };
const pieces: Column<Line> = { key: "pieces", label: "Pieces", align: "right", value: (row) => row.pieces };
const rows: Line[] = [{ part: "b", pieces: 2 }, { part: "A10", pieces: null }, { part: "a9", pieces: 10 }, { part: "c", pieces: 2 }];
const sorted = (key: string, direction: "ascending" | "descending") =>
  ordered(rows, [part, pieces], { key, direction }).map((row) => row.part);

describe("ordered", () => {
  test("sorts numbers by size and texts as people read them", () => {
    expect(sorted("pieces", "ascending")).toEqual(["b", "c", "a9", "A10"]);
    expect(sorted("part", "ascending")).toEqual(["a9", "A10", "b", "c"]);
  });

  test("puts rows without a value last in both directions and keeps equal rows in place", () => {
    expect(sorted("pieces", "descending")).toEqual(["a9", "b", "c", "A10"]);
  });

  test("leaves the rows as they came without an order, and never changes what it was given", () => {
    expect(ordered(rows, [part], null)).toBe(rows);
    sorted("pieces", "descending");
    expect(rows[0]?.part).toBe("b");
  });

  test("refuses an order by a column that is not there", () => {
    expect(() => ordered(rows, [part], { key: "price", direction: "ascending" })).toThrow(RangeError);
  });

  test("a first press gives the largest number or the first word, a second press turns round", () => {
    expect(nextOrder(null, pieces)).toEqual({ key: "pieces", direction: "descending" });
    expect(nextOrder(null, part)).toEqual({ key: "part", direction: "ascending" });
    expect(nextOrder({ key: "part", direction: "ascending" }, part).direction).toBe("descending");
    expect(nextOrder({ key: "part", direction: "descending" }, part).direction).toBe("ascending");
  });

  test("a missing or empty value shows as a dash and nought does not", () => {
    expect(cellText(pieces, { part: "x", pieces: null })).toBe("–");
    expect(cellText(part, { part: "", pieces: 0 })).toBe("–");
    expect(cellText(pieces, { part: "x", pieces: 0 })).toBe("0");
  });
});

describe("csv", () => {
  test("quotes commas, quotes and line ends, and leaves missing cells empty", () => {
    const table = csv([part, pieces], [{ part: 'six, "small"', pieces: null }, { part: "a\nb", pieces: 1.5 }]);
    expect(table).toBe('part,pieces\r\n"six, ""small""",\r\n"a\nb",1.5\r\n');
  });

  test.each(["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "'=1", "＝1", "+5"])("a text that starts like a formula cannot run in a spreadsheet: %j", (value) => {
    expect(csvCell(value).replace(/^"/, "")).toMatch(/^'/);
  });

  test("negative numbers stay numbers, also where they are texts", () => {
    expect(csvCell(-3)).toBe("-3");
    expect(csvCell("-3.5")).toBe("-3.5");
  });
});
