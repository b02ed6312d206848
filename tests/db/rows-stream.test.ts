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

  test("joined are the stream, closed", () => {
    expect(joined([whole.slice(0, 100), whole.slice(100, -8)])).toEqual(whole);
  });

  test("are closed too where the last one ends in bytes that look like an end", () => {
    const end = [255, 255, 255, 255, 0, 0, 0, 0];
    expect([...joined([Uint8Array.of(1, ...end)])]).toEqual([1, ...end, ...end]);
  });

  test("that are cut anywhere are damaged, never fewer rows", () => {
    for (let end = 0; end < whole.length; end += 4) expect(() => frame(whole.slice(0, end))).toThrow(DamagedRows);
  });
});
