import { tableFromIPC } from "apache-arrow";
import { expect, test } from "vitest";
import { ArrowCollector } from "../../src/records/arrow-rows.ts";
import { TABLES, table } from "../../src/records/columns.ts";

const origin = { file_no: 1, source_file: "a.csv", row_key: "AAAAAAAAAAA", came_in_guessed: false };

test("rows come out of the stream as they went in: dates as days, missing as null, words once", () => {
  const collector = new ArrowCollector(table("orders"), 10);
  const rows = [["O-1", "A", "P", 3, "2026-03-01", null, 2.5], [null, "A", "Q", null, "1969-12-31", "2026-04-01", null]];
  rows.forEach((values, at) => collector.push({ ...origin, values, source_line: at + 2 }));
  const { rows: length, stream } = collector.take(), read = tableFromIPC(stream);
  expect(length).toBe(2);
  expect(read.schema.fields.map(({ name, type }) => `${name} ${String(type)}`)).toEqual([
    "order_no Dictionary<Int32, Utf8>", "supplier Dictionary<Int32, Utf8>", "part_no Dictionary<Int32, Utf8>", "qty Int32", "ordered_on Date32<DAY>",
    "arrived_on Date32<DAY>", "unit_cost Float64", "file_no Int32", "source_file Dictionary<Int32, Utf8>", "source_line Int32", "row_key Utf8",
  ]);
  const day = (value: unknown) => (value === null ? null : new Date(Number(value)).toISOString().slice(0, 10));
  expect(read.toArray().map((row) => [row.order_no, row.supplier, row.part_no, row.qty, day(row.ordered_on), day(row.arrived_on), row.unit_cost, row.source_line, row.row_key])).toEqual(
    rows.map((values, at) => [...values, at + 2, "AAAAAAAAAAA"]));
});

test("yes, no and unknown stay three things", () => {
  const collector = new ArrowCollector(table("models"), 20), sealed = [true, false, null, true, true, false, null, null, true];
  sealed.forEach((value, at) => collector.push({ ...origin, values: [null, `M${at}`, null, value, null, null, null], source_line: at }));
  expect(tableFromIPC(collector.take().stream).toArray().map((row) => row.sealed)).toEqual(sealed);
});

test.each(TABLES)("$name can be sent without a single value in its columns", ({ name, columns }) => {
  const collector = new ArrowCollector(table(name), 3);
  collector.push({ ...origin, values: columns.map(() => null), source_line: 2 });
  expect(tableFromIPC(collector.take().stream).numRows).toBe(1);
  expect(collector.length).toBe(0);
});

test("a full collector has to be emptied first", () => {
  const collector = new ArrowCollector(table("suppliers"), 1), row = { ...origin, values: ["A"], source_line: 2 };
  collector.push(row);
  expect(collector.is_full).toBe(true);
  expect(() => collector.push(row)).toThrow("push: needs take() after 1 rows");
});
