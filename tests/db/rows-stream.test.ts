import { tableFromIPC } from "apache-arrow";
import { describe, expect, test } from "vitest";
import { frame, joined } from "../../src/db/arrow-stream.ts";
import { DamagedRows } from "../../src/db/errors.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";

describe("rows as a stream", () => {
  test("hold every cell under its column's name, what a row lacks as null, what no column names left out", () => {
    const stream = rowsStream({ day: "date", grade: "integer" }, [{ day: "1999-12-31", other: "x" }, { grade: 0 }]);
    expect(frame(stream)).toEqual({ rows: 2, columns: ["day", "grade"] });
    const table = tableFromIPC(stream);
    expect([table.getChild("day")?.get(0), table.getChild("day")?.get(1)]).toEqual([Date.UTC(1999, 11, 31), null]);
    expect([table.getChild("grade")?.get(0), table.getChild("grade")?.get(1)]).toEqual([null, 0]);
  });

  test.each(["31.12.1999", "1999-13-01", 3])("refuse what is no day: %s", (day) => {
    expect(() => rowsStream({ day: "date" }, [{ day }])).toThrow(/needs a day as YYYY-MM-DD/);
  });
});

describe("pieces of a stream", () => {
  const whole = rowsStream({ a: "integer" }, [{ a: 1 }, { a: 2 }]);

  test("joined are the stream, closed once whether it was closed or not", () => {
    for (const end of [whole.length, whole.length - 8]) {
      expect(joined([whole.slice(0, 100), whole.slice(100, end)])).toEqual(whole);
    }
  });

  test("that are cut anywhere are damaged, never fewer rows", () => {
    for (let end = 0; end < whole.length; end += 4) expect(() => frame(whole.slice(0, end))).toThrow(DamagedRows);
  });
});
