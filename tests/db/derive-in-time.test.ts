import { beforeEach, expect, test } from "vitest";
import { orderToday } from "../../src/answers/morning/order-today.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { deriveInTime } from "../../src/db/derive-in-time.ts";
import type { Engine } from "../../src/db/engine.ts";
import { derive, deriveFirst, deriveRest } from "../../src/db/prepare.ts";
import { conflicts } from "../../src/records/merging/conflicts.ts";
import { openEngine } from "./open.ts";
import { put } from "./put.ts";

const FAILED = "select (select count(*) from inspections where failed)::integer as failed, (select count(*) from failures)::integer as failures";
const TABLES = "select table_name from information_schema.tables where table_name in ('places', 'inspected', 'inspections', 'failures', 'visits', 'demand') order by table_name";

let engine: Engine;
beforeEach(async () => {
  engine = await openEngine();
  await put(engine, "ledger.tickets", [{ ticket_no: "T1", received_on: "2026-03-14", model: "M" }]);
  await put(engine, "ledger.findings", [{ ticket_no: "T1", position: "roller", grade: 2, action: "seen" }]);
});

const tables = async () => (await engine.rows<{ table_name: string }>(TABLES)).map(({ table_name }) => table_name);

test("deriving first makes visits and demand, and of the rest nothing stands that could be read as it was", async () => {
  await derive(engine);
  expect(await tables()).toEqual(["demand", "failures", "inspected", "inspections", "places", "visits"]);
  await deriveFirst(engine);
  expect(await tables()).toEqual(["demand", "visits"]);
  await expect(engine.rows(FAILED)).rejects.toThrow();
});

test("the rest is derived by the grade it was put off with, once", async () => {
  await deriveFirst(engine, { failure_grade: 2 });
  await deriveRest(engine);
  expect(await engine.rows(FAILED)).toEqual([{ failed: 1, failures: 1 }]);
  await engine.run(["delete from failures"]);
  await deriveRest(engine);
  expect(await engine.rows(FAILED)).toEqual([{ failed: 1, failures: 0 }]);
});

test("deriving all anew forgets what was put off, so that an older grade never comes back", async () => {
  await deriveFirst(engine, { failure_grade: 2 });
  await derive(engine, { failure_grade: 3 });
  await deriveRest(engine);
  expect(await engine.rows(FAILED)).toEqual([{ failed: 0, failures: 0 }]);
});

test("an engine that derives in time makes the rest before the first statement that reads it, and not for others", async () => {
  const in_time = deriveInTime(engine);
  await deriveFirst(in_time, { failure_grade: 2 });
  expect(await in_time.rows("select ticket_no from visits order by visit")).toEqual([{ ticket_no: "T1" }]);
  expect(await tables()).toEqual(["demand", "visits"]);
  const answers = await Promise.all([in_time.rows(FAILED), in_time.columns(FAILED), in_time.transaction((inside) => inside.rows(FAILED))]);
  expect(answers).toEqual([[{ failed: 1, failures: 1 }], { failed: [1], failures: [1] }, [{ failed: 1, failures: 1 }]]);
});

test("it does so again when the records are put together again, and after a transaction that was taken back", async () => {
  const in_time = deriveInTime(engine);
  await derive(in_time, { failure_grade: 3 });
  expect(await in_time.rows(FAILED)).toEqual([{ failed: 0, failures: 0 }]);
  await deriveFirst(in_time, { failure_grade: 2 });
  await expect(in_time.transaction(async (inside) => {
    await derive(inside);
    throw new Error("taken back");
  })).rejects.toThrow("taken back");
  expect(await in_time.rows(FAILED)).toEqual([{ failed: 1, failures: 1 }]);
});

test("a question that is called off while the rest is derived ends at once, and the next one finds it", async () => {
  const in_time = deriveInTime(engine), off = new AbortController();
  await deriveFirst(in_time, { failure_grade: 2 });
  const asked = in_time.rows(FAILED, {}, off.signal);
  off.abort("not now");
  await expect(asked).rejects.toBe("not now");
  expect(await in_time.rows(FAILED)).toEqual([{ failed: 1, failures: 1 }]);
});

test("the orders of the day, the span of the records and what waits for an answer are told without the rest", async () => {
  const in_time = deriveInTime(engine);
  await deriveFirst(in_time);
  await prepareAnswers(in_time);
  const { span, restock } = await orderToday(in_time, { as_of: "2026-03-15" });
  expect([span.tickets, restock.lines]).toEqual([1, []]);
  expect(await conflicts(in_time)).toEqual([]);
  expect(await tables()).toEqual(["demand", "visits"]);
});
