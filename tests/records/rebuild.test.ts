import { beforeEach, describe, expect, test } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";
import type { Ledger, NewBatch } from "../../src/records/ledger/ledger.ts";
import { MemoryShelf, openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { rebuild } from "../../src/records/rebuild.ts";
import { openEngine } from "../db/open.ts";

const TICKET = { ticket_no: "varchar", received_on: "date", model: "varchar", labour_min: "double", source_line: "integer" } as const;
const FINDING = { ticket_no: "varchar", position: "varchar", grade: "integer" } as const;
const COUNTS = "select (select count(*) from ledger.tickets) as tickets, (select count(*) from visits) as visits, (select count(*) from inspections where failed) as failed";

/** Tickets of these names with a grade-2 finding each, in one import. */
function batch(...names: string[]): NewBatch {
  const tickets = names.map((ticket_no, at) => ({ ticket_no, received_on: "2026-03-14", model: "M", labour_min: names.length, source_line: at + 2 }));
  const findings = names.map((ticket_no) => ({ ticket_no, position: "roller", grade: 2 }));
  return {
    imported_at: "2026-03-14T08:00:00Z", origin: "files", files: [], rejects: [],
    payloads: [
      { table: "tickets", rows: names.length, stream: rowsStream(TICKET, tickets) },
      { table: "findings", rows: names.length, stream: rowsStream(FINDING, findings) },
    ],
  };
}

let engine: Engine, ledger: Ledger, shelf: MemoryShelf;
beforeEach(async () => {
  engine = await openEngine();
  shelf = new MemoryShelf();
  ledger = openMemoryLedger(shelf);
});

describe("filling the engine from the ledger", () => {
  test("takes every row under its import's number, derives, tells how far it is, and does the same when repeated", async () => {
    await ledger.append(batch("T1", "T2"));
    await ledger.append(batch("T2"));
    const told: string[] = [];
    const once = async () => {
      const done = await rebuild(engine, ledger, { report: ({ done: rows, total }) => told.push(`${rows}/${total}`) });
      expect([done.batches.length, done.damaged, done.rows]).toEqual([2, [], 6]);
    };
    await once();
    await once();
    expect(told.slice(0, 3)).toEqual(["0/6", "4/6", "6/6"]);
    expect(await engine.rows("select ticket_no, import_no from ledger.tickets order by import_no, ticket_no")).toEqual([
      { ticket_no: "T1", import_no: 1 }, { ticket_no: "T2", import_no: 1 }, { ticket_no: "T2", import_no: 2 },
    ]);
    expect(await engine.rows("select ticket_no, labour_min from visits order by ticket_no")).toEqual([{ ticket_no: "T1", labour_min: 2 }, { ticket_no: "T2", labour_min: 1 }]);
  });

  test("of an empty ledger leaves empty tables", async () => {
    await rebuild(engine, ledger);
    expect(await engine.rows(COUNTS)).toEqual([{ tickets: 0, visits: 0, failed: 0 }]);
  });

  test("follows the shop's own failure grade", async () => {
    await ledger.append(batch("T1"));
    await rebuild(engine, ledger);
    expect(await engine.rows(COUNTS)).toEqual([{ tickets: 1, visits: 1, failed: 0 }]);
    await ledger.keepSetting("failure_grade", "2");
    await rebuild(engine, ledger);
    expect(await engine.rows(COUNTS)).toEqual([{ tickets: 1, visits: 1, failed: 1 }]);
  });
});

describe("an import that cannot be read back", () => {
  test("is left out whole and told, and the others come in", async () => {
    await ledger.append(batch("T1"));
    const bad = await ledger.append(batch("T2"));
    await ledger.append(batch("T3"));
    const stored = shelf.kept[1]?.contents.get("findings") as Uint8Array;
    stored[30] = (stored[30] ?? 0) ^ 4;
    const done = await rebuild(engine, ledger);
    expect(done.damaged).toEqual([{ batch: bad, reason: expect.stringMatching(/^Import 2 can no longer be read: its findings have changed/) }]);
    expect(done.batches.map(({ import_no }) => import_no)).toEqual([1, 3]);
    expect((await engine.columns("select ticket_no from ledger.tickets order by ticket_no")).ticket_no).toEqual(["T1", "T3"]);
  });

  test("because its rows are none, though the checksum is right, is left out too", async () => {
    const good = batch("T1"), [tickets, findings] = good.payloads;
    if (!tickets || !findings) throw new Error("no payload");
    const cut = { ...findings, stream: findings.stream.slice(0, -100) };
    const strange = { ...findings, stream: rowsStream({ weather: "varchar" }, [{ weather: "wet" }]) };
    await ledger.append({ ...good, payloads: [tickets, cut] });
    await ledger.append({ ...batch("T2"), payloads: [{ ...tickets, rows: 5 }] });
    await ledger.append(batch("T3"));
    await ledger.append({ ...good, payloads: [tickets, strange] });
    const done = await rebuild(engine, ledger);
    expect(done.damaged.map(({ reason }) => reason.split(":")[0])).toEqual([1, 2, 4].map((number) => `Import ${number} can no longer be read`));
    expect((await engine.columns("select ticket_no from ledger.tickets")).ticket_no).toEqual(["T3"]);
  });
});

describe("a rebuild that does not end", () => {
  test("because it was cancelled leaves the tables as they were", async () => {
    await ledger.append(batch("T1"));
    await rebuild(engine, ledger);
    await ledger.append(batch("T2"));
    const cancel = new AbortController();
    await expect(rebuild(engine, ledger, { report: ({ done }) => done > 0 && cancel.abort("enough"), signal: cancel.signal })).rejects.toBe("enough");
    expect(await engine.rows(COUNTS)).toEqual([{ tickets: 1, visits: 1, failed: 0 }]);
  });

  test("because the list of imports cannot be read passes the reason on and leaves the tables as they were", async () => {
    await ledger.append(batch("T1"));
    await rebuild(engine, ledger);
    const broken = { ...ledger, batches: () => Promise.reject(new Error("no list")) };
    await expect(rebuild(engine, broken)).rejects.toThrow("no list");
    expect(await engine.rows(COUNTS)).toEqual([{ tickets: 1, visits: 1, failed: 0 }]);
  });

  test("is not seen half done: a question asked meanwhile waits", async () => {
    await ledger.append(batch("T1"));
    await ledger.append(batch("T2"));
    const [, seen] = await Promise.all([
      rebuild(engine, ledger),
      (async () => { await new Promise((resolve) => setTimeout(resolve)); return engine.rows(COUNTS); })(),
    ]);
    expect([[{ tickets: 0, visits: 0, failed: 0 }], [{ tickets: 2, visits: 2, failed: 0 }]]).toContainEqual(seen);
  });
});
