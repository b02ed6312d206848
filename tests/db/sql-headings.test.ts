import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import type { Engine, SqlValue } from "../../src/db/engine.ts";
import { statement } from "../../src/db/statement.ts";
import { openEngine } from "./open.ts";

const SRC = resolve(import.meta.dirname, "../../src");
const files = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".sql")).sort();
const read = (name: string) => readFileSync(join(SRC, name), "utf8");
/** What promises no columns changes tables and gives nothing back. */
const isScript = (name: string) => statement(read(name)).columns === null;
/** The waiting room of an import has its tables only while one goes on. */
const WAITING_ROOM = ["waiting-room", "tickets", "findings", "models", "parts", "fits", "suppliers", "orders"]
  .map((name) => `records/settling/${name}.sql`);

/** Without comments and texts in quotes. */
const bare = (sql: string) => sql.replace(/--.*$/gm, "").replace(/'(''|[^'])*'/g, "''");

/** Any value of a type: what a statement gives does not hang on which. */
const ANY: Record<string, SqlValue> = { varchar: "x", date: "2026-03-14", integer: 1, bigint: 1, double: 1, boolean: true };

let engine: Engine;
beforeAll(async () => {
  engine = await openEngine();
  await prepareAnswers(engine);
  await followParts(engine);
  await engine.run(["-- Where many shops come together.\ncreate schema if not exists kept", read("report/shops/kept-tables.sql"), ...WAITING_ROOM.map(read)]);
});

describe.each(files)("%s", (name) => {
  const sql = read(name);

  test("opens with a sentence, is lower case and stays below 80 lines", () => {
    expect(sql).toMatch(/^-- \S.*[.?:]?\n/);
    expect(statement(sql).sentence).toMatch(/[.?)]$/);
    expect(bare(sql).replace(/"[^"]*"/g, "")).not.toMatch(/[A-Z]/);
    expect(sql.trim().split("\n").length).toBeLessThanOrEqual(80);
  });

  if (isScript(name)) {
    test("promises no columns, so it changes tables and answers nothing", () => {
      expect(bare(sql).trim()).toMatch(/^(create|insert|update|delete|drop)\b/);
    });
  } else {
    test("is one statement with a fixed order of rows", () => {
      expect(bare(sql).trim().replace(/;$/, "")).not.toContain(";");
      expect(bare(sql)).toMatch(/\border by\b/);
    });

    test.each([["with values", false], ["with nulls", true]])("gives exactly the columns its heading promises, %s", async (_how, nulls) => {
      const { parameters, columns } = statement(sql);
      const values = Object.fromEntries([...parameters].map(([key, type]) => [key, nulls ? null : ANY[type] ?? null]));
      const described = await engine.rows<{ column_name: string; column_type: string }>(
        sql.replace(/^(?!--)/m, "describe\n"), values);
      expect(described.map(({ column_name, column_type }) => `${column_name} ${column_type.toLowerCase()}`))
        .toEqual([...(columns ?? [])].map(([column, type]) => `${column} ${type}`));
      await engine.columns(sql, values);
    });
  }
});

test("the statements are found", () => expect(files.filter((name) => !isScript(name)).length).toBeGreaterThan(10));
