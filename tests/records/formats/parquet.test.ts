import { parquetWriteBuffer } from "hyparquet-writer";
import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { allRows, opened, read } from "./opening.ts";

type Columns = Parameters<typeof parquetWriteBuffer>[0]["columnData"];
const parquet = (columnData: Columns, more: Partial<Parameters<typeof parquetWriteBuffer>[0]> = {}) => new Uint8Array(parquetWriteBuffer({ columnData, ...more }));
const day = (text: string) => new Date(`${text}T00:00:00Z`);

describe("a Parquet file is one sheet", () => {
  test("texts, numbers, yes/no, long numbers and what is missing", async () => {
    const bytes = parquet([
      { name: "ticket_no", data: ["R-1", "R-2", null], type: "STRING" },
      { name: "min", data: [55.5, null, 4.6000000000000005], type: "DOUBLE" },
      { name: "qty", data: [1, 2, null], type: "INT32" },
      { name: "serial", data: [12345678901234567n, null, 3n], type: "INT64" },
      { name: "done", data: [true, false, null], type: "BOOLEAN" },
    ]);
    const { kind, sheets } = await read(bytes);
    expect(kind).toBe("parquet");
    expect(sheets).toEqual([{
      name: null, remarks: [], lines: [0, 1, 2, 3],
      cells: [["ticket_no", "min", "qty", "serial", "done"], ["R-1", "55.5", "1", "12345678901234567", "yes"], ["R-2", "", "2", "", "no"], ["", "4.6", "", "3", ""]],
      typed: { 1: [1, 2, 3, 4], 2: [2, 4], 3: [1, 3] },
    }]);
  });
  test("days, moments, times and decimal numbers", async () => {
    const bytes = parquet([
      { name: "received_on", data: [18_000, null] },
      { name: "finished", data: [new Date("2025-03-04T19:14:30Z"), day("2025-03-04")] },
      { name: "cost", data: [12.5, 0.07] },
      { name: "took", data: [6_000_000, null] },
    ], {
      schema: [
        { name: "root", num_children: 4 },
        { name: "received_on", type: "INT32", repetition_type: "OPTIONAL", converted_type: "DATE" },
        { name: "finished", type: "INT64", repetition_type: "OPTIONAL", converted_type: "TIMESTAMP_MILLIS" },
        { name: "cost", type: "INT64", repetition_type: "OPTIONAL", converted_type: "DECIMAL", precision: 9, scale: 2 },
        { name: "took", type: "INT32", repetition_type: "OPTIONAL", converted_type: "TIME_MILLIS" },
      ],
    });
    expect((await read(bytes)).sheets[0]?.cells).toEqual([["received_on", "finished", "cost", "took"], ["2019-04-14", "2025-03-04T19:14", "12.5", "1:40"], ["", "2025-03-04", "0.07", ""]]);
  });
  test("lists are joined, records in a record stay as JSON", async () => {
    const bytes = parquet([{ name: "parts", data: ["a; b", "c"].map((text) => text.split("; ")), type: "JSON" }, { name: "more", data: [{ a: 1 }, null], type: "JSON" }]);
    expect((await read(bytes)).sheets[0]?.cells).toEqual([["parts", "more"], ["a; b", '{"a":1}'], ["c", ""]]);
  });
  test.each([["SNAPPY"], ["UNCOMPRESSED"], ["GZIP"]] as const)("packed as %s, in several groups of rows", async (codec) => {
    const data = Array.from({ length: 2500 }, (_, at) => `R-${at % 7}`);
    const bytes = parquet([{ name: "ticket_no", data, type: "STRING" }], { codec, rowGroupSize: 1000, compressors: { GZIP: (packed: Uint8Array) => new Uint8Array(gzipSync(packed)) } });
    const reported: number[] = [], file = await opened(bytes, "file", { onBytes: (done) => reported.push(done) });
    const rows = await allRows(file.sheets[0] ?? expect.fail("no sheet"));
    expect(rows.map(({ cells }) => cells[0])).toEqual(["ticket_no", ...data]);
    expect(rows.map(({ line }) => line)).toEqual(Array.from({ length: 2501 }, (_, at) => at));
    expect(reported.at(-1)).toBe(bytes.length);
  });
});

/** A Zstandard frame of one block that is not packed (RFC 8878, 3.1.1): magic, one segment with a size of one byte, last raw block. */
function zstd(plain: Uint8Array): Uint8Array {
  const block = (plain.length << 3) | 1;
  return new Uint8Array([0x28, 0xb5, 0x2f, 0xfd, 0x20, plain.length, block & 0xff, (block >> 8) & 0xff, block >> 16, ...plain]);
}

test("a Parquet file packed with Zstandard is read", async () => {
  const bytes = parquet([{ name: "ticket_no", data: ["R-1", "R-2"], type: "STRING" }], { codec: "ZSTD", compressors: { ZSTD: zstd } });
  expect((await read(bytes)).sheets[0]?.cells).toEqual([["ticket_no"], ["R-1"], ["R-2"]]);
});

describe("a Parquet file that cannot be read says so in one sentence", () => {
  const DAMAGED = "This Parquet file is damaged or of a rare kind, so it cannot be read.";
  const good = parquet([{ name: "ticket_no", data: Array.from({ length: 500 }, (_, at) => `R-${Math.sin(at)}`), type: "STRING" }]);
  test("cut off", async () => { await expect(read(good.slice(0, good.length - 30))).rejects.toThrow(DAMAGED); });
  test("damaged within", async () => { await expect(read(good.map((byte, at) => (at > 8 && at < 60 ? 0xff : byte)))).rejects.toThrow(DAMAGED); });
  test("packed in a way that is not known", async () => {
    const bytes = parquet([{ name: "a", data: ["b"], type: "STRING" }], { codec: "BROTLI", compressors: { BROTLI: (packed: Uint8Array) => packed } });
    await expect(read(bytes)).rejects.toThrow("This Parquet file is packed with BROTLI, which is not known here; save it with SNAPPY, ZSTD or GZIP.");
  });
});
