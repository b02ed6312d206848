import { beforeEach, describe, expect, test } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { DamagedRows } from "../../src/db/errors.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";
import { openEngine } from "./open.ts";

const TYPES = { grade: "integer", ticket_no: "varchar", note: "varchar", minutes: "double", routine: "boolean" } as const;
const ROWS = [
  { ticket_no: "T1", grade: 3, note: "seized, \"as found\"", minutes: 1.5, routine: true },
  { ticket_no: "T2", grade: null, note: null, minutes: null, routine: null },
  { ticket_no: "T1", grade: 0, note: "", minutes: 0, routine: false },
];
const ALL = "select ticket_no, grade, note, minutes, routine from ledger.findings order by rowid";
const stream = () => rowsStream(TYPES, ROWS);

let engine: Engine;
beforeEach(async () => {
  engine = await openEngine();
});

describe("loading a stream", () => {
  test("puts cells by the columns' names, leaves what is not given empty, and keeps the caller's bytes", async () => {
    const bytes = stream(), before = bytes.slice();
    await engine.load("ledger.findings", bytes, 3, { import_no: 7, source_file: "it's.csv" });
    expect(bytes).toEqual(before);
    expect(await engine.rows(ALL)).toEqual(ROWS);
    expect(await engine.rows("select distinct import_no, source_file, position from ledger.findings")).toEqual([{ import_no: 7, source_file: "it's.csv", position: null }]);
  });

  test("takes in whole what is large", async () => {
    const many = Array.from({ length: 1_100_000 }, (_, at) => ({ minutes: at })), bytes = rowsStream({ minutes: "double" }, many);
    expect(bytes.length).toBeGreaterThan(8 << 20);
    await engine.load("ledger.findings", bytes, many.length);
    expect(await engine.rows("select count(*) as n, sum(minutes) as total from ledger.findings")).toEqual([{ n: 1_100_000, total: (1_100_000 * 1_099_999) / 2 }]);
  });

  test("keeps the words of a large stream, which stand before its rows", async () => {
    const n = 300_000, types = { ticket_no: "varchar", note: "varchar", row_key: "varchar", minutes: "double" } as const;
    const bytes = rowsStream(types, Array.from({ length: n }, (_, at) => ({ ticket_no: `ticket ${at} of the shop`, note: `what was seen at look ${at}`, row_key: `key ${at}`, minutes: at })));
    await engine.load("ledger.findings", bytes, n);
    expect(await engine.rows(`select count(*) as n, count(*) filter (ticket_no = 'ticket ' || minutes::integer || ' of the shop'
      and note = 'what was seen at look ' || minutes::integer and row_key = 'key ' || minutes::integer) as as_written from ledger.findings`)).toEqual([{ n, as_written: n }]);
  });

  test("lets a column that is alike in every row win over the stream's own", async () => {
    await engine.load("ledger.findings", rowsStream({ import_no: "integer" }, [{ import_no: 1 }]), 1, { import_no: 2 });
    expect(await engine.rows("select import_no from ledger.findings")).toEqual([{ import_no: 2 }]);
  });

  test("takes no rows, and a column in which nothing is written", async () => {
    await engine.load("ledger.findings", rowsStream(TYPES, []), 0);
    await engine.load("ledger.findings", rowsStream({ note: "varchar", grade: "integer" }, [{}]), 1);
    expect(await engine.rows("select count(*) as n, count(note) as notes from ledger.findings")).toEqual([{ n: 1, notes: 0 }]);
  });

  const whole = stream();
  const noise = Uint8Array.from({ length: whole.length }, (_, at) => (at * 31) % 251);
  test.each([
    ["cut in half", whole.slice(0, whole.length / 2), 3],
    ["without its end", whole.slice(0, -8), 3],
    ["with its end but without its last rows", Uint8Array.from([...whole.slice(0, -64), ...whole.slice(-8)]), 3],
    ["of noise", noise, 3],
    ["of noise with an end", Uint8Array.from([...noise, ...whole.slice(-8)]), 3],
    ["empty", new Uint8Array(), 3],
    ["with a row less than promised", whole, 4],
    ["with a column the table has not", rowsStream({ weather: "varchar" }, [{ weather: "wet" }]), 1],
    ["with words where numbers belong", rowsStream({ grade: "varchar" }, [{ grade: "bad" }]), 1],
  ])("%s is refused whole, and the next stream is taken", async (_name, damaged, rows) => {
    await expect(engine.load("ledger.findings", damaged, rows)).rejects.toThrow(DamagedRows);
    expect(await engine.rows(ALL)).toEqual([]);
    await engine.load("ledger.findings", stream(), 3);
    expect(await engine.rows(ALL)).toEqual(ROWS);
  });

  test("refuses what is not the name of a table", async () => {
    await expect(engine.load("findings; drop table visits", stream(), 3)).rejects.toThrow(RangeError);
    await expect(engine.load("ledger.findings", stream(), 3, { "a, b": 1 })).rejects.toThrow(RangeError);
  });
});

test("a stream whose last column is 25 to 32 yeses, and so ends as a closed one does, comes in again", async () => {
  for (const n of [24, 25, 32, 33]) {
    const out = await engine.stream(`select i >= 0 as routine from range(${n}) r(i) order by i`);
    await engine.load("ledger.findings", out.stream, n, { source_file: `${n}` });
  }
  expect(await engine.rows("select source_file, count(*) as n from ledger.findings where routine group by source_file order by n")).toEqual([24, 25, 32, 33].map((n) => ({ source_file: `${n}`, n })));
});

test("rows given out as a stream come in again as they were", async () => {
  await engine.load("ledger.findings", stream(), 3);
  const out = await engine.stream("select ticket_no, grade, note, minutes, routine from ledger.findings order by rowid");
  expect(out.rows).toBe(3);
  await engine.run(["delete from ledger.findings"]);
  await engine.load("ledger.findings", out.stream, out.rows);
  expect(await engine.rows(ALL)).toEqual(ROWS);
  expect((await engine.stream("select 1 as a where false")).rows).toBe(0);
});

describe("scripts and transactions", () => {
  test("a script that fails in its last statement has done nothing", async () => {
    await expect(engine.run(["insert into ledger.findings (ticket_no) values ('T1')", "insert into nowhere values (1)"])).rejects.toThrow(/nowhere/);
    expect(await engine.rows(ALL)).toEqual([]);
  });

  test("a transaction that rejects has done nothing, its tables included", async () => {
    await expect(engine.transaction(async (inside) => {
      await inside.run(["create table passing (n integer)"]);
      await inside.load("ledger.findings", stream(), 3);
      expect(await inside.rows("select count(*) as n from ledger.findings")).toEqual([{ n: 3 }]);
      throw new Error("no");
    })).rejects.toThrow("no");
    expect(await engine.rows(ALL)).toEqual([]);
    await expect(engine.rows("select * from passing")).rejects.toThrow(/does not exist/);
  });

  test("questions from outside wait for a transaction and see all of it", async () => {
    let count: Promise<unknown> | undefined;
    await engine.transaction(async (inside) => {
      await inside.load("ledger.findings", stream(), 3);
      count = engine.rows("select count(*) as n from ledger.findings");
      await inside.load("ledger.findings", stream(), 3);
    });
    expect(await count).toEqual([{ n: 6 }]);
  });

  test("calls inside are done in turn, a transaction inside is the same one, and none is taken after its end", async () => {
    const insides: Engine[] = [];
    await engine.transaction(async (inside) => {
      insides.push(inside);
      await Promise.all([inside.load("ledger.findings", stream(), 3), inside.transaction((same) => same.load("ledger.findings", stream(), 3))]);
      await expect(inside.close()).rejects.toThrow(RangeError);
    });
    expect(await engine.rows("select count(*) as n from ledger.findings")).toEqual([{ n: 6 }]);
    await expect(insides[0]?.rows("select 1")).rejects.toThrow(/needs its work to be awaited/);
  });

  test("a damaged stream takes the whole transaction back, and the connection is good again", async () => {
    await expect(engine.transaction(async (inside) => {
      await inside.load("ledger.findings", stream(), 3);
      await inside.load("ledger.findings", rowsStream({ grade: "varchar" }, [{ grade: "bad" }]), 1);
    })).rejects.toThrow(DamagedRows);
    await engine.load("ledger.findings", stream(), 3);
    expect(await engine.rows(ALL)).toEqual(ROWS);
  });
});
