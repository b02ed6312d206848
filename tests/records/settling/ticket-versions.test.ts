import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { conflicts as asConflicts } from "../../../src/records/merging/conflicts.ts";
import { counts, emptied, openBench, tallyOf } from "../bench.ts";
import type { Bench } from "../bench.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const HEAD = "ticket_no,received_on,finished_on,model,labour_min,outcome,note\n";
const FIRST = `${HEAD}R-1,2026-03-01,2026-03-04,Whinbeck 40,55,returned,fine\n`;
const visits = () => bench.engine.rows<{ ticket_no: string; finished_on: string | null; labour_min: number | null; note: string | null }>("select ticket_no, finished_on, labour_min, note from visits order by ticket_no");
const conflicts = () => bench.engine.rows<{ ticket_no: string }>("select ticket_no from conflicts order by ticket_no");
const findings = () => bench.engine.rows("select ticket_no, position from findings order by ticket_no, position");

describe("a ticket number that comes again with other content", () => {
  const other = FIRST.replace("55", "56");
  test("keeps both rows, counts once as the newest import says, and is a conflict", async () => {
    await bench.bringIn({ "a.csv": FIRST });
    const again = await bench.bringIn({ "b.csv": other });
    expect([counts(again, "b.csv"), again.rejects]).toEqual([[1, 1, 0, 0, 0], []]);
    expect(tallyOf(again, "b.csv").remarks).toContain("1 row: another row has the same ticket number with other content; both are kept and the ticket counts once.");
    expect((await bench.records())["tickets"]).toHaveLength(2);
    expect([await visits(), await conflicts()]).toEqual([[{ ticket_no: "R-1", finished_on: "2026-03-04", labour_min: 56, note: "fine" }], [{ ticket_no: "R-1" }]]);
  });
  test("is known when either row comes once more", async () => {
    await bench.bringIn({ "a.csv": FIRST });
    await bench.bringIn({ "b.csv": other });
    for (const text of [FIRST, other]) expect(counts(await bench.bringIn({ "c.csv": text }), "c.csv")).toEqual([1, 0, 1, 0, 0]);
  });
  test("that only fills blanks says more of the same ticket, whichever comes first", async () => {
    const sparse = `${HEAD}R-1,2026-03-01,,Whinbeck 40,55,returned,\n`;
    for (const order of [[FIRST, sparse], [sparse, FIRST]]) {
      await emptied(bench);
      for (const text of order) await bench.bringIn({ "t.csv": text });
      expect([await visits(), await conflicts()]).toEqual([[{ ticket_no: "R-1", finished_on: "2026-03-04", labour_min: 55, note: "fine" }], []]);
    }
  });
  test("keeps the fields of both where each fills the other's blanks, whichever comes first", async () => {
    const one = "ticket_no,received_on,model,maker,labour_min,serial\nR-1,2026-03-01,Whinbeck 40,Brackhelm,,S-1\n";
    const other = "ticket_no,received_on,model,finished_on,labour_min,note\nR-1,2026-03-01,Whinbeck 40,2026-03-04,55,fine\n";
    for (const order of [[one, other], [other, one]]) {
      await emptied(bench);
      for (const text of order) await bench.bringIn({ "t.csv": text });
      expect(await bench.engine.rows("select maker, serial, finished_on, labour_min, note from visits")).toEqual([{ maker: "Brackhelm", serial: "S-1", finished_on: "2026-03-04", labour_min: 55, note: "fine" }]);
      expect(await conflicts()).toEqual([]);
    }
  });
  test("is a conflict when two rows fill the same blank of a third otherwise, and all three are shown", async () => {
    const row = (water: string, note: string) => `ticket_no,received_on,model,water,note\nR-1,2026-03-01,Whinbeck 40,${water},${note}\n`;
    for (const text of [row("salt", "fine"), row("fresh", "fine"), row("", "fine")]) await bench.bringIn({ "t.csv": text });
    const [found, ...others] = await asConflicts(bench.engine);
    expect([found?.versions.map(({ counts: is_first, said }) => [is_first, said["water"]]), found?.differs, others]).toEqual([[[true, null], [false, "fresh"], [false, "salt"]], ["water"], []]);
    // Until it is settled the newer of the two fills the blank, as the newer of two rows counts.
    expect(await bench.engine.rows("select water from visits")).toEqual([{ water: "fresh" }]);
  });
  test("takes why it came in from the row that was told it, not from the one that guessed", async () => {
    const told = "ticket_no,received_on,model,came_in\nR-1,2026-03-01,Whinbeck 40,accident\n", guessed = "ticket_no,received_on,model,complaint\nR-1,2026-03-01,Whinbeck 40,full service please\n";
    await bench.bringIn({ "a.csv": told });
    await bench.bringIn({ "b.csv": guessed });
    expect(await bench.engine.rows("select came_in, came_in_guessed, complaint from tickets")).toEqual([{ came_in: "accident", came_in_guessed: false, complaint: "full service please" }]);
    expect(await conflicts()).toEqual([]);
  });
  test("that finishes an open job takes its place without a question, whichever comes first", async () => {
    const open = `${HEAD}R-1,2026-03-01,,Whinbeck 40,10,waiting,parts ordered\n`;
    for (const order of [[FIRST, open], [open, FIRST]]) {
      await emptied(bench);
      for (const text of order) await bench.bringIn({ "t.csv": text });
      expect([await visits(), await conflicts()]).toEqual([[{ ticket_no: "R-1", finished_on: "2026-03-04", labour_min: 55, note: "fine" }], []]);
    }
  });
  test("is a conflict when an open job is finished as another model", async () => {
    await bench.bringIn({ "t.csv": `${HEAD}R-1,2026-03-01,,Whinbeck 50,,waiting,\n` });
    await bench.bringIn({ "t.csv": FIRST });
    expect(await conflicts()).toEqual([{ ticket_no: "R-1" }]);
  });
  test("is undone with its import", async () => {
    await bench.bringIn({ "a.csv": FIRST });
    const before = await visits(), { id } = await bench.bringIn({ "b.csv": other });
    await bench.takeOut(id);
    expect([await visits(), await conflicts()]).toEqual([before, []]);
  });
});

describe("the findings of a number with several rows", () => {
  const sheet = (minutes: number, ...parts: string[]) =>
    `ticket_no,received_on,model,labour_min,part\n${parts.map((part) => `R-1,2026-03-01,Whinbeck 40,${minutes},${part}`).join("\n")}\n`;
  test("are those written beside the row that counts, also where they were known already", async () => {
    await bench.bringIn({ "a.csv": sheet(55, "rotor", "body") });
    expect(counts(await bench.bringIn({ "b.csv": sheet(60, "rotor", "bail_spring") }), "b.csv")).toEqual([2, 2, 0, 0, 0]);
    expect(await findings()).toEqual([{ ticket_no: "R-1", position: "bail_spring" }, { ticket_no: "R-1", position: "rotor" }]);
  });
  test("of a table of their own all count, once each", async () => {
    await bench.bringIn({ "a.csv": FIRST, "findings.csv": "ticket_no,position\nR-1,rotor\n" });
    await bench.bringIn({ "b.csv": FIRST.replace("55", "56"), "findings.csv": "ticket_no,position\nR-1,rotor\nR-1,body\n" });
    expect(await findings()).toEqual([{ ticket_no: "R-1", position: "body" }, { ticket_no: "R-1", position: "rotor" }]);
  });
});

describe("a ticket number written in several ways", () => {
  const many = ["R-1041", "R-1042", "R-1O43", "r 1044", "R1045"].map((number) => `${number},2026-03-01,,Withy 5,30,,\n`).join("");
  test("is read as the shop writes most of its numbers: letter O, spaces, small letters and a missing dash", async () => {
    await bench.bringIn({ "t.csv": HEAD + many + ["R-1050", "R-1051"].map((number) => `${number},2026-03-01,,Withy 5,30,,\n`).join("") });
    expect((await visits()).map(({ ticket_no }) => ticket_no)).toEqual(["R-1041", "R-1042", "R-1043", "R-1044", "R-1045", "R-1050", "R-1051"]);
  });
  test("is one ticket, and its findings find it", async () => {
    await bench.bringIn({ "t.csv": `${HEAD}R-1051,2026-03-01,,Withy 5,30,,\nR-1052,2026-03-01,,Withy 5,30,,\n` });
    const more = await bench.bringIn({ "u.csv": `${HEAD}R1051,2026-03-01,,Withy 5,30,,longer\n`, "findings.csv": "ticket_no,position\nr 1051,rotor\nR-1O52,body\n" });
    expect(more.rejects).toEqual([]);
    expect((await visits()).map(({ ticket_no, note }) => [ticket_no, note])).toEqual([["R-1051", "longer"], ["R-1052", null]]);
    expect([await conflicts(), await findings()]).toEqual([[], [{ ticket_no: "R-1051", position: "rotor" }, { ticket_no: "R-1052", position: "body" }]]);
  });
  test("keeps numbers apart whose digits are parted elsewhere", async () => {
    await bench.bringIn({ "t.csv": `${HEAD}23-104,2026-03-01,,Withy 5,30,,\n231-04,2026-03-01,,Withy 5,30,,\n` });
    expect(await visits()).toHaveLength(2);
  });
});
