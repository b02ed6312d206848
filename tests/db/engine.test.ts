import { beforeAll, describe, expect, test } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { QueryFailed } from "../../src/db/errors.ts";
import { openEngine } from "./open.ts";

/** Would take hours. */
const ENDLESS = "-- An endless count.\nselect count(*) as n from range(1000000) a(i), range(1000000) b(j) where (i * j) % 7 = 3";

let engine: Engine;
beforeAll(async () => {
  engine = await openEngine();
});

describe("what comes back", () => {
  test("is a day as YYYY-MM-DD, every number as a number, a list as an array, nothing as null", async () => {
    expect(await engine.rows(`select date '2026-03-14' as day, 9007199254740991::bigint as big, -5::hugeint as huge,
      -1.25::decimal(9, 2) as money, 0.5::float as half, 7::utinyint as small, true as yes, null as nothing, null::date as no_day,
      sum(x) as total, 'a''b' as text from range(4) t(x)`)).toEqual([{
      day: "2026-03-14", big: 9007199254740991, huge: -5, money: -1.25, half: 0.5, small: 7, yes: true, nothing: null, no_day: null,
      total: 6, text: "a'b",
    }]);
  });

  test("is right inside lists too, whatever they hold", async () => {
    expect(await engine.rows(`select [1, null, 3]::bigint[] as big, [1.25, -0.5]::decimal(5, 2)[] as money, ['x', null] as text,
      [date '2026-03-14'] as days, [[1], [2, 3]] as lists, []::integer[] as empty, null::integer[] as nothing`)).toEqual([{
      big: [1, null, 3], money: [1.25, -0.5], text: ["x", null], days: ["2026-03-14"], lists: [[1], [2, 3]], empty: [], nothing: null,
    }]);
  });

  test("has every row once and in order, over many pieces", async () => {
    const { n, odd } = await engine.columns("select i as n, if(i % 2 = 1, i::varchar, null) as odd from range(70000) t(i) order by i");
    expect(n).toEqual(Array.from({ length: 70_000 }, (_, i) => i));
    expect(odd?.slice(69_997)).toEqual(["69997", null, "69999"]);
  });

  test("has its columns also when it has no rows", async () => {
    expect(await engine.columns("select 1 as a, 'x' as b where false")).toEqual({ a: [], b: [] });
  });

  test.each(["timestamp '2026-03-14 10:00:00'", "'a'::enum('a')", "{'a': 1}", "interval 1 day", "time '10:00'"])(
    "of a type with no plain value is refused by the column's name: %s", async (value) => {
      await expect(engine.rows(`select ${value} as odd_one`)).rejects.toThrow(/^columns: needs odd_one as text, number/);
    });
});

describe("values", () => {
  const ECHO = "-- Says it again.\n-- Parameters: said varchar\nselect getvariable('said') as said";

  test.each(["'; drop table findings; --", "\\ \" ' ` $1 ? {x}", "a\u0000b", "Fischöl 🎣 ﷽", "", "null", "%_"])(
    "are never read as SQL and come back as they went in: %j", async (said) => {
      expect(await engine.rows(ECHO, { said })).toEqual([{ said }]);
    });

  test("of one question do not stay for the next", async () => {
    await engine.rows(ECHO, { said: "once" });
    await expect(engine.rows("select getvariable('said') as said")).rejects.toThrow(RangeError);
    expect(await engine.rows(ECHO, { said: null })).toEqual([{ said: null }]);
  });

  test("of fifty questions asked at once do not mix", async () => {
    const asked = Array.from({ length: 50 }, (_, at) => `question ${at}`);
    const told = await Promise.all(asked.map((said) => engine.rows(ECHO, { said })));
    expect(told).toEqual(asked.map((said) => [{ said }]));
  });

  test("keep their type: a null day is a day", async () => {
    const typed = "-- Type.\n-- Parameters: day date, n integer\nselect typeof(getvariable('day')) as day, typeof(getvariable('n')) as n";
    expect(await engine.rows(typed, { day: null, n: null })).toEqual([{ day: "DATE", n: "INTEGER" }]);
  });

  test("that are missing or strange are refused before the engine is asked", async () => {
    await expect(engine.rows(ECHO)).rejects.toThrow(new RangeError('values: "Says it again." needs a value for said, got none'));
    await expect(engine.rows(ECHO, { said: "x", other: 1 })).rejects.toThrow(RangeError);
  });
});

describe("what goes wrong", () => {
  test("names the statement, keeps its SQL and the engine's own error", async () => {
    const sql = "-- What nobody wrote down.\nselect * from nowhere";
    const error = await engine.rows(sql).catch((failed: unknown) => failed);
    expect(error).toBeInstanceOf(QueryFailed);
    expect(error).toMatchObject({ statement: "What nobody wrote down.", sql, cause: expect.any(Error) });
    expect((error as Error).message).toMatch(/^What nobody wrote down\.: Table with name nowhere does not exist!/);
  });

  test("is told in words also where the engine wraps its message twice", async () => {
    await expect(engine.rows("selec 1")).rejects.toThrow(/^selec 1: syntax error at or near "selec"$/);
  });

  test("does not stop the next question", async () => {
    const [bad, good] = await Promise.allSettled([engine.rows("select nothing"), engine.rows("select 1 as one")]);
    expect(bad.status).toBe("rejected");
    expect(good).toEqual({ status: "fulfilled", value: [{ one: 1 }] });
  });
});

describe("the engine reaches nothing outside", () => {
  test.each([
    "select * from read_csv('/etc/passwd')", "select * from 'https://example.org/a.csv'", "load json",
    "attach 'x.db' as x", "copy (select 1) to 'out.csv'", "set enable_external_access = true",
  ])("%s", async (sql) => {
    await expect(engine.rows(sql)).rejects.toThrow(QueryFailed);
  });
});

describe("a cancel", () => {
  test("ends a question that would take hours, and the next is answered", async () => {
    const cancel = new AbortController();
    const asked = engine.rows(ENDLESS, {}, cancel.signal);
    setTimeout(() => cancel.abort("enough"), 100);
    await expect(asked).rejects.toBe("enough");
    expect(await engine.rows("select 1 as one")).toEqual([{ one: 1 }]);
  });

  test("of a script takes back what its first statements did", async () => {
    const cancel = new AbortController();
    const script = "create table half_done (n bigint); insert into half_done values (1)";
    setTimeout(() => cancel.abort("enough"), 100);
    await expect(engine.run([script, `insert into half_done ${ENDLESS}`], {}, cancel.signal)).rejects.toBe("enough");
    await expect(engine.rows("select * from half_done")).rejects.toThrow(/does not exist/);
  });

  test("of a waiting question comes at once, though the one before goes on", async () => {
    const first = new AbortController(), second = new AbortController();
    const slow = engine.rows(ENDLESS, {}, first.signal), waiting = engine.rows("select 1 as one", {}, second.signal);
    second.abort("not needed");
    await expect(waiting).rejects.toBe("not needed");
    first.abort("enough");
    await expect(slow).rejects.toBe("enough");
  });

  test("given before the question is a rejection, not a question", async () => {
    await expect(engine.rows("select 1", {}, AbortSignal.abort("no"))).rejects.toBe("no");
    await expect(engine.transaction(async () => 1, AbortSignal.abort("no"))).rejects.toBe("no");
  });
});
