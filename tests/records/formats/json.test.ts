import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellsOf, read } from "./opening.ts";

const json = (value: unknown) => JSON.stringify(value);
const tables = async (value: unknown) => (await read(typeof value === "string" ? value : json(value))).sheets.map(({ name, cells }) => ({ name, cells }));

describe("a JSON list of records is a sheet", () => {
  test("its headings are all names of any record, in their order; numbers and yes/no are typed", async () => {
    const { kind, sheets } = await read(json([{ ticket_no: "R-1", labour_min: 55.5, done: true }, { ticket_no: "R-2", model: "Withy 5", done: null }]));
    expect(kind).toBe("json");
    expect(sheets).toEqual([{ name: null, cells: [["ticket_no", "labour_min", "done", "model"], ["R-1", "55.5", "yes", ""], ["R-2", "", "", "Withy 5"]], lines: [0, 1, 2], typed: { 1: [1, 2] }, remarks: [] }]);
  });
  test("objects within a record give headings with a point, single values in a list are joined", async () => {
    expect(await cellsOf(json([{ reel: { model: "Withy 5", maker: { name: "Quillane" } }, parts: ["bail", null, 3] }]))).toEqual([["reel.model", "reel.maker.name", "parts"], ["Withy 5", "Quillane", "bail; 3"]]);
  });
  test("records within a record are a sheet of their own, with the number of the one they lie in", async () => {
    const tickets = [{ ticket_no: "R-1", model: "Withy 5", findings: [{ position: "bail_arm", action: "replaced" }, { position: "rotor", no: 7 }] }, { ticket_no: "R-2", model: "Withy 5" }];
    expect(await tables({ exported: "2026-03-01", tickets })).toEqual([
      { name: "tickets", cells: [["ticket_no", "model"], ["R-1", "Withy 5"], ["R-2", "Withy 5"]] },
      { name: "tickets.findings", cells: [["ticket_no", "position", "action", "no"], ["R-1", "bail_arm", "replaced", ""], ["R-1", "rotor", "", "7"]] },
    ]);
    expect((await read(json({ exported: "2026-03-01", tickets }))).sheets[0]?.remarks).toEqual(["Left out, because it is no list of records: exported."]);
  });
  test("a name that both have is told apart, and numbers are carried down two levels", async () => {
    const value = [{ id: 1, name: "a", jobs: [{ id: 10, parts: [{ id: 100, sku: "x" }] }] }, { id: 2, name: "a", jobs: [{ id: 11, parts: [{ id: 101, sku: "x" }, { id: 102, sku: "y" }] }] }];
    expect(await tables(value)).toEqual([
      { name: null, cells: [["id", "name"], ["1", "a"], ["2", "a"]] },
      { name: "jobs", cells: [["record.id", "id"], ["1", "10"], ["2", "11"]] },
      { name: "jobs.parts", cells: [["record.id", "jobs.id", "id", "sku"], ["1", "10", "100", "x"], ["2", "11", "101", "x"], ["2", "11", "102", "y"]] },
    ]);
  });
  test("records that nothing tells apart carry their place", async () => {
    const value = [{ model: "a", findings: [{ position: "bail_arm" }] }, { model: "a", findings: [{ position: "rotor" }] }];
    expect((await tables(value))[1]).toEqual({ name: "findings", cells: [["record", "position"], ["1", "bail_arm"], ["2", "rotor"]] });
  });
  test("several lists, lists deep in objects, and objects under keys", async () => {
    expect((await tables({ data: { tickets: [{ a: 1 }], models: [{ b: 2 }] } })).map(({ name }) => name)).toEqual(["data.tickets", "data.models"]);
    expect(await tables({ "R-1": { model: "a" }, "R-2": { model: "b" } })).toEqual([{ name: null, cells: [["key", "model"], ["R-1", "a"], ["R-2", "b"]] }]);
  });
  test("columns under their names, rows without names, a single record", async () => {
    expect(await tables({ ticket_no: ["R-1", "R-2"], min: [5, null] })).toEqual([{ name: null, cells: [["ticket_no", "min"], ["R-1", "5"], ["R-2", ""]] }]);
    expect(await tables([["ticket_no", "min"], ["R-1", 5]])).toEqual([{ name: null, cells: [["ticket_no", "min"], ["R-1", "5"]] }]);
    expect(await tables({ ticket_no: "R-1" })).toEqual([{ name: null, cells: [["ticket_no"], ["R-1"]] }]);
  });
});

describe("how JSON is written", () => {
  test("JSON lines are one list whose rows keep their lines", async () => {
    const { sheets } = await read('{"ticket_no":"R-1"}\n\n{"ticket_no":"R-2","min":5}\r\n');
    expect(sheets[0]).toMatchObject({ cells: [["ticket_no", "min"], ["R-1", ""], ["R-2", "5"]], lines: [0, 1, 3] });
  });
  test("a broken line of JSON lines is named", async () => {
    await expect(read('{"a":1}\n{"a":2}\n{"a":')).rejects.toThrow("Line 3 of this file is no whole JSON record; the file is damaged or was cut off.");
  });
  test("long numbers keep their digits, in texts too", async () => {
    expect(await cellsOf('[{"serial": 12345678901234567890, "text": "a 12345678901234567890 b"}]')).toEqual([["serial", "text"], ["12345678901234567890", "a 12345678901234567890 b"]]);
  });
  test("UTF-16 and a byte order mark are understood", async () => {
    const text = '[{"a":"£"}]', bytes = new Uint8Array(text.length * 2);
    for (let at = 0; at < text.length; at += 1) bytes[at * 2] = text.charCodeAt(at);
    expect(await cellsOf(bytes)).toEqual([["a"], ["£"]]);
    expect(await cellsOf(`\uFEFF${text}`)).toEqual([["a"], ["£"]]);
  });
  test.each([
    ["cut off", '[{"a": 1}, {"a"', "This JSON file is damaged or was cut off, so it cannot be read."],
    ["deep records", `[${'{"a":'.repeat(30)}1${"}".repeat(30)}]`, "In this JSON file records lie more than 20 deep in each other; no export of a shop does."],
    ["deep lists of records", `[${'{"a":[{"b":1},'.repeat(30)}1${"]}".repeat(30)}]`, "In this JSON file records lie more than 20 deep in each other; no export of a shop does."],
    ["very deep lists", `${"[".repeat(100_000)}${"]".repeat(100_000)}`, "In this JSON file records lie more than 20 deep in each other; no export of a shop does."],
    ["no list", "[]", "This JSON file holds no list of records."],
    ["too wide", json([Object.fromEntries(Array.from({ length: 2001 }, (_, at) => [`c${at}`, 1]))]), "The records have more than 2,000 different names in them; no shop's table is that wide."],
  ])("%s is refused in one sentence", async (_name, text, sentence) => {
    await expect(read(text)).rejects.toThrow(sentence);
  });
  test("names that programs are built on are names like any other", async () => {
    const before = Object.getOwnPropertyNames(Object.prototype).sort();
    expect(await cellsOf('[{"__proto__": "a", "constructor": "b", "toString": {"x": 1}, "hasOwnProperty": null}]')).toEqual([["__proto__", "constructor", "toString.x", "hasOwnProperty"], ["a", "b", "1", ""]]);
    expect(await cellsOf('[{"__proto__": {"polluted": "a"}}]')).toEqual([["__proto__.polluted"], ["a"]]);
    expect(await cellsOf('{"__proto__": {"a": 1}, "b": {"a": 2}}')).toEqual([["key", "a"], ["__proto__", "1"], ["b", "2"]]);
    expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(before);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

test("every single value of any records stands in a cell under its name", async () => {
  const value = fc.oneof(fc.string({ maxLength: 8 }), fc.integer(), fc.boolean(), fc.constant(null));
  await fc.assert(fc.asyncProperty(fc.array(fc.dictionary(fc.string({ minLength: 1, maxLength: 6 }), value, { minKeys: 1, maxKeys: 5 }), { minLength: 1, maxLength: 8 }), async (records) => {
    const [headings = [], ...rows] = await cellsOf(json(records));
    records.forEach((record, at) => {
      const found = Object.fromEntries(headings.flatMap((heading, place) => (rows[at]?.[place] === "" ? [] : [[`:${heading}`, rows[at]?.[place]]])));
      const expected = Object.fromEntries(Object.entries(record).flatMap(([name, one]) => (one === null || one === "" ? [] : [[`:${name}`, one === true ? "yes" : one === false ? "no" : String(one)]])));
      expect(found).toEqual(expected);
    });
  }), { numRuns: 200 });
});
