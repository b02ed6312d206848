import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { ImportKept } from "../../src/records/import-kept.ts";
import { emptied, counts, openBench, reasons, tallyOf } from "./bench.ts";
import type { Bench } from "./bench.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const TICKETS = "ticket_no,received_on,model,labour_min\nR-1,2026-03-01,Whinbeck 40,55\nR-2,2026-03-02,Whinbeck 40,40\n";
const FINDINGS = "ticket_no,position,action,qty\nR-1,ar_clutch,replaced,1\nR-1,ar_clutch,replaced,1\nR-2,rotor,cleaned,\n";

describe("an import", () => {
  test("takes findings whose tickets come in with it, in whatever order the files are given", async () => {
    const one = await bench.bringIn({ "findings.csv": FINDINGS, "tickets.csv": TICKETS });
    const before = await bench.records();
    await emptied(bench);
    await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    expect([counts(one, "findings.csv"), counts(one, "tickets.csv")]).toEqual([[3, 3, 0, 0, 0], [2, 2, 0, 0, 0]]);
    expect(await bench.records()).toEqual(before);
  });
  test("is written once in the ledger and stands in the engine's tables and in what is derived", async () => {
    const { kept, import_no, id } = await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    const batches = await bench.ledger.batches();
    expect(batches.map((batch) => [batch.id, batch.tables.map(({ table, rows }) => [table, rows])])).toEqual([[id, [["tickets", 2], ["findings", 3]]]]);
    expect(kept).toBe(true);
    expect(await bench.engine.rows("select distinct import_no from ledger.findings")).toEqual([{ import_no }]);
    expect(await bench.engine.rows("select count(*) as n from visits")).toEqual([{ n: 2 }]);
    expect(await bench.engine.rows("select part_no, qty, action from demand")).toHaveLength(2);
  });
  test("tells of each row which file and line it came from", async () => {
    await bench.bringIn({ "a/tickets.csv": TICKETS });
    expect(await bench.engine.rows("select source_file, source_line from ledger.tickets order by source_line")).toEqual([
      { source_file: "a/tickets.csv", source_line: 2 }, { source_file: "a/tickets.csv", source_line: 3 },
    ]);
  });
  test("leaves no waiting rows behind", async () => {
    await bench.bringIn({ "tickets.csv": TICKETS });
    expect(await bench.engine.rows("select schema_name from information_schema.schemata where schema_name = 'staging'")).toEqual([]);
  });
});

describe("bringing files in again", () => {
  test("adds nothing and writes nothing, and still tells what was read", async () => {
    await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    const before = await bench.records();
    const again = await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    expect([again.kept, again.id, again.import_no]).toEqual([false, "", 0]);
    expect([counts(again, "tickets.csv"), counts(again, "findings.csv")]).toEqual([[2, 0, 2, 0, 0], [3, 0, 3, 0, 0]]);
    expect(await bench.records()).toEqual(before);
    expect(await bench.ledger.batches()).toHaveLength(1);
  });
  test("under another name, with other columns' order, spelling and encoding, adds only what is new", async () => {
    await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    const longer = "Model;Mins;Job No;Date In\r\nWhinbeck 40;40.0;R-2;02 March 2026\r\nWhinbeck 40;55;R-1;2026-03-01\r\nDovekin 25;30;R-3;2026-03-03\r\n";
    expect(counts(await bench.bringIn({ "later.csv": longer }), "later.csv")).toEqual([3, 1, 2, 0, 0]);
  });
  test("keeps two equal findings of one file as two, and the third of a longer file as new", async () => {
    await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    const more = `${FINDINGS}R-1,ar_clutch,replaced,1\n`;
    expect(counts(await bench.bringIn({ "more.csv": more }), "more.csv")).toEqual([4, 1, 3, 0, 0]);
    expect((await bench.records())["findings"]).toHaveLength(4);
  });
  test("counts a row that two files of one import share once", async () => {
    const both = await bench.bringIn({ "b.csv": TICKETS, "a.csv": TICKETS, "g.csv": FINDINGS, "f.csv": FINDINGS });
    expect([counts(both, "a.csv"), counts(both, "b.csv")]).toEqual([[2, 2, 0, 0, 0], [2, 0, 2, 0, 0]]);
    expect([counts(both, "f.csv"), counts(both, "g.csv")]).toEqual([[3, 3, 0, 0, 0], [3, 0, 3, 0, 0]]);
  });
  test("does not take a guess for other content", async () => {
    const bare = "ticket_no,received_on,model,complaint\nR-1,2026-03-01,A,grinding\n";
    await bench.bringIn({ "t.csv": bare });
    await bench.engine.run(["update ledger.tickets set came_in = 'planned'"]);
    expect(counts(await bench.bringIn({ "t.csv": bare }), "t.csv")).toEqual([1, 0, 1, 0, 0]);
  });
});

describe("the list of rows to fix", () => {
  test("holds findings whose ticket is missing, and lets them in once it is there", async () => {
    const lonely = await bench.bringIn({ "findings.csv": FINDINGS });
    expect(reasons(lonely)).toEqual(["findings.csv 2: ticket R-1 is not in the records; bring its ticket in, or put the number right", "findings.csv 3: ticket R-1 is not in the records; bring its ticket in, or put the number right", "findings.csv 4: ticket R-2 is not in the records; bring its ticket in, or put the number right"]);
    const then = await bench.bringIn({ "tickets.csv": TICKETS, "findings.csv": FINDINGS });
    expect(counts(then, "findings.csv")).toEqual([3, 3, 0, 0, 0]);
    expect(await bench.ledger.rejects()).toEqual([]);
  });
  test("does not double when a file is brought in again, and shrinks when its rows are put right", async () => {
    const bad = `${TICKETS}R-3,soon,A,\nR-4,2026-03-04,A,lots\n`;
    await bench.bringIn({ "tickets.csv": bad });
    const again = await bench.bringIn({ "tickets.csv": bad });
    expect([again.kept, (await bench.ledger.rejects()).length]).toEqual([false, 2]);
    await bench.bringIn({ "tickets.csv": bad.replace("soon", "2026-03-03") });
    expect(reasons({ rejects: [...await bench.ledger.rejects()] })).toEqual(["tickets.csv 5: “lots” is not a number; write figures alone, such as 12.5"]);
    await bench.bringIn({ "tickets.csv": `${TICKETS}R-3,2026-03-03,A,\n` });
    expect(await bench.ledger.rejects()).toEqual([]);
    expect((await bench.records())["tickets"]).toHaveLength(3);
  });
  test("keeps what other files left on it", async () => {
    await bench.bringIn({ "a.csv": "ticket_no,received_on,model\nR-1,soon,A\n" });
    await bench.bringIn({ "b.csv": "ticket_no,received_on,model\nR-2,late,A\n" });
    expect((await bench.ledger.rejects()).map(({ file }) => file)).toEqual(["a.csv", "b.csv"]);
  });
  test("keeps what a file left on it when that file cannot be read any more", async () => {
    await bench.bringIn({ "a.csv": "ticket_no,received_on,model\nR-1,soon,A\n" });
    await bench.bringIn({ "a.csv": "%PDF-1.7", "tickets.csv": TICKETS.replaceAll("R-", "S-") });
    expect((await bench.ledger.rejects()).map(({ file }) => file)).toEqual(["a.csv"]);
  });
});

describe("an order may name one part in several lines", () => {
  const HEAD = "order_no,supplier,part_no,qty,ordered_on,arrived_on\n";
  const OPEN = `${HEAD}P-1,Ringmoss,ORG-014,50,2026-03-01,\nP-1,Ringmoss,ORG-014,50,2026-03-01,\nP-1,Ringmoss,ORG-014,25,2026-03-01,\n`;
  const lines = () => bench.engine.rows("select qty, arrived_on from orders order by qty, arrived_on nulls last");
  test("and all of them are kept, once, whatever is brought in again", async () => {
    expect(counts(await bench.bringIn({ "orders.csv": OPEN }), "orders.csv")).toEqual([3, 3, 0, 0, 0]);
    expect(counts(await bench.bringIn({ "again.csv": OPEN }), "again.csv")).toEqual([3, 0, 3, 0, 0]);
    expect(await lines()).toEqual([{ qty: 25, arrived_on: null }, { qty: 50, arrived_on: null }, { qty: 50, arrived_on: null }]);
  });
  test("and the line that has arrived since takes the place of itself alone", async () => {
    await bench.bringIn({ "orders.csv": OPEN });
    const arrived = OPEN.replace("50,2026-03-01,\nP-1,Ringmoss,ORG-014,25,2026-03-01,", "50,2026-03-01,2026-03-09\nP-1,Ringmoss,ORG-014,25,2026-03-01,");
    expect(counts(await bench.bringIn({ "orders.csv": arrived }), "orders.csv")).toEqual([3, 1, 2, 0, 0]);
    expect(await lines()).toEqual([{ qty: 25, arrived_on: null }, { qty: 50, arrived_on: "2026-03-09" }, { qty: 50, arrived_on: null }]);
  });
});

describe("catalogues keep the newest row of a key", () => {
  const parts = (on_hand: number) => `part_no,name,on_hand\nP-1,clutch,${on_hand}\n`;
  const onHand = async () => (await bench.engine.rows<{ on_hand: number }>("select on_hand from parts")).map(({ on_hand }) => on_hand);
  test("over several imports, also back to an older value", async () => {
    for (const value of [5, 3, 5]) {
      expect(counts(await bench.bringIn({ "parts.csv": parts(value) }), "parts.csv")).toEqual([1, 1, 0, 0, 0]);
      expect(await onHand()).toEqual([value]);
    }
    expect(counts(await bench.bringIn({ "parts.csv": parts(5) }), "parts.csv")).toEqual([1, 0, 1, 0, 0]);
  });
  test("inside one file the last row counts, the others are dropped and told, and a second import changes nothing", async () => {
    const twice = `${parts(5)}P-1,clutch,3\nP-1,clutch,3\n`;
    const done = await bench.bringIn({ "parts.csv": twice });
    expect(counts(done, "parts.csv")).toEqual([3, 1, 1, 0, 1]);
    expect(tallyOf(done, "parts.csv").remarks).toContain("1 row: dropped, because a later row says something else of the same thing.");
    expect(await onHand()).toEqual([3]);
    expect((await bench.bringIn({ "parts.csv": twice })).kept).toBe(false);
  });
  test("keys with empty cells are keys", async () => {
    const fits = "model,position,part_no,qty\nA,rotor,,1\nA,rotor,P,1\n";
    expect(counts(await bench.bringIn({ "fits.csv": fits }), "fits.csv")).toEqual([2, 2, 0, 0, 0]);
    expect(counts(await bench.bringIn({ "fits.csv": fits.replace("rotor,,1", "rotor,,2") }), "fits.csv")).toEqual([2, 1, 1, 0, 0]);
    expect(await bench.engine.rows("select qty from fits where part_no is null")).toEqual([{ qty: 2 }]);
  });
});

describe("whole or not at all", () => {
  test("a cancel while reading leaves everything as it was and rejects with its reason", async () => {
    const stop = new AbortController(), why = new Error("enough");
    const report = () => stop.abort(why);
    await expect(bench.bringIn({ "tickets.csv": TICKETS }, { signal: stop.signal, report })).rejects.toBe(why);
    expect([(await bench.ledger.batches()).length, (await bench.records())["tickets"]]).toEqual([0, []]);
    expect((await bench.bringIn({ "tickets.csv": TICKETS })).kept).toBe(true);
  });
  test("a cancel at the last step before writing does too", async () => {
    const stop = new AbortController();
    const report = ({ step }: { step: string }) => { if (step === "Comparing with your records") stop.abort(); };
    await expect(bench.bringIn({ "tickets.csv": TICKETS }, { signal: stop.signal, report })).rejects.toThrow("aborted");
    expect([(await bench.ledger.batches()).length, (await bench.records())["tickets"]]).toEqual([0, []]);
  });
  test("a ledger that cannot write leaves the tables as they were", async () => {
    const full = { ...bench.ledger, append: () => Promise.reject(new Error("full")) };
    await expect(bench.bringIn({ "tickets.csv": TICKETS }, { ledger: full })).rejects.toThrow("full");
    expect((await bench.records())["tickets"]).toEqual([]);
  });
  test("an engine that fails after the writing says that the import is kept", async () => {
    const { engine, ledger } = bench;
    const failing = { ...engine, transaction: () => Promise.reject(new Error("gone")) };
    await expect(bench.bringIn({ "tickets.csv": TICKETS }, { engine: failing })).rejects.toBeInstanceOf(ImportKept);
    expect(await ledger.batches()).toHaveLength(1);
  });
  test("a file that breaks off leaves none of its rows, and the others come in", async () => {
    const rows = Array.from({ length: 30_000 }, (_, at) => `T-${at},2026-01-01,A,1`).join("\n");
    const broken = `ticket_no,received_on,model,labour_min\n${rows}\nT-x,2026-01-01,"A,1\n`;
    const done = await bench.bringIn({ "broken.csv": broken, "tickets.csv": TICKETS });
    expect(tallyOf(done, "broken.csv")).toMatchObject({ rows_read: 0, rows_new: 0, unreadable: expect.stringContaining("opened in line 30002") as string });
    expect((await bench.records())["tickets"]).toHaveLength(2);
  });
  test("a second import into the same engine is refused while one is under way", async () => {
    const first = bench.bringIn({ "tickets.csv": TICKETS });
    await expect(bench.bringIn({ "findings.csv": FINDINGS })).rejects.toThrow(RangeError);
    expect((await first).kept).toBe(true);
  });
});

describe("mapping.json", () => {
  const sheet = "ticket,date_in,model,part\n1,2026-01-02,A,ring_North\n";
  test("is applied to the files of its folder only", async () => {
    const mapping = JSON.stringify({ values: { position: { ring_North: "rotor" } } });
    const done = await bench.bringIn({ "x/data.csv": sheet, "x/mapping.json": mapping, "y/data.csv": sheet });
    expect([counts(done, "x/data.csv"), counts(done, "y/data.csv")]).toEqual([[1, 1, 0, 0, 0], [1, 0, 0, 1, 0]]);
    expect(done.files.map(({ file }) => file)).toEqual(["x/data.csv", "y/data.csv"]);
  });
  test("that is wrong keeps the files of its folder out and says why", async () => {
    const done = await bench.bringIn({ "data.csv": sheet, "mapping.json": "{}}" });
    expect(tallyOf(done, "data.csv").unreadable).toBe("mapping.json is not valid JSON.");
  });
});

test("importFiles needs today as a date", async () => {
  await expect(bench.bringIn({}, { today: "1 June" })).resolves.toMatchObject({ kept: false });
  await expect(bench.bringIn({ "tickets.csv": TICKETS }, { today: "1 June" })).rejects.toThrow("lastDay: needs today as YYYY-MM-DD, got 1 June");
});
