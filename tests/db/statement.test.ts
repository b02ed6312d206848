import { describe, expect, test } from "vitest";
import { bound, statement } from "../../src/db/statement.ts";

const SQL = `-- Which jobs took
-- longest?
-- Parameters: from_date date, reel_kind varchar
-- Columns: job varchar, mean decimal(9, 2),
--   tickets bigint
select 1 from visits where received_on >= getvariable('from_date') and reel_kind = getvariable( 'reel_kind' )`;

describe("the heading of a statement", () => {
  test("is a sentence, parameters and columns, each over as many lines as it needs", () => {
    const read = statement(SQL);
    expect(read.sentence).toBe("Which jobs took longest?");
    expect([...read.parameters]).toEqual([["from_date", "date"], ["reel_kind", "varchar"]]);
    expect([...(read.columns ?? [])]).toEqual([["job", "varchar"], ["mean", "decimal(9, 2)"], ["tickets", "bigint"]]);
  });

  test("promises no columns when it does not say so, and none at all may be written down too", () => {
    expect(statement("-- A.\nselect 1").columns).toBeNull();
    expect(statement("-- B.\n-- Parameters:\n-- Columns: a integer\nselect 1 as a").parameters.size).toBe(0);
  });

  test("of a text without one is the text itself, cut at 80 characters", () => {
    expect(statement(`select ${"1 + ".repeat(40)}1`).sentence).toHaveLength(80);
  });

  test.each([
    ["-- Q.\n-- Parameters: day\nselect getvariable('day')", /"Q\." needs a name and a type .* got "day"/],
    ["-- Q.\n-- Parameters: t timestamp\nselect getvariable('t')", /"Q\." needs varchar, date, .* for its parameter t, got timestamp/],
    ["-- Q.\n-- Parameters: a date\nselect getvariable('b'), getvariable('a')", /"Q\." needs b among its parameters/],
    ["-- Q.\n-- Parameters: a date\nselect 1", /"Q\." needs to use its parameter a/],
    ["-- Q.\nselect getvariable('b')", /"Q\." needs b among its parameters/],
  ])("that does not hold is refused with the statement's sentence: %j", (sql, message) => {
    expect(() => statement(sql)).toThrow(message);
  });
});

describe("values for a statement", () => {
  const asked = statement("-- Q.\n-- Parameters: a date, b integer, c double, d boolean, e varchar, f bigint\nselect "
    + ["a", "b", "c", "d", "e", "f"].map((name) => `getvariable('${name}')`).join(", "));
  const good = { a: "2026-03-14", b: 1, c: 0.5, d: false, e: "x", f: 2 };

  test("come back with name and type, null of any type among them", () => {
    expect(bound([asked], { ...good, e: null })).toContainEqual({ name: "e", type: "varchar", value: null });
    expect(bound([asked], good)).toHaveLength(6);
  });

  test.each([
    [{ a: "14.3.2026" }, /"Q\." needs a as date or null, got 14\.3\.2026/],
    [{ b: 1.5 }, /"Q\." needs b as integer or null, got 1\.5/],
    [{ c: Number.NaN }, /"Q\." needs c as double or null, got NaN/],
    [{ c: Number.POSITIVE_INFINITY }, /needs c as double or null, got Infinity/],
    [{ d: "no" }, /needs d as boolean or null, got no/],
    [{ e: 3 }, /needs e as varchar or null, got 3/],
    [{ g: 3 }, /"Q\." needs no value named g, got 3/],
  ])("of another kind or too many are refused by name: %j", (wrong, message) => {
    expect(() => bound([asked], { ...good, ...wrong })).toThrow(message);
  });

  test("that are missing are refused by name", () => {
    const { b, c, d, e, f } = good;
    expect(() => bound([asked], { b, c, d, e, f })).toThrow(new RangeError('values: "Q." needs a value for a, got none'));
  });

  test("of two statements with one name and two types are refused", () => {
    const other = statement("-- R.\n-- Parameters: a varchar\nselect getvariable('a')");
    expect(() => bound([asked, other], good)).toThrow(/"R\." needs a as varchar, "Q\." as date/);
  });
});
