import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import type { Engine, Row } from "../../src/db/engine.ts";
import { statement } from "../../src/db/statement.ts";
import { fill, openShop } from "./shop.ts";

const ALL = Object.entries(import.meta.glob<string>("../../src/answers/**/*.sql", { query: "?raw", import: "default", eager: true }));
/** A view gives no rows by itself; the statements that read it are what is promised. */
const FILES = ALL.filter(([, sql]) => !/^create /m.test(sql));
const SHAPE = "-- Columns.\nselect column_name, lower(data_type) as data_type from information_schema.columns where table_name = 'probe' order by ordinal_position";
const NULLS = (sql: string): Row => Object.fromEntries([...statement(sql).parameters.keys()].map((name) => [name, null]));
/** Parameters whose null is not `all`. */
const FILLED: Row = { opening: "*", denominator: "coverage" };

let engine: Engine;
beforeAll(async () => {
  engine = await openShop();
  await fill(engine, {});
  await followParts(engine);
});
afterAll(() => engine.close());

describe("the statements of the answers", () => {
  test("are found", () => expect(FILES.length).toBeGreaterThan(10));

  test.each(FILES)("%s gives the columns its heading promises, in a fixed order", async (_file, sql) => {
    const promised = statement(sql).columns;
    const lines = sql.trim().split("\n"), body = lines.findIndex((line) => !line.startsWith("--"));
    const probe = [...lines.slice(0, body), "create or replace table probe as", ...lines.slice(body)].join("\n");
    const values = { ...NULLS(sql), ...Object.fromEntries(Object.entries(FILLED).filter(([name]) => statement(sql).parameters.has(name))) };
    await engine.run([probe], values);
    const shape = await engine.rows<{ column_name: string; data_type: string }>(SHAPE);
    expect(Object.fromEntries(shape.map((column) => [column.column_name, column.data_type]))).toEqual(Object.fromEntries(promised ?? []));
    expect(body).toBeGreaterThan(0);
    expect(lines.length).toBeLessThanOrEqual(80);
    expect(sql).toMatch(/^order by /m);
  });
});
