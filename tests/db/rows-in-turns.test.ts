import { afterAll, beforeAll, expect, test } from "vitest";
import { columnsOf, rowsInTurns, rowsOf } from "../../src/db/arrow-columns.ts";
import type { Engine } from "../../src/db/engine.ts";
import { packedRows } from "../../src/db/packed-rows.ts";
import { openEngine } from "./open.ts";

/** Every type that comes, with gaps, over more rows than are made at once. */
const MANY = `-- Rows of every type.
-- Columns: n integer, text varchar, maybe double, day date, big bigint, yes boolean, list integer[]
select n::integer as n, 'row ' || n as text, if(n % 3 = 0, null, n / 4)::double as maybe, date '2020-01-01' + (n % 900)::integer as day, n * 10000000000 as big, n % 2 = 0 as yes,
  if(n % 5 = 0, null, [n::integer, null, 7]) as list
from range(40000) t(n)
order by n`;

let engine: Engine;
beforeAll(async () => { engine = await openEngine(); });
afterAll(() => engine.close());

test("rows made in turns are those made at once, over every type and thousands of rows, and others have turns meanwhile", async () => {
  const stream = await packedRows(engine, MANY);
  let turns = 0;
  const ticking = setInterval(() => { turns += 1; }, 1), rows = await rowsInTurns<{ n: number }>(stream);
  clearInterval(ticking);
  expect(rows.length).toBe(40_000);
  expect(rows.map((row) => JSON.stringify(row))).toEqual(rowsOf(columnsOf(stream)).map((row) => JSON.stringify(row)));
  expect(turns).toBeGreaterThan(0);
});

test("called off while rows are made, it rejects with the signal's reason", async () => {
  const stop = new AbortController(), stream = await packedRows(engine, MANY);
  const made = rowsInTurns(stream, stop.signal);
  stop.abort(new Error("called off"));
  await expect(made).rejects.toThrow("called off");
});

test("no rows are no rows, and a type without a plain value is still refused", async () => {
  expect(await engine.rows("-- Nothing.\n-- Columns: n integer\nselect 1 as n where false order by n")).toEqual([]);
  await expect(engine.rows("-- A moment.\n-- Columns: moment timestamp\nselect timestamp '2020-01-01 10:00:00' as moment where false order by moment")).rejects.toThrow("moment as text");
});
