import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { EngineGone, QueryFailed } from "../../src/db/errors.ts";
import { isMemory, openNativeEngine } from "../../src/db/open-native.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";

let engine: Engine;
beforeAll(async () => {
  engine = await openNativeEngine() as Engine;
});
afterAll(() => engine.close());

const ECHO = "-- Says it again.\n-- Parameters: said varchar\nselect getvariable('said') as said";

describe("the native engine", () => {
  test("is of the version that runs in the browser", async () => {
    const browser = await openNodeEngine(), version = "select version() as version";
    expect(await engine.rows(version)).toEqual(await browser.rows(version));
    await browser.close();
  });

  test("gives every kind of value as the browser's engine does, inside lists too", async () => {
    expect(await engine.rows(`select date '2026-03-14' as day, 9007199254740991::bigint as big, -5::hugeint as huge, -1.25::decimal(9, 2) as money,
      0.5::float as half, 7::utinyint as small, true as yes, null as nothing, null::date as no_day, sum(x) as total,
      [1, null, 3]::bigint[] as bigs, [1.25, -0.5]::decimal(5, 2)[] as moneys, ['x', null] as texts, [date '2026-03-14'] as days,
      [[1], [2, 3]] as lists, []::integer[] as empty, null::integer[] as none from range(4) t(x)`)).toEqual([{
      day: "2026-03-14", big: 9007199254740991, huge: -5, money: -1.25, half: 0.5, small: 7, yes: true, nothing: null, no_day: null, total: 6,
      bigs: [1, null, 3], moneys: [1.25, -0.5], texts: ["x", null], days: ["2026-03-14"], lists: [[1], [2, 3]], empty: [], none: null,
    }]);
  });

  test.each(["timestamp '2026-03-14 10:00:00'", "'a'::enum('a')", "{'a': 1}", "interval 1 day", "time '10:00'"])(
    "refuses a type with no plain value by the column's name: %s", async (value) => {
      await expect(engine.rows(`select ${value} as odd_one`)).rejects.toThrow(/^columns: needs odd_one as text, number/);
    });

  test.each(["'; drop table findings; --", "Fischöl 🎣 ﷽", "", "null", "%_"])("never reads a value as SQL: %j", async (said) => {
    expect(await engine.rows(ECHO, { said })).toEqual([{ said }]);
  });

  test("has every row once and in order, over many pieces, and its columns also without rows", async () => {
    expect((await engine.columns("select i as n from range(70000) t(i) order by i")).n).toEqual(Array.from({ length: 70_000 }, (_, i) => i));
    expect(await engine.columns("select 1 as a, 'x' as b where false")).toEqual({ a: [], b: [] });
  });

  test("names the statement that failed, in words, and answers the next", async () => {
    await expect(engine.rows("selec 1")).rejects.toThrow(/^selec 1: syntax error at or near "selec"$/);
    await expect(engine.rows("-- What nobody wrote down.\nselect * from nowhere")).rejects.toThrow(/^What nobody wrote down\.: Table with name nowhere does not exist!/);
    expect(await engine.rows("select 1 as one")).toEqual([{ one: 1 }]);
  });

  test("ends a cancelled question that would take hours, takes its script back, and answers the next", async () => {
    const cancel = new AbortController();
    setTimeout(() => cancel.abort("enough"), 50);
    const script = "create table half_done as select 1 as n", endless = "-- An endless count.\ncreate table never as select count(*) as n from range(1000000) a(i), range(1000000) b(j) where (i * j) % 7 = 3";
    await expect(engine.run([script, endless], {}, cancel.signal)).rejects.toBe("enough");
    await expect(engine.rows("select * from half_done")).rejects.toThrow(/does not exist/);
  });

  test.each([
    "select * from read_csv('/etc/passwd')", "select * from 'https://example.org/a.csv'", "attach 'x.db' as x", "copy (select 1) to 'out.csv'",
    "set enable_external_access = true", "set memory_limit = '9GB'",
  ])("reaches nothing outside: %s", async (sql) => {
    await expect(engine.rows(sql)).rejects.toThrow(QueryFailed);
  });

  test("takes a stream in by the names of its columns and gives it out again, every type and nothing as null", async () => {
    const types = { word: "varchar", day: "date", n: "integer", amount: "double", yes: "boolean", note: "varchar" } as const;
    const rows = Array.from({ length: 5000 }, (_, i) => (i % 3 === 0 ? { word: null, day: null, n: null, amount: null, yes: null, note: null }
      : { word: `w${i % 7}`, day: "2026-03-14", n: i, amount: i / 8, yes: i % 2 === 0, note: null }));
    await engine.run(["create table taken (note varchar, yes boolean, amount double, n integer, day date, word varchar, import_no integer, lacking integer)"]);
    await engine.load("taken", rowsStream(types, rows), 5000, { import_no: 4 });
    const { stream, rows: n } = await engine.stream("select word, day, n, amount, yes, note from taken order by rowid");
    await engine.run(["delete from taken"]);
    await engine.load("taken", stream, n);
    expect(await engine.rows("select word, day, n, amount, yes, note from taken order by rowid")).toEqual(rows);
  });

  test("refuses a stream that does not hold the rows it should, and columns that the table has not", async () => {
    const stream = rowsStream({ odd: "integer" }, [{ odd: 1 }]);
    await expect(engine.load("taken", stream, 2)).rejects.toThrow("2 rows were stored for taken, 1 came back.");
    await expect(engine.load("taken", stream, 1)).rejects.toThrow(/do not fit taken/);
    await expect(engine.load("taken", rowsStream({ n: "integer" }, [{ n: 7 }]), 1)).resolves.toBeUndefined();
  });

  test("once closed says so to whoever asks", async () => {
    const other = await openNativeEngine() as Engine;
    await other.close();
    await expect(other.rows("select 1 as one")).rejects.toThrow(EngineGone);
  });

  test("is told threads and memory it can read, or refuses", async () => {
    expect(["4GB", "1.5GB", "800MB", "4", "4 gigs", "0GB", "'; drop"].map(isMemory)).toEqual([true, true, true, false, false, false, false]);
    await expect(openNativeEngine({ threads: 0 })).rejects.toThrow(RangeError);
    await expect(openNativeEngine({ memory: "much" })).rejects.toThrow(RangeError);
  });
});
