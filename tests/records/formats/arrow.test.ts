import { Bool, DateDay, Decimal, Dictionary, Field, Float64, Int32, Int64, List, RecordBatch, RecordBatchStreamWriter, Schema, Struct, Table, TimeSecond, TimestampMicrosecond, Utf8, makeData, tableToIPC, vectorFromArray } from "apache-arrow";
import type { Vector } from "apache-arrow";
import { describe, expect, test } from "vitest";
import { allRows, opened, read } from "./opening.ts";

const table = (columns: Record<string, Vector>) => new Table(columns);
const ipc = (columns: Record<string, Vector>, kind: "stream" | "file" = "stream") => tableToIPC(table(columns), kind) as Uint8Array<ArrayBuffer>;
const columns = {
  ticket_no: vectorFromArray(["R-1", "R-2", null], new Utf8()),
  model: vectorFromArray(["Withy 5", "Withy 5", null], new Dictionary(new Utf8(), new Int32())),
  min: vectorFromArray([55.5, null, 4.6000000000000005], new Float64()),
  serial: vectorFromArray([12345678901234567n, null, 3n], new Int64()),
  done: vectorFromArray([true, false, null], new Bool()),
  received_on: vectorFromArray([new Date("2025-03-04T00:00:00Z"), null, null], new DateDay()),
  finished: vectorFromArray([Date.UTC(2025, 2, 4, 19, 14, 30), Date.UTC(2025, 2, 4), null], new TimestampMicrosecond()),
  took: vectorFromArray([6000, null, 0], new TimeSecond()),
  parts: vectorFromArray([["bail", "rotor"], [], null], new List(new Field("item", new Utf8()))),
  reel: vectorFromArray([{ maker: "Quillane", size: 40 }, null, { maker: null, size: 5 }], new Struct([new Field("maker", new Utf8()), new Field("size", new Int32())])),
};

describe("an Arrow file or stream is one sheet", () => {
  test.each([["stream"], ["file"]] as const)("as a %s, with every kind of column", async (kind) => {
    const { kind: found, sheets } = await read(ipc(columns, kind));
    expect(found).toBe("arrow");
    expect(sheets[0]?.cells).toEqual([
      ["ticket_no", "model", "min", "serial", "done", "received_on", "finished", "took", "parts", "reel.maker", "reel.size"],
      ["R-1", "Withy 5", "55.5", "12345678901234567", "yes", "2025-03-04", "2025-03-04T19:14", "1:40", "bail; rotor", "Quillane", "40"],
      ["R-2", "Withy 5", "", "", "no", "", "2025-03-04", "", "", "", ""],
      ["", "", "4.6", "3", "", "", "", "0:00", "", "", "5"],
    ]);
    expect(sheets[0]?.typed).toEqual({ 1: [2, 3, 4, 5, 6, 7, 10], 2: [4, 6], 3: [2, 3, 7, 10] });
  });
  test("decimal numbers are exact, below zero too", async () => {
    const type = new Decimal(3, 38, 128), values = new Uint32Array(8);
    values.set([12_500, 0, 0, 0], 0);
    values.set([0xffffffff - 1, 0xffffffff, 0xffffffff, 0xffffffff], 4);
    const data = makeData({ type, length: 2, nullCount: 0, data: values });
    const schema = new Schema([new Field("cost", type)]), struct = makeData({ type: new Struct(schema.fields), length: 2, nullCount: 0, children: [data] });
    const { sheets } = await read(tableToIPC(new Table([new RecordBatch(schema, struct)]), "stream") as Uint8Array<ArrayBuffer>);
    expect(sheets[0]).toMatchObject({ cells: [["cost"], ["12.5"], ["-0.002"]], typed: { 1: [0], 2: [0] } });
  });
  test("batches follow each other, and lines are counted on", async () => {
    const writer = RecordBatchStreamWriter.writeAll(table({ a: vectorFromArray(Array.from({ length: 1500 }, (_, at) => at), new Int32()) }).batches);
    const once = await writer.toUint8Array(true), file = await opened(once as Uint8Array<ArrayBuffer>);
    const rows = await allRows(file.sheets[0] ?? expect.fail("no sheet"));
    expect(rows).toHaveLength(1501);
    expect(rows.at(-1)).toMatchObject({ line: 1500, cells: ["1499"] });
  });
  test.each([["stream"], ["file"]] as const)("a %s that was cut off is told", async (kind) => {
    const bytes = ipc(columns, kind);
    await expect(read(bytes.slice(0, Math.floor(bytes.length * 0.7)))).rejects.toThrow("This Arrow file is damaged or was cut off, so it cannot be read.");
  });
});
